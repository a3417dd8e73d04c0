// Stearns & Noechel's blend law: calculated values, and blending and unmixing as each other's inverse.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  blendPairReflectance,
  blendReflectance,
  blendValue,
  reflectanceFromBlendValue,
  UNDYED_FIBRE_REFLECTANCE,
  unmixReflectance,
} from "../../../src/core/optics/fibreBlend.ts";
import {
  absorptionOverScattering,
  reflectanceFromAbsorptionOverScattering,
} from "../../../src/core/optics/kubelkaMunk.ts";
import published from "../../published/fibre-blend.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

/** f reaches 118 at R = 0, so a rounding there is 1e-14 of f and less of R. */
const ROUNDING = 1e-12;
/** Unmixing divides by the other fibre's share, at least 0.05 here, and f is steep: up to 1e4 roundings. */
const UNMIX_TOLERANCE = 1e-10;

const reflectances = between(0, 1.5);
const fractions = between(0, 1);

describe("a blend of fibres", () => {
  it("gives f(0.5) = 5.988024 at M = 0.15", () => {
    const { reflectance, constant, blendValue: printed } = published.value;
    expect(missOf(blendValue(reflectance, constant), printed)).toBeLessThan(1);
    expect(blendValue(reflectance)).toBe(blendValue(reflectance, 0.15));
  });

  it("gives .13304 (M = .15) and .13715 (M = .136) for half of 0.8 and half of 0.05", () => {
    const { first, second, rows } = published.halfAndHalf;
    for (const { constant, reflectance } of rows) {
      expect(missOf(blendPairReflectance(first, second, 0.5, constant), reflectance)).toBeLessThan(1);
      expect(missOf(blendReflectance([first, second], [0.5, 0.5], constant), reflectance)).toBeLessThan(1);
    }
  });

  it("differs from the plain Kubelka-Munk mean of the same pair, .09125", () => {
    const { first, second, plainKubelkaMunk } = published.halfAndHalf;
    const mean = (absorptionOverScattering(first) + absorptionOverScattering(second)) / 2;
    expect(missOf(reflectanceFromAbsorptionOverScattering(mean), plainKubelkaMunk)).toBeLessThan(1);
  });

  it("of equal parts is itself", () => {
    fc.assert(
      fc.property(reflectances, fractions, (reflectance, fraction) => {
        const blended = blendPairReflectance(reflectance, reflectance, fraction);
        expect(Math.abs(blended - reflectance)).toBeLessThan(ROUNDING);
      }),
    );
  });

  it("lies between its fibres and follows the larger share", () => {
    fc.assert(
      fc.property(reflectances, reflectances, fractions, fractions, (one, other, share, more) => {
        const R = blendPairReflectance(one, other, share);
        expect(R).toBeGreaterThanOrEqual(Math.min(one, other) - ROUNDING);
        expect(R).toBeLessThanOrEqual(Math.max(one, other) + ROUNDING);
        const [small, large] = share < more ? [share, more] : [more, share];
        const [light, dark] = one > other ? [one, other] : [other, one];
        expect(blendPairReflectance(light, dark, large)).toBeGreaterThanOrEqual(
          blendPairReflectance(light, dark, small) - ROUNDING,
        );
      }),
    );
  });

  it("of three fibres equals blending two of them first", () => {
    const all = blendReflectance([0.8, 0.3, 0.1], [0.5, 0.3, 0.2]);
    const lastTwo = blendReflectance([0.3, 0.1], [0.6, 0.4]);
    expect(blendPairReflectance(0.8, lastTwo, 0.5)).toBeCloseTo(all, 12);
  });

  it("goes from reflectance to f and back", () => {
    fc.assert(
      fc.property(reflectances, (reflectance) => {
        expect(Math.abs(reflectanceFromBlendValue(blendValue(reflectance)) - reflectance)).toBeLessThan(
          ROUNDING,
        );
      }),
    );
  });
});

describe("unmixing a heather", () => {
  it("finds the other fibre again", () => {
    fc.assert(
      fc.property(between(0.001, 1.49), between(0, 0.95), (other, knownShare) => {
        const blend = blendPairReflectance(UNDYED_FIBRE_REFLECTANCE, other, knownShare);
        const found = unmixReflectance(blend, UNDYED_FIBRE_REFLECTANCE, knownShare);
        expect(found).not.toBeNull();
        expect(Math.abs(found! - other)).toBeLessThan(UNMIX_TOLERANCE);
      }),
    );
  });

  it("returns null where no fibre is dark enough or light enough to give the blend", () => {
    // half undyed fibre cannot look darker than half of a perfect black
    const darkest = blendPairReflectance(UNDYED_FIBRE_REFLECTANCE, 0, 0.5);
    expect(unmixReflectance(darkest * 0.99, UNDYED_FIBRE_REFLECTANCE, 0.5)).toBeNull();
    expect(unmixReflectance(darkest * 1.01, UNDYED_FIBRE_REFLECTANCE, 0.5)).toBeGreaterThan(0);
    expect(unmixReflectance(1.2, UNDYED_FIBRE_REFLECTANCE, 0.9)).toBeNull();
  });
});

describe("blend arguments out of range", () => {
  it("are refused by name and value", () => {
    expect(() => blendValue(-0.1)).toThrow("fibre reflectance must be in 0..1.5; got -0.1");
    for (const bad of [0, 1.1, Number.NaN]) {
      expect(() => blendValue(0.5, bad)).toThrow(`constant must be in 0..1, above 0; got ${bad}`);
    }
    for (const bad of [blendValue(0) + 1, blendValue(1.5) - 1, Number.NaN]) {
      expect(() => reflectanceFromBlendValue(bad)).toThrow(`got ${bad}`);
    }
    expect(() => blendPairReflectance(0.5, 0.5, 1.2)).toThrow("firstMassFraction must be in 0..1; got 1.2");
    expect(() => blendReflectance([0.5], [0.5, 0.5])).toThrow(/as many as reflectances \(1\); got 2/);
    expect(() => blendReflectance([0.5, 0.4], [0.5, 0.4])).toThrow("massFractions must sum to 1; got 0.9");
    expect(() => blendReflectance([0.5, 0.4], [1.5, -0.5])).toThrow("massFraction must be in 0..1; got 1.5");
    expect(() => unmixReflectance(0.3, 0.8, 1)).toThrow("knownMassFraction must be in 0..1, below 1; got 1");
  });
});
