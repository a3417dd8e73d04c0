import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shopUnits } from "../../src/units/shopUnits.ts";
import * as units from "../../src/units/unit.ts";
import {
  FAHRENHEIT,
  format,
  formatNumber,
  GRAM,
  INCH,
  KILOGRAM,
  OUNCE,
  OUNCE_PER_SQUARE_YARD,
  PER_INCH,
  POUND,
  parse,
  parseEdit,
  SQUARE_INCH,
  show,
  type Unit,
  US_GALLON,
} from "../../src/units/unit.ts";

const ALL: readonly Unit[] = Object.values(units).filter(
  (value): value is Unit => typeof value === "object" && "symbol" in value,
);

/** One multiplication and one division in doubles: a few units in the last place. */
const ROUNDING = 1e-14;

describe("published factors", () => {
  // NIST SP 811 (2008), Appendix B.8: rows of the alphabetical list, with the seven digits it prints.
  it.each([
    ["inch to mm", INCH, 1, 25.4],
    ["square inch to m²", SQUARE_INCH, 1, 6.4516e-4],
    ["ounce (avoirdupois) to g", OUNCE, 1, 28.34952],
    ["pound (avoirdupois) to kg", POUND, 1, 0.4535924],
    ["ounce per square yard to g/m²", OUNCE_PER_SQUARE_YARD, 1, 33.90575],
    ["degree Fahrenheit to degree Celsius, (t - 32)/1.8", FAHRENHEIT, 212, 100],
  ])("gives %s of NIST SP 811 B.8 to the digits printed there", (_name, unit, shown, stored) => {
    expect(unit.toStored(shown)).toBeCloseTo(stored, 5);
    expect(Math.abs(unit.toStored(shown) / stored - 1)).toBeLessThan(2e-7);
  });

  it("reads 230 threads per inch as 90.55 threads per cm", () => {
    expect(PER_INCH.toStored(230)).toBeCloseTo(90.55, 2);
  });

  it("gives the gallon (US liquid) of NIST SP 811 B.8, 3.785 412 E-03 m³, to the seven digits printed there", () => {
    expect(US_GALLON.toStored(1).toPrecision(7)).toBe("3785.412");
  });

  it("agrees that 16 ounces are a pound", () => {
    expect(OUNCE.toStored(16) / 1000).toBeCloseTo(POUND.toStored(1), 15);
  });

  it("gives Fahrenheit and Celsius the same number at 40 below zero", () => {
    expect(FAHRENHEIT.fromStored(-40)).toBe(-40);
  });
});

describe("showing and reading", () => {
  it("is exported for sixteen units", () => {
    expect(ALL).toHaveLength(16);
  });

  it("comes back to the shown value in every unit", () => {
    fc.assert(
      fc.property(fc.constantFrom(...ALL), fc.double({ min: -1e4, max: 1e4, noNaN: true }), (unit, shown) => {
        const scale = Math.max(1, Math.abs(shown), FAHRENHEIT.fromStored(0));
        expect(Math.abs(show(unit.toStored(shown), unit) - shown)).toBeLessThanOrEqual(ROUNDING * scale);
      }),
    );
  });

  it("writes a number with its unit and no sign on a zero", () => {
    expect(format(25.4, INCH)).toBe("1.00 in");
    expect(format(160, FAHRENHEIT)).toBe("320 °F");
    expect(formatNumber(-0.01, GRAM)).toBe("0.0");
  });

  it("reads a decimal comma, a sign and the unit's own symbol, and refuses everything else", () => {
    expect(parse("1,5 in", INCH)).toBeCloseTo(38.1, 12);
    expect(parse(" \u22122.5", GRAM)).toBe(-2.5);
    for (const typed of ["", "in", "1.2.3", "1 mm", "0x10", "1e3", "Infinity", "twelve"]) {
      expect(parse(typed, INCH), typed).toBeNull();
    }
  });
});

describe("switching units", () => {
  it("changes no stored value: a field that is left as shown gives the stored value back bit for bit", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ALL),
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.nat({ max: 4 }),
        (unit, stored, decimals) => {
          expect(parseEdit(formatNumber(stored, unit, decimals), stored, unit, decimals)).toBe(stored);
        },
      ),
    );
  });

  it("takes an edited text as a new value, also one that only adds digits", () => {
    expect(parseEdit("12", 10, KILOGRAM)).toBe(12);
    expect(parseEdit("10.001", 10, KILOGRAM)).toBe(10.001);
    expect(parseEdit("ten", 10, KILOGRAM)).toBeNull();
  });

  it("offers the unit the shop chose, pots and cloth weight along with it", () => {
    const metric = shopUnits({ temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" });
    const other = shopUnits({
      temperature: "fahrenheit",
      length: "inch",
      threadCount: "per-inch",
      mass: "ounce",
    });
    const symbols = (choice: typeof metric) => Object.values(choice).map((unit) => unit.symbol);
    expect(symbols(metric)).toEqual(["°C", "mm", "cm²", "threads/cm", "g", "kg", "l", "g/m²"]);
    expect(symbols(other)).toEqual(["°F", "in", "in²", "threads/in", "oz", "lb", "US gal", "oz/yd²"]);
  });
});
