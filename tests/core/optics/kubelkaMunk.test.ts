// The K/S relation against calculated tables, the registry's own mixer, and the laws it must keep.
import fc from "fast-check";
import { Color, mix } from "spectral.js";
import { describe, expect, it } from "vitest";
import {
  absorptionOverScattering,
  reflectanceFromAbsorptionOverScattering,
} from "../../../src/core/optics/kubelkaMunk.ts";
import published from "../../published/kubelka-munk.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

/** The registry's R = 1 + q - sqrt(q^2 + 2q) loses digits by subtraction: about 1e-16 times q, and q stays under 50. */
const ORACLE_TOLERANCE = 1e-13;

/** Ten roundings, relative to the reflectance. */
const ROUND_TRIP = 2e-15;

const reflectances = between(1e-6, 1);

describe("K/S of an opaque layer", () => {
  it("gives the 21 tabulated K/S of Kubelka & Munk 1931 to every printed digit", () => {
    for (const row of published.absorptionOverScattering) {
      expect(missOf(absorptionOverScattering(row.reflectance), row.ks), `R ${row.reflectance}`).toBeLessThan(
        1,
      );
    }
  });

  it("gives the 12 tabulated reflectances back from K/S to every printed digit", () => {
    for (const row of published.reflectance) {
      const computed = reflectanceFromAbsorptionOverScattering(row.ks);
      expect(missOf(computed, row.reflectance), `K/S ${row.ks}`).toBeLessThan(1);
    }
  });

  it("goes there and back with nothing lost but a few roundings, near 0 and near 1 too", () => {
    fc.assert(
      fc.property(reflectances, (reflectance) => {
        const back = reflectanceFromAbsorptionOverScattering(absorptionOverScattering(reflectance));
        expect(Math.abs(back / reflectance - 1)).toBeLessThan(ROUND_TRIP);
      }),
    );
  });

  it("keeps all digits where the textbook form has none left: K/S = 1e8 gives 1/(2 K/S)", () => {
    const q = 1e8;
    expect(reflectanceFromAbsorptionOverScattering(q) * (2 * q + 2)).toBeCloseTo(1, 12);
    expect(reflectanceFromAbsorptionOverScattering(Infinity)).toBe(0);
  });

  it("falls as the reflectance rises", () => {
    fc.assert(
      fc.property(reflectances, reflectances, (one, other) => {
        fc.pre(one < other);
        expect(absorptionOverScattering(one)).toBeGreaterThanOrEqual(absorptionOverScattering(other));
      }),
    );
  });

  it("refuses what no opaque layer reflects, naming value and range", () => {
    for (const bad of [0, -0.1, 1.0001, Number.NaN]) {
      expect(() => absorptionOverScattering(bad)).toThrow(RangeError);
    }
    expect(() => absorptionOverScattering(-0.1)).toThrow("reflectance must be in 0..1, above 0; got -0.1");
    expect(() => reflectanceFromAbsorptionOverScattering(-1)).toThrow(/must be >= 0; got -1/);
    expect(() => reflectanceFromAbsorptionOverScattering(Number.NaN)).toThrow(RangeError);
  });
});

describe("the registry's Kubelka-Munk mixer, spectral.js 3.0.0, as an independent oracle", () => {
  const bandCount = 38;
  const sloping = Array.from({ length: bandCount }, (_, i) => 0.03 + (0.9 * i) / (bandCount - 1));
  const humped = Array.from({ length: bandCount }, (_, i) => 0.02 + 0.6 * Math.exp(-(((i - 15) / 6) ** 2)));
  const first = new Color(sloping);
  const second = new Color(humped);

  it("finds the same K/S in every band", () => {
    for (let i = 0; i < bandCount; i++) {
      expect(Math.abs(absorptionOverScattering(sloping[i]!) - first.KS[i]!)).toBeLessThan(ORACLE_TOLERANCE);
      expect(Math.abs(absorptionOverScattering(humped[i]!) - second.KS[i]!)).toBeLessThan(ORACLE_TOLERANCE);
    }
  });

  it("finds the same reflectance of a mix from the same mean K/S, its luminance weights taken over", () => {
    const factors = [1, 1.7] as const;
    const mixed = mix([first, factors[0]], [second, factors[1]]);
    const weights = [factors[0] ** 2 * first.luminance, factors[1] ** 2 * second.luminance] as const;
    for (let i = 0; i < bandCount; i++) {
      const q =
        (weights[0] * absorptionOverScattering(sloping[i]!) +
          weights[1] * absorptionOverScattering(humped[i]!)) /
        (weights[0] + weights[1]);
      expect(Math.abs(reflectanceFromAbsorptionOverScattering(q) - mixed.R[i]!)).toBeLessThan(
        ORACLE_TOLERANCE,
      );
    }
  });
});
