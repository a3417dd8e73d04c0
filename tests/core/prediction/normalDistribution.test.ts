// The normal and Student's t with 5 degrees of freedom against published tables.
import { describe, expect, it } from "vitest";
import {
  normalCumulative,
  normalCumulativeFast,
  normalDensity,
  quantileOf,
  studentCumulative5,
} from "../../../src/core/prediction/normalDistribution.ts";
import published from "../../published/distributions.json";
import { missOf } from "../optics/printedValue.ts";

/** The printed table is a linear interpolation of 256 steps per unit: h^2/8 max|phi'| = 4.6e-7, as its docstring says. */
const FAST_TOLERANCE = 5e-7;

describe("the normal distribution", () => {
  it("gives P(x) of Abramowitz & Stegun 1964, table 26.1, to every printed digit", () => {
    for (const { x, cumulative, density } of published.normal.rows) {
      expect(missOf(normalCumulative(x), cumulative)).toBeLessThan(1);
      expect(missOf(normalDensity(x), density)).toBeLessThan(1);
    }
  });

  it("gives the tail 1 - P of the same book, table 26.2, to its digits", () => {
    for (const { x, minusLog10Tail } of published.normalTail.rows) {
      expect(missOf(-Math.log10(normalCumulative(-x)), minusLog10Tail)).toBeLessThan(1);
    }
  });

  it("is symmetric, and rises without a jump where the series hands over to the fraction", () => {
    for (const x of [0, 0.3, 1, 2.9999, 3, 3.0001, 5]) {
      expect(normalCumulative(x) + normalCumulative(-x)).toBeCloseTo(1, 14);
    }
    const rise = normalCumulative(3 + 1e-7) - normalCumulative(3 - 1e-7);
    expect(rise / (2e-7 * normalDensity(3))).toBeCloseTo(1, 5);
  });

  it("read from the table is within 5e-7, and 0 or 1 beyond 6", () => {
    for (let x = -7; x <= 7; x += 0.0037) {
      expect(Math.abs(normalCumulativeFast(x) - normalCumulative(x))).toBeLessThan(FAST_TOLERANCE);
    }
    expect([normalCumulativeFast(-6.5), normalCumulativeFast(6.5)]).toEqual([0, 1]);
  });
});

describe("Student's t with 5 degrees of freedom", () => {
  it("gives the published quantiles 2.015, 2.571, 3.365 and 4.032", () => {
    for (const { probability, quantile } of published.student5.rows) {
      expect(missOf(quantileOf(studentCumulative5, probability), quantile)).toBeLessThan(1);
      expect(quantileOf(studentCumulative5, 1 - probability)).toBeCloseTo(-Number(quantile), 3);
    }
  });
});

describe("a quantile", () => {
  it("undoes its distribution", () => {
    for (const p of [1e-6, 0.05, 0.5, 0.9, 1 - 1e-6]) {
      expect(normalCumulative(quantileOf(normalCumulative, p))).toBeCloseTo(p, 12);
    }
  });

  it("is refused for a probability outside 0..1, ends excluded", () => {
    for (const bad of [0, 1, -0.1, Number.NaN]) {
      expect(() => quantileOf(normalCumulative, bad)).toThrow(
        `probability must be in 0..1, exclusive; got ${bad}`,
      );
    }
  });
});
