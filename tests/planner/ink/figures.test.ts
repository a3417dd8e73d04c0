/** Amounts of ink in words: the digits of the scale, and never a number without its unit. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  amountWords,
  areaWords,
  decimalsOfStep,
  onScaleWords,
  perPrintWords,
  scaleUnit,
  scaleWords,
  temperatureWords,
  truePercentWords,
} from "../../../src/planner/words/inkFigures.ts";

const METRIC = { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" } as const;
const OTHER = { temperature: "fahrenheit", length: "inch", threadCount: "per-inch", mass: "ounce" } as const;
const STEPS = [0.001, 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5];

describe("grams of a weigh sheet", () => {
  it("show the digits of the scale and no more", () => {
    expect(scaleWords(2310.5, 0.1, METRIC)).toBe("2,310.5\u00a0g");
    expect(scaleWords(99.5, 0.05, METRIC)).toBe("99.50\u00a0g");
    expect(scaleWords(3147, 1, METRIC)).toBe("3,147\u00a0g");
    expect(scaleWords(20, 5, METRIC)).toBe("20\u00a0g");
  });

  it("are what the scale shows, with the ounces behind them where the shop thinks in ounces", () => {
    // 28.349523125 g are an ounce by definition (NIST SP 811).
    expect(scaleWords(28.3, 0.1, OTHER)).toBe("28.3\u00a0g (1.00\u00a0oz)");
    expect(onScaleWords(0.1, 0.1, OTHER)).toBe("0.1\u00a0g");
  });

  it("are ounces on a scale that steps in them", () => {
    const stepGrams = 0.01 * 28.349523125;
    expect(scaleUnit(stepGrams, OTHER).symbol).toBe("oz");
    expect(scaleWords(10 * 28.349523125, stepGrams, OTHER)).toBe("10.00\u00a0oz");
    expect(scaleUnit(stepGrams, METRIC).symbol).toBe("g");
  });

  it("tell two neighbouring steps of any scale apart", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...STEPS),
        fc.integer({ min: 0, max: 50_000 }),
        fc.constantFrom(METRIC, OTHER),
        (step, count, units) => {
          const at = (n: number) => scaleWords(Number((n * step).toFixed(6)), step, units);
          expect(at(count)).not.toBe(at(count + 1));
        },
      ),
    );
  });

  it("need as many decimals as the step has", () => {
    expect(STEPS.map(decimalsOfStep)).toEqual([3, 2, 2, 2, 1, 1, 1, 0, 0, 0]);
  });
});

describe("amounts for reading", () => {
  it("go over to kilograms and pounds where pots do", () => {
    expect(amountWords(460, METRIC)).toBe("460.0\u00a0g");
    expect(amountWords(2310, METRIC)).toBe("2.31\u00a0kg");
    // 0.45359237 kg are a pound by definition.
    expect(amountWords(4535.9237, OTHER)).toBe("10.00\u00a0lb");
  });

  it("carry a unit behind every number, in any units and of any size", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.constantFrom(METRIC, OTHER),
        fc.constantFrom(...STEPS),
        (value, units, step) => {
          const all = [
            scaleWords(value, step, units),
            amountWords(value, units),
            perPrintWords(value, units),
            areaWords(value / 1e6, units),
            temperatureWords(value / 1e4, units),
            truePercentWords(value / 1e6),
          ];
          for (const words of all) {
            const numbers = words.match(/[\d,.]*\d/g) ?? [];
            const withUnit = words.match(/[\d,.]*\d\u00a0(?:g|kg|oz|lb|cm²|in²|°C|°F|%)/g) ?? [];
            expect(withUnit, words).toHaveLength(numbers.length);
          }
        },
      ),
    );
  });

  it("reads 280 by 330 mm at 46 % as 425 cm², or 65.9 square inches", () => {
    expect(areaWords(0.28 * 0.33 * 0.46, METRIC)).toBe("425\u00a0cm²");
    expect(areaWords(0.28 * 0.33 * 0.46, OTHER)).toBe("65.9\u00a0in²");
  });

  it("gives a small tint enough digits to tell a step of the scale", () => {
    expect(truePercentWords(1.7 / 200.7)).toBe("0.847\u00a0%");
    expect(truePercentWords(199 / 200)).toBe("99.5\u00a0%");
  });
});
