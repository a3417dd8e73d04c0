/** The normal and Student's t against published points. */
import { describe, expect, it } from "vitest";
import {
  normalCumulative,
  normalCumulativeFast,
  normalDensity,
  quantileOf,
  studentCumulative5,
} from "../../../src/core/prediction/normalDistribution.ts";

/** Abramowitz & Stegun 1964, table 26.1 (from memory, to the digits shown). */
const NORMAL = [
  [0, 0.5],
  [0.5, 0.691462461],
  [1, 0.841344746],
  [1.96, 0.975002105],
  [3, 0.998650102],
  [4, 0.999968329],
] as const;

/** A&S 1964, table 26.10: t with 5 degrees of freedom (from memory). */
const STUDENT = [
  [0.95, 2.015],
  [0.975, 2.571],
  [0.995, 4.032],
] as const;

describe("the distributions", () => {
  it("give the normal table to its nine digits, on both sides", () => {
    for (const [x, p] of NORMAL) {
      expect(Math.abs(normalCumulative(x) - p)).toBeLessThan(6e-10);
      expect(Math.abs(normalCumulative(-x) - (1 - p))).toBeLessThan(6e-10);
    }
  });
  it("stay within 8e-6 where they are read from a table, and end at 0 and 1", () => {
    for (let x = -5.9; x < 5.9; x += 0.0137) {
      expect(Math.abs(normalCumulativeFast(x) - normalCumulative(x))).toBeLessThan(8e-6);
    }
    expect(normalCumulativeFast(-7)).toBe(0);
    expect(normalCumulativeFast(7)).toBe(1);
  });
  it("give Student's t points to three decimals", () => {
    for (const [p, t] of STUDENT) expect(Math.abs(quantileOf(studentCumulative5, p) - t)).toBeLessThan(6e-4);
  });
  it("integrate the density to the cumulative", () => {
    let sum = 0;
    for (let x = -8; x < 1; x += 0.001) sum += normalDensity(x + 0.0005) * 0.001;
    expect(Math.abs(sum - normalCumulative(1))).toBeLessThan(1e-6);
  });
  it("refuse a probability outside 0..1", () => {
    expect(() => quantileOf(normalCumulative, 1)).toThrow(/0..1, exclusive; got 1/);
  });
});
