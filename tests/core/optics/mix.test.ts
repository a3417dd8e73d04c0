// Mixes: Duncan's additivity and the strength of a mixed base.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blackInk, whiteInk } from "../../../src/core/optics/colourant.ts";
import { reflectanceFromAbsorptionOverScattering } from "../../../src/core/optics/kubelkaMunk.ts";
import { mixAbsorptionScattering, mixBaseStrength } from "../../../src/core/optics/mix.ts";
import { BAND_COUNT, constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import published from "../../published/kubelka-munk.json";
import { between } from "./between.ts";
import { missOf } from "./printedValue.ts";

const clear = { absorptionPerUm: constantSpectrum(0), scatteringPerUm: constantSpectrum(0.00005) };

describe("a mix of inks", () => {
  it("gives K/S = .0211913 and R = .814233 for Duncan's 99 % white and 1 % black, in every band", () => {
    const { white, black, ks, reflectance } = published.duncanMixture;
    const mixed = mixAbsorptionScattering(
      [white, black].map(({ K, S, massFraction }) => ({
        absorptionPerUm: constantSpectrum(K),
        scatteringPerUm: constantSpectrum(S),
        massFraction,
      })),
    );
    for (let i = 0; i < BAND_COUNT; i++) {
      const ratio = mixed.absorptionPerUm[i]! / mixed.scatteringPerUm[i]!;
      expect(missOf(ratio, ks)).toBeLessThan(1);
      expect(missOf(reflectanceFromAbsorptionOverScattering(ratio), reflectance)).toBeLessThan(1);
    }
  });

  it("of an ink with itself is that ink, whatever the shares, and its inputs stay untouched", () => {
    const white = whiteInk();
    fc.assert(
      fc.property(between(0, 1), (share) => {
        const mixed = mixAbsorptionScattering([
          { ...white, massFraction: share },
          { ...white, massFraction: 1 - share },
        ]);
        for (let i = 0; i < BAND_COUNT; i++) {
          expect(mixed.scatteringPerUm[i]).toBeCloseTo(0.18, 14);
        }
      }),
    );
    expect(white).toEqual(whiteInk());
  });

  it("in two steps equals the mix in one", () => {
    const black = blackInk();
    const master = mixAbsorptionScattering([
      { ...clear, massFraction: 0.9 },
      { ...black, massFraction: 0.1 },
    ]);
    const twice = mixAbsorptionScattering([
      { ...clear, massFraction: 0.95 },
      { ...master, massFraction: 0.05 },
    ]);
    const once = mixAbsorptionScattering([
      { ...clear, massFraction: 0.995 },
      { ...black, massFraction: 0.005 },
    ]);
    for (let i = 0; i < BAND_COUNT; i++) {
      expect(twice.absorptionPerUm[i]).toBeCloseTo(once.absorptionPerUm[i]!, 15);
      expect(twice.scatteringPerUm[i]).toBeCloseTo(once.scatteringPerUm[i]!, 15);
    }
  });

  it("allows 1e-6 for a typed percentage and refuses every other sum, fraction or length", () => {
    const of =
      (...massFractions: number[]) =>
      () =>
        mixAbsorptionScattering(massFractions.map((massFraction) => ({ ...clear, massFraction })));
    expect(of(0.5, 0.5 + 9e-7)).not.toThrow();
    expect(of(0.5, 0.5 + 2e-6)).toThrow(/must sum to 1; got 1\.00000/);
    expect(of()).toThrow("mass fractions of a mix must sum to 1; got 0");
    expect(of(-0.5, 1)).toThrow("massFraction must be in 0..1; got -0.5");
    expect(of(Number.NaN)).toThrow("massFraction must be in 0..1; got NaN");
    const short = new Float64Array(31);
    expect(() => mixAbsorptionScattering([{ ...clear, absorptionPerUm: short, massFraction: 1 }])).toThrow(
      "absorptionPerUm must have 36 bands; got 31",
    );
    expect(() => mixAbsorptionScattering([{ ...clear, scatteringPerUm: short, massFraction: 1 }])).toThrow(
      "scatteringPerUm must have 36 bands; got 31",
    );
  });
});

describe("the strength of a mixed base", () => {
  it("is the mean over bases and additives by mass, tints left out", () => {
    const strength = mixBaseStrength([
      { massFraction: 0.6, baseStrength: 1 },
      { massFraction: 0.395, baseStrength: 0.6 },
    ]);
    expect(strength).toBeCloseTo((0.6 + 0.395 * 0.6) / 0.995, 14);
    expect(mixBaseStrength([{ massFraction: 0.3, baseStrength: 0.85 }])).toBeCloseTo(0.85, 14);
  });

  it("needs some base, and refuses values out of range", () => {
    expect(() => mixBaseStrength([])).toThrow("a mix must hold some base; got a mass fraction of 0");
    expect(() => mixBaseStrength([{ massFraction: 1.2, baseStrength: 1 }])).toThrow("got 1.2");
    for (const bad of [-1, Infinity, Number.NaN]) {
      expect(() => mixBaseStrength([{ massFraction: 1, baseStrength: bad }])).toThrow(
        `baseStrength must be >= 0 and finite; got ${bad}`,
      );
    }
  });
});
