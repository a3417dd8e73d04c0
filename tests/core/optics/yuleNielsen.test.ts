// Halftones between bare cloth and print.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { halftoneReflectance, YULE_NIELSEN_FACTOR } from "../../../src/core/optics/yuleNielsen.ts";
import { between } from "./between.ts";

/** A power and its inverse cost a few roundings. */
const ROUNDING = 1e-13;

const reflectances = between(0, 1.5);
const fractions = between(0, 1);
const factors = between(1, 10);

describe("a halftone", () => {
  it("with n = 1 is Murray & Davies' weighted mean", () => {
    fc.assert(
      fc.property(reflectances, reflectances, fractions, (bare, print, area) => {
        const mean = (1 - area) * bare + area * print;
        expect(Math.abs(halftoneReflectance(bare, print, area, 1) - mean)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("with n = 2 gives 0.09 for half of 0.16 and 0.04, and 2 is what is used", () => {
    expect(halftoneReflectance(0.16, 0.04, 0.5)).toBeCloseTo(0.09, 14);
    expect(YULE_NIELSEN_FACTOR).toBe(2);
  });

  it("passes smoothly through n = 2, where a square root is taken instead of a power", () => {
    const exactly = halftoneReflectance(0.4, 0.1, 0.3, 2);
    expect(Math.abs(halftoneReflectance(0.4, 0.1, 0.3, 2 + 1e-12) - exactly)).toBeLessThan(1e-11);
  });

  it("is the bare cloth at 0 and the print at 1, to the last digit", () => {
    fc.assert(
      fc.property(reflectances, reflectances, factors, (bare, print, factor) => {
        expect(halftoneReflectance(bare, print, 0, factor)).toBe(bare);
        expect(halftoneReflectance(bare, print, 1, factor)).toBe(print);
      }),
    );
  });

  it("lies between both, and never above the weighted mean", () => {
    fc.assert(
      fc.property(reflectances, reflectances, fractions, factors, (bare, print, area, factor) => {
        const R = halftoneReflectance(bare, print, area, factor);
        expect(R).toBeGreaterThanOrEqual(Math.min(bare, print) - ROUNDING);
        expect(R).toBeLessThanOrEqual((1 - area) * bare + area * print + ROUNDING);
      }),
    );
  });

  it("refuses arguments out of range, by name and value", () => {
    expect(() => halftoneReflectance(-1, 0.5, 0.5)).toThrow("bareReflectance must be in 0..1.5; got -1");
    expect(() => halftoneReflectance(0.5, 2, 0.5)).toThrow("printReflectance must be in 0..1.5; got 2");
    expect(() => halftoneReflectance(0.5, 0.5, 50)).toThrow("areaFraction must be in 0..1; got 50");
    for (const bad of [0.9, Infinity, Number.NaN]) {
      expect(() => halftoneReflectance(0.5, 0.4, 0.5, bad)).toThrow(`must be >= 1 and finite; got ${bad}`);
    }
  });
});
