// Limits of the printed spectrum, laws of more and less ink, and what is refused.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import { absorptionOverScattering } from "../../../src/core/optics/kubelkaMunk.ts";
import type { Application, Garment, InkMix } from "../../../src/core/prediction/inputs.ts";
import { defaultCoverFraction, printedFilm } from "../../../src/core/prediction/printedFilm.ts";
import { printedReflectance } from "../../../src/core/prediction/printedReflectance.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { BAND_COUNT, constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import { between } from "../optics/between.ts";
import { ALL_COTTON, cloth, GARMENTS, HALF_AND_HALF, VIEWING } from "./cloths.ts";
import { BASES, type BaseName, base, black, mixOf, navy, SOFT_WHITE, STROKE, tinted, white } from "./inks.ts";

/** The fused loops sum in another order than the functions: a few roundings of numbers near 1. */
const ROUNDING = 1e-13;
const garmentNames = fc.constantFrom(...Object.keys(GARMENTS));
const garments = garmentNames.map((name) => GARMENTS[name]!);
const baseNames = fc.constantFrom(...(Object.keys(BASES) as BaseName[]));
const geometries = fc.constantFrom(
  "45:0" as const,
  "specular-included" as const,
  "specular-excluded" as const,
);

function printed(garment: Garment, mix: InkMix, application: Application = STROKE) {
  return printedReflectance(wettableGarment(garment, VIEWING), mix, application);
}
function lightness(garment: Garment, mix: InkMix, application: Application = STROKE): number {
  const ready = wettableGarment(garment, VIEWING);
  return labFromReflectance(printedReflectance(ready, mix, application), ready.weights).L;
}
function farthest(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < one.length; i++) most = Math.max(most, Math.abs(one[i]! - other[i]!));
  return most;
}

describe("limits", () => {
  const everyMix = [mixOf(base("curable")), mixOf(base("matt")), tinted("curable", navy, 0.01), SOFT_WHITE];

  it("no deposit leaves the bare cloth but for its closed surface, whatever the mix", () => {
    for (const garment of Object.values(GARMENTS)) {
      for (const mix of everyMix) {
        const open = {
          ...mix,
          parts: mix.parts.map((p) => (p.kind === "base" ? { ...p, closedFraction: 0 } : p)),
        };
        const print = printed(garment, open, { ...STROKE, depositUm: 0 });
        expect(farthest(print, garment.bare)).toBeLessThan(1e-9); // heathers go through unmixing
      }
    }
  });

  it("cloth whose fibres gain nothing (D = 1) under a clear without haze or surface stays bare", () => {
    for (const garment of Object.values(GARMENTS)) {
      const ready = wettableGarment(garment, VIEWING);
      const print = printedReflectance(ready, mixOf(base("gloss", 1, 0)), STROKE, { lnWetOut: -40 });
      expect(farthest(print, garment.bare)).toBeLessThan(1e-9);
    }
  });

  it("a halftone of 0 is the bare cloth, of 1 the solid, and in between lies between", () => {
    for (const garment of Object.values(GARMENTS)) {
      for (const mix of everyMix) {
        const at = (halftoneFraction: number) => printed(garment, mix, { ...STROKE, halftoneFraction });
        expect(farthest(at(0), garment.bare)).toBe(0);
        const solid = printed(garment, mix);
        expect(farthest(at(1), solid)).toBe(0);
        at(0.4).forEach((R, i) => {
          const [low, high] = [garment.bare[i]!, solid[i]!].sort((a, b) => a - b) as [number, number];
          expect(R).toBeGreaterThanOrEqual(low - ROUNDING);
          expect(R).toBeLessThanOrEqual(high + ROUNDING);
        });
      }
    }
  });

  it("a mix without any base, concentrate in nothing, wets nothing out", () => {
    const concentrate = { ...black(1), ownBaseStrength: null };
    expect(printedFilm(mixOf(concentrate), STROKE).wetOutStrength).toBe(0);
    expect(printedFilm(mixOf(concentrate), STROKE).closedFraction).toBe(0.02);
  });
});

