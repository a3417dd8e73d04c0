// Inks and tints: their strength, its definition, and the shape of their absorption.
import { describe, expect, it } from "vitest";
import {
  blackInk,
  colourantCountedAs,
  RELATIVE_STRENGTH,
  tintFromMasstone,
  whiteInk,
} from "../../../src/core/optics/colourant.ts";
import { filmReflectance } from "../../../src/core/optics/inkFilm.ts";
import { absorptionOverScattering } from "../../../src/core/optics/kubelkaMunk.ts";
import { constantSpectrum, spectrumFrom, wavelengthNmAt } from "../../../src/core/spectrum/spectrum.ts";

/** Bands at 560 and 440 nm. */
const [AT_560, AT_440] = [18, 6];

const redMasstone = spectrumFrom(
  (nm) => 0.03 + 0.6 / (1 + Math.exp(-(nm - 600) / 12)) + 0.02 * (nm < 450 ? 1 : 0),
);

describe("black ink", () => {
  it("absorbs 1.1 per um at 560 nm and as 1/lambda elsewhere, and scatters 0.025 of that", () => {
    const black = blackInk();
    expect(wavelengthNmAt(AT_560)).toBe(560);
    expect(black.absorptionPerUm[AT_560]).toBeCloseTo(1.1, 14);
    expect(black.absorptionPerUm[AT_440]! * 440).toBeCloseTo(1.1 * 560, 10);
    black.scatteringPerUm.forEach((S, i) => {
      expect(S / black.absorptionPerUm[i]!).toBeCloseTo(0.025, 14);
    });
  });

  it("is of the order that carbon's published absorption gives: 0.79 left of the light by 0.5 % in 24 g/m2", () => {
    // 24 g/m2 x 0.5 % ink x 7 % carbon x 7 m2/g, doubled for diffuse light, twice through (carbon share from memory)
    const byCarbon = Math.exp(-2 * 2 * 24 * 0.005 * 0.07 * 7);
    const byInk = filmReflectance(0.005 * blackInk().absorptionPerUm[AT_560]!, 0, 20, 1);
    expect(Math.abs(byInk - byCarbon)).toBeLessThan(0.02);
  });
});

describe("white ink", () => {
  it("hides: 60 um of it over a black of 0.04 reflect more than 0.85", () => {
    const white = whiteInk();
    expect(filmReflectance(white.absorptionPerUm[0]!, white.scatteringPerUm[0]!, 60, 0.04)).toBeGreaterThan(
      0.85,
    );
  });

  it("scatters as about 29 % of titanium dioxide would: SX = 0.19 per 1 % in 30 um", () => {
    const perMassFraction = 0.19 / 30 / 0.01;
    expect(whiteInk().scatteringPerUm[0]! / perMassFraction).toBeCloseTo(0.284, 3);
  });
});

describe("a tint from its masstone", () => {
  it("has the stated strength in the band where the masstone absorbs most, and says which that is", () => {
    const tint = tintFromMasstone(redMasstone, 0.7, "ready-made-ink");
    const peak = tint.absorptionPerUm.indexOf(0.7);
    expect(wavelengthNmAt(peak)).toBe(tint.strengthNm);
    expect(redMasstone[peak]).toBe(Math.min(...redMasstone));
    expect(Math.max(...tint.absorptionPerUm)).toBe(0.7);
  });

  it("keeps the ratios of the masstone's K/S and does not scatter", () => {
    const tint = tintFromMasstone(redMasstone, 0.7, "ready-made-ink");
    const ratio = tint.absorptionPerUm[0]! / tint.absorptionPerUm[33]!;
    const expected = absorptionOverScattering(redMasstone[0]!) / absorptionOverScattering(redMasstone[33]!);
    expect(ratio / expected).toBeCloseTo(1, 12);
    expect(tint.scatteringPerUm.every((S) => S === 0)).toBe(true);
  });

  it("refuses a masstone or strength it can make no tint of", () => {
    const make = (masstone: Float64Array, strength: number) => () =>
      tintFromMasstone(masstone, strength, "dry-pigment");
    expect(make(constantSpectrum(1), 1)).toThrow(/must absorb in some band/);
    expect(make(constantSpectrum(0), 1)).toThrow(/reflectance must be in 0..1, above 0; got 0/);
    expect(make(new Float64Array(31).fill(0.5), 1)).toThrow("masstone must have 36 bands; got 31");
    for (const bad of [0, -1, Infinity, Number.NaN]) {
      expect(make(redMasstone, bad)).toThrow(`strengthPerUm must be above 0 and finite; got ${bad}`);
    }
  });
});

describe("a strength definition", () => {
  it("makes 0.5 % of ready-made ink, 0.05 % of concentrate and 0.5/30 % of dry pigment one tint", () => {
    const ready = blackInk();
    for (const [definition, fraction] of [
      ["pigment-concentrate", 0.0005],
      ["dry-pigment", 0.005 / 30],
    ] as const) {
      const counted = colourantCountedAs(ready, definition);
      expect(counted.strengthDefinition).toBe(definition);
      expect((fraction * counted.absorptionPerUm[AT_560]!) / (0.005 * 1.1)).toBeCloseTo(1, 12);
      expect((fraction * counted.scatteringPerUm[AT_560]!) / (0.005 * 1.1 * 0.025)).toBeCloseTo(1, 12);
    }
  });

  it("goes there and back, and lies in the 20 to 50 times that dry pigment is said to have", () => {
    const tint = tintFromMasstone(redMasstone, 0.7, "pigment-concentrate");
    const back = colourantCountedAs(colourantCountedAs(tint, "dry-pigment"), "pigment-concentrate");
    back.absorptionPerUm.forEach((K, i) => {
      expect(K).toBeCloseTo(tint.absorptionPerUm[i]!, 13);
    });
    expect(RELATIVE_STRENGTH["dry-pigment"]).toBeGreaterThanOrEqual(20);
    expect(RELATIVE_STRENGTH["dry-pigment"]).toBeLessThanOrEqual(50);
  });
});
