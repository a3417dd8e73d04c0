// The surface correction: calculated tables for both k2, its inverse, geometry, and why k1 and k2 are what they are.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { internalDiffuseReflection } from "../../../src/core/optics/diffuseReflection.ts";
import {
  CLOSED_FRACTION_AS_PRINTED,
  EXTERNAL_REFLECTION,
  INTERNAL_REFLECTION,
  internalFromMeasured,
  measuredFromInternal,
  withClosedSurface,
} from "../../../src/core/optics/saunderson.ts";
import published from "../../published/saunderson.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

/** The round trip multiplies roundings by up to 1 / (1 - k2) squared. */
const ROUND_TRIP = 1e-13;

const reflectances = between(0, 1.5);
const fractions = between(0, 1);

describe("Saunderson's surface correction", () => {
  it("gives the eleven calculated values for k2 = 0.6 and 0.4 to every printed digit", () => {
    for (const row of published.forward) {
      const { reflectance, externalReflection, internalReflection } = row;
      const measured = measuredFromInternal(reflectance, true, externalReflection, internalReflection);
      expect(missOf(measured, row.measured), `R ${reflectance}, k2 ${internalReflection}`).toBeLessThan(1);
    }
  });

  it("gives the seven calculated inverse values to 6 decimals", () => {
    for (const row of published.inverse) {
      expect(missOf(internalFromMeasured(row.measured, true), row.reflectance)).toBeLessThan(1);
    }
  });

  it("uses k1 and k2 of a surface of refractive index 1.5: r = 0.04 and r_i = 0.596, rounded to 0.6", () => {
    const n = 1.5;
    expect(EXTERNAL_REFLECTION).toBeCloseTo(((n - 1) / (n + 1)) ** 2, 12);
    expect(missOf(internalDiffuseReflection(n), INTERNAL_REFLECTION.toFixed(1))).toBeLessThan(1);
  });

  it("loses the mirrored k1 without the specular part, and keeps the entry loss", () => {
    expect(measuredFromInternal(0.5, true) - measuredFromInternal(0.5, false)).toBeCloseTo(0.04, 14);
    expect(measuredFromInternal(1, false)).toBeCloseTo(0.96, 14);
    expect(measuredFromInternal(1, true)).toBeCloseTo(1, 14);
  });

  it("goes there and back, brightened or not, in either geometry", () => {
    fc.assert(
      fc.property(reflectances, fc.boolean(), (reflectance, specularIncluded) => {
        const measured = measuredFromInternal(reflectance, specularIncluded);
        expect(Math.abs(internalFromMeasured(measured, specularIncluded) - reflectance)).toBeLessThan(
          ROUND_TRIP,
        );
      }),
    );
  });

  it("changes nothing with k1 = k2 = 0", () => {
    expect(measuredFromInternal(0.37, true, 0, 0)).toBe(0.37);
    expect(internalFromMeasured(0.37, true, 0, 0)).toBe(0.37);
  });

  it("refuses readings and surfaces out of range, by name and value", () => {
    expect(() => measuredFromInternal(-0.1, true)).toThrow(
      "internal reflectance must be in 0..1.5; got -0.1",
    );
    expect(() => measuredFromInternal(Number.NaN, true)).toThrow(RangeError);
    expect(() => internalFromMeasured(0.039, true)).toThrow(/under a measured 0.039 must be in 0..1.5/);
    expect(() => internalFromMeasured(1.6, false)).toThrow(RangeError);
    for (const bad of [-0.1, 1, Number.NaN]) {
      expect(() => measuredFromInternal(0.5, true, bad, 0.6)).toThrow(`externalReflection must be in 0..1`);
      expect(() => internalFromMeasured(0.5, true, 0.04, bad)).toThrow(`internalReflection must be in 0..1`);
    }
  });
});

describe("a partly closed surface", () => {
  it("is the open print at 0 and the closed one at 1", () => {
    fc.assert(
      fc.property(reflectances, (reflectance) => {
        expect(withClosedSurface(reflectance, 0, "45:0")).toBe(reflectance);
        const closed = measuredFromInternal(reflectance, true);
        expect(withClosedSurface(reflectance, 1, "specular-included")).toBeCloseTo(closed, 13);
      }),
    );
  });

  it("reads alike at 45:0 and with the specular part excluded, phi k1 lighter with it included", () => {
    fc.assert(
      fc.property(reflectances, fractions, (reflectance, closedFraction) => {
        const excluded = withClosedSurface(reflectance, closedFraction, "specular-excluded");
        const included = withClosedSurface(reflectance, closedFraction, "specular-included");
        expect(withClosedSurface(reflectance, closedFraction, "45:0")).toBe(excluded);
        expect(included - excluded).toBeCloseTo(closedFraction * EXTERNAL_REFLECTION, 13);
      }),
    );
  });

  it("darkens every print seen without the mirrored part, and lightens a dark one seen with it", () => {
    fc.assert(
      fc.property(between(0.001, 1), (reflectance) => {
        const phi = CLOSED_FRACTION_AS_PRINTED;
        expect(withClosedSurface(reflectance, phi, "45:0")).toBeLessThan(reflectance);
      }),
    );
    expect(withClosedSurface(0.03, 1, "specular-included")).toBeGreaterThan(0.03);
    expect(withClosedSurface(0.03, 1, "specular-excluded")).toBeLessThan(0.03);
  });

  it("refuses a closed fraction outside 0..1", () => {
    for (const bad of [-0.1, 1.1, Number.NaN]) {
      expect(() => withClosedSurface(0.5, bad, "45:0")).toThrow(`closedFraction must be in 0..1; got ${bad}`);
    }
  });
});
