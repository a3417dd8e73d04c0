// The fused inner loops of a prediction against the functions of core/optics that they write out.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { blendReflectance } from "../../../src/core/optics/fibreBlend.ts";
import { filmLayer, reflectanceOverSubstrate } from "../../../src/core/optics/inkFilm.ts";
import { reflectanceFromAbsorptionOverScattering } from "../../../src/core/optics/kubelkaMunk.ts";
import { mixAbsorptionScattering, mixBaseStrength } from "../../../src/core/optics/mix.ts";
import { withClosedSurface } from "../../../src/core/optics/saunderson.ts";
import { darkeningFactor, wetOutGain, wettedReflectance } from "../../../src/core/optics/wetOut.ts";
import { halftoneReflectance } from "../../../src/core/optics/yuleNielsen.ts";
import { printedColour, workspaceFor } from "../../../src/core/prediction/printedColour.ts";
import { printedFilm } from "../../../src/core/prediction/printedFilm.ts";
import { labOver, printedLab } from "../../../src/core/prediction/printedLab.ts";
import { gainsUnder, layFilmOver } from "../../../src/core/prediction/printedReflectance.ts";
import { wetInto, wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { BAND_COUNT, constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import { between } from "../optics/between.ts";
import { cloth, GARMENTS, VIEWING } from "./cloths.ts";
import { BASES, type BaseName, base, black, mixOf, STROKE, white } from "./inks.ts";

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

function farthest(one: ArrayLike<number>, other: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < one.length; i++) most = Math.max(most, Math.abs(one[i]! - other[i]!));
  return most;
}

describe("the fused loops", () => {
  it("lay a film as filmLayer, reflectanceOverSubstrate, cover, withClosedSurface and halftoneReflectance do", () => {
    fc.assert(
      fc.property(
        garments,
        geometries,
        between(0, 0.05),
        between(0, 0.6),
        between(0, 60),
        between(0, 1),
        between(0, 1),
        between(0, 1),
        (garment, geometry, blackPart, whitePart, depositUm, closed, cover, halftone) => {
          const parts = [
            base("matt", 1 - blackPart - whitePart, closed),
            black(blackPart),
            white(whitePart),
          ] as const;
          const mix = { parts, clothCoverFraction: cover };
          const ready = wettableGarment({ ...garment, geometry }, VIEWING);
          const film = printedFilm(mix, { ...STROKE, depositUm, halftoneFraction: halftone });
          const wetted = new Float64Array(BAND_COUNT);
          wetInto(wetted, ready, gainsUnder(ready, film));
          const fused = new Float64Array(BAND_COUNT);
          layFilmOver(fused, wetted, ready, film);
          const haze = { absorptionPerUm: constantSpectrum(0), scatteringPerUm: constantSpectrum(0.0001) };
          const { absorptionPerUm, scatteringPerUm } = mixAbsorptionScattering([
            { ...haze, massFraction: parts[0].massFraction },
            parts[1],
            parts[2],
          ]);
          const apart = wetted.map((below, i) => {
            const layer = filmLayer(absorptionPerUm[i]!, scatteringPerUm[i]!, depositUm);
            const surface = withClosedSurface(reflectanceOverSubstrate(layer, below), closed, geometry);
            const bare = garment.bare[i]!;
            return halftoneReflectance(bare, bare + cover * (surface - bare), halftone);
          });
          expect(farthest(fused, apart)).toBeLessThan(ROUNDING);
        },
      ),
    );
  });

  it("wet an evenly dyed cloth as wetOutGain, darkeningFactor and wettedReflectance do", () => {
    fc.assert(
      fc.property(
        between(0, 1),
        between(0, 60),
        baseNames,
        between(-1, 1),
        (cotton, depositUm, name, lnWetOut) => {
          const garment = cloth(
            [50, 20, -10],
            [
              ["polyester-spun", 1 - cotton],
              ["cotton", cotton],
            ],
          );
          const ready = wettableGarment(garment, VIEWING);
          const mix = mixOf(base(name));
          const strength = mixBaseStrength([{ massFraction: 1, baseStrength: BASES[name].strength }]);
          const gains = [0.5, 0.02].map((gamma) => wetOutGain(gamma, strength, depositUm, lnWetOut));
          const film = printedFilm(mix, { ...STROKE, depositUm });
          const wetted = new Float64Array(BAND_COUNT);
          wetInto(wetted, ready, gainsUnder(ready, film, { lnWetOut }));
          const factor = darkeningFactor([1 - cotton, cotton], gains);
          expect(
            farthest(
              wetted,
              garment.bare.map((R) => wettedReflectance(R, factor)),
            ),
          ).toBeLessThan(ROUNDING);
        },
      ),
    );
  });

  it("wet a heather fibre by fibre as blendReflectance does", () => {
    const garment = GARMENTS["graphite heather, polyester dyed"]!;
    const ready = wettableGarment(garment, VIEWING);
    expect(ready.dyedFibreKs).not.toBeNull();
    const gains = Float64Array.of(0.6, 0.03);
    const wetted = new Float64Array(BAND_COUNT);
    wetInto(wetted, ready, gains);
    const apart = wetted.map((_, i) => {
      const dyed = reflectanceFromAbsorptionOverScattering(Math.exp(0.6) * ready.dyedFibreKs![i]!);
      const undyed = wettedReflectance(0.8, Math.exp(0.03));
      return blendReflectance([dyed, undyed], [0.5, 0.5]);
    });
    expect(farthest(wetted, apart)).toBeLessThan(ROUNDING);
  });

  it("give the colour without the spectrum that the spectrum has, whatever lies on whatever", () => {
    /** One denominator instead of two: roundings of L*, a*, b*, which are numbers up to 100. */
    const LAB_ROUNDING = 1e-9;
    const brightened = {
      ...GARMENTS["white filament polyester"]!,
      bare: constantSpectrum(0.8).fill(1.1, 6, 12),
    };
    fc.assert(
      fc.property(
        fc.constantFrom(brightened, ...Object.values(GARMENTS)),
        geometries,
        baseNames,
        between(0, 0.05),
        between(0, 0.5),
        between(0, 80),
        fc.constantFrom(1, 1, 0.4),
        fc.constantFrom(1, null),
        fc.boolean(),
        (
          garment,
          geometry,
          name,
          blackPart,
          whitePart,
          depositUm,
          halftoneFraction,
          clothCoverFraction,
          smoothed,
        ) => {
          const parts = [base(name, 1 - blackPart - whitePart), black(blackPart), white(whitePart)];
          const ready = wettableGarment({ ...garment, geometry }, VIEWING);
          const film = printedFilm(
            { parts, clothCoverFraction },
            { ...STROKE, depositUm, halftoneFraction, smoothed },
          );
          const room = workspaceFor(ready);
          const whole = printedColour(room, ready, film);
          for (const lab of [printedLab(room, ready, film), labOver(room, ready, film)]) {
            expect(Math.abs(lab.L - whole.L)).toBeLessThan(LAB_ROUNDING);
            expect(Math.abs(lab.a - whole.a)).toBeLessThan(LAB_ROUNDING);
            expect(Math.abs(lab.b - whole.b)).toBeLessThan(LAB_ROUNDING);
          }
        },
      ),
    );
  });

  it("unmix a heather so that unwetted it is the bare cloth again", () => {
    for (const name of [
      "light grey heather",
      "graphite heather, polyester dyed",
      "red heather, cotton dyed",
    ]) {
      const garment = GARMENTS[name]!;
      const ready = wettableGarment(garment, VIEWING);
      const wetted = new Float64Array(BAND_COUNT);
      wetInto(wetted, ready, new Float64Array(garment.fibres.length));
      expect(farthest(wetted, garment.bare)).toBeLessThan(1e-9); // unmixing divides by the dyed share, 0.1
    }
  });
});