describe("laws", () => {
  it("reflectance stays in 0..1 for cloth without brightener", () => {
    fc.assert(
      fc.property(
        garments,
        baseNames,
        between(0, 1),
        between(0, 120),
        geometries,
        (garment, name, part, X, geometry) => {
          const print = printed({ ...garment, geometry }, tinted(name, black, part), {
            ...STROKE,
            depositUm: X,
          });
          for (const R of print) {
            expect(R).toBeGreaterThanOrEqual(0);
            expect(R).toBeLessThanOrEqual(1);
          }
        },
      ),
    );
  });

  it("a thicker film of a clear without haze never lightens", () => {
    fc.assert(
      fc.property(garments, between(0, 80), between(0, 80), (garment, one, other) => {
        const [thin, thick] = [Math.min(one, other), Math.max(one, other)];
        const at = (depositUm: number) => lightness(garment, mixOf(base("gloss")), { ...STROKE, depositUm });
        expect(at(thick)).toBeLessThanOrEqual(at(thin) + 1e-9);
      }),
    );
  });

  it("more black never lightens cloth lighter than the black's own masstone", () => {
    // An opaque layer of the black (S = 0.025 K) reflects 0.012: L* 10, under every garment here.
    fc.assert(
      fc.property(garments, between(0, 0.2), between(0, 0.2), (garment, one, other) => {
        const at = (part: number) => lightness(garment, tinted("curable", black, part));
        expect(at(Math.max(one, other))).toBeLessThanOrEqual(at(Math.min(one, other)) + 1e-9);
      }),
    );
  });

  it("dyed cotton is hardly changed by a stronger base, dyed polyester clearly", () => {
    const gap = (garment: Garment): number =>
      Math.abs(lightness(garment, mixOf(base("gloss"))) - lightness(garment, mixOf(base("reducer"))));
    expect(gap(cloth([45, 0, -10], ALL_COTTON))).toBeLessThan(0.15);
    expect(gap(cloth([45, 0, -10], HALF_AND_HALF))).toBeGreaterThan(1);
  });

  it("a brightened band keeps its excess under a clear, and is not reflected twice", () => {
    const bare = constantSpectrum(0.6);
    bare[8] = 1.2;
    const garment = cloth([60, 0, 0], HALF_AND_HALF, { bare, bareSource: "measured", readUnder: null });
    const ready = wettableGarment(garment, VIEWING);
    expect(ready.isBrightened).toBe(true);
    const open = mixOf(base("gloss", 1, 0));
    expect(printed(garment, open)[8]).toBe(1.2);
    expect(printed(garment, open)[7]).toBeLessThan(0.6);
    expect(printed(garment, tinted("gloss", black, 0.01))[8]).toBeLessThan(1.2);
  });

  it("a black band of 0 counts as 0.0005 and not as infinite absorption", () => {
    const bare = constantSpectrum(0.05);
    bare[3] = 0;
    const print = printed(cloth([20, 0, 0], HALF_AND_HALF, { bare }), mixOf(base("gloss", 1, 0)));
    expect(print[3]).toBeGreaterThan(0);
    expect(print[3]).toBeLessThan(0.0005);
    expect(absorptionOverScattering(0.0005)).toBeGreaterThan(900);
  });

  it("white covers half the cloth from half white on, all of it without, in proportion between", () => {
    expect(defaultCoverFraction(mixOf(base("curable")))).toBe(1);
    expect(defaultCoverFraction(mixOf(base("curable", 0.75), white(0.25)))).toBeCloseTo(0.75, 12);
    for (const part of [0.5, 0.8, 1]) {
      expect(defaultCoverFraction(mixOf(base("curable", 1 - part), white(part)))).toBe(0.5);
    }
    const garment = GARMENTS["black filament polyester"]!;
    const covered = { ...SOFT_WHITE, clothCoverFraction: 1 };
    expect(lightness(garment, covered)).toBeGreaterThan(lightness(garment, SOFT_WHITE));
  });

  it("smoothing closes the surface: darker without the specular part, lighter with it", () => {
    const at = (smoothed: boolean, geometry: Garment["geometry"]): number =>
      lightness({ ...GARMENTS["navy cotton"]!, geometry }, mixOf(base("curable")), { ...STROKE, smoothed });
    expect(at(true, "45:0")).toBeLessThan(at(false, "45:0") - 1);
    expect(at(true, "specular-excluded")).toBe(at(true, "45:0"));
    expect(at(true, "specular-included")).toBeGreaterThan(at(false, "specular-included"));
  });
});

describe("inputs out of range", () => {
  const mix = mixOf(base("curable"));
  it("are refused by name and value", () => {
    const garment = GARMENTS["forest 50/50"]!;
    const ready = (more: Partial<Garment>) => () => wettableGarment({ ...garment, ...more }, VIEWING);
    expect(ready({ bare: new Float64Array(31) })).toThrow("bare must have 36 bands; got 31");
    expect(ready({ bare: constantSpectrum(1.6) })).toThrow("bare reflectance must be in 0..1.5; got 1.6");
    expect(ready({ bare: constantSpectrum(0.5).fill(Number.NaN, 3, 4) })).toThrow("got NaN");
    expect(ready({ fibres: [{ fibre: "cotton", massFraction: 0.98, dyed: true }] })).toThrow(
      "fibre mass fractions must sum to 1; got 0.98",
    );
    expect(ready({ fibres: [] })).toThrow("fibre mass fractions must sum to 1; got 0");
    expect(ready({ fibres: [{ fibre: "cotton", massFraction: 1.005, dyed: true }] })).not.toThrow();
    expect(() => printed(garment, mixOf(base("curable", 0.9)))).toThrow(
      "mass fractions of a mix must sum to 1; got 0.9",
    );
    expect(() => printed(garment, mixOf())).toThrow("mass fractions of a mix must sum to 1; got 0");
    for (const depositUm of [-1, Number.NaN]) {
      expect(() => printed(garment, mix, { ...STROKE, depositUm })).toThrow(`depositUm must be >= 0`);
      expect(() => printed(garment, mix, { ...STROKE, depositUm })).toThrow(`got ${depositUm}`);
    }
    for (const halftoneFraction of [-0.1, 1.1, Number.NaN]) {
      expect(() => printed(garment, mix, { ...STROKE, halftoneFraction })).toThrow(
        new RangeError(`halftoneFraction must be in 0..1; got ${halftoneFraction}`),
      );
    }
  });

  it("and so are parts of a mix", () => {
    const garment = GARMENTS["forest 50/50"]!;
    const refused = (spoilt: InkMix, message: string): void =>
      expect(() => printed(garment, spoilt)).toThrow(new RangeError(message));
    refused(mixOf(base("curable", 1.2), black(-0.2)), "massFraction must be in 0..1; got 1.2");
    refused(mixOf({ ...base("curable"), strength: -1 }), "strength must be >= 0 and finite; got -1");
    refused(
      mixOf({ ...base("curable"), hazePerUm: Number.NaN }),
      "hazePerUm must be >= 0 and finite; got NaN",
    );
    refused(mixOf({ ...base("curable"), closedFraction: 1.5 }), "closedFraction must be in 0..1; got 1.5");
    refused({ ...mix, clothCoverFraction: 1.5 }, "clothCoverFraction must be in 0..1; got 1.5");
    refused(mixOf({ ...black(1), ownBaseStrength: -2 }), "ownBaseStrength must be >= 0 and finite; got -2");
    refused(
      mixOf({ ...black(1), absorptionPerUm: new Float64Array(31) }),
      "absorptionPerUm must have 36 bands; got 31",
    );
    refused(
      mixOf({ ...black(1), scatteringPerUm: new Float64Array(40) }),
      "scatteringPerUm must have 36 bands; got 40",
    );
    refused(
      mixOf({ ...black(1), absorptionPerUm: new Float64Array(BAND_COUNT).fill(-1) }),
      "absorptionPerUm must be >= 0 and finite; got -1",
    );
  });
});
