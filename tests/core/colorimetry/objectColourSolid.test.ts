// The limits of object colours: exact against the reflectances that reach them.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { depthInObjectColourSolid } from "../../../src/core/colorimetry/objectColourSolid.ts";
import { tristimulusFromReflectance } from "../../../src/core/colorimetry/tristimulus.ts";
import type { Tristimulus } from "../../../src/core/colorimetry/viewing.ts";
import { type WeightSet, weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { BAND_COUNT, constantSpectrum, type Spectrum } from "../../../src/core/spectrum/spectrum.ts";
import { anyReflectance, anyViewing } from "./allViewings.ts";

/** Rounding of sums of 36 products around 100. */
const ROUNDING = 1e-9;

/** The reflectance of 0 and 1 that reaches furthest along a direction (Schrodinger 1920: an optimal colour). */
function optimalReflectance(weights: WeightSet, [x, y, z]: readonly [number, number, number]): Spectrum {
  return Float64Array.from({ length: BAND_COUNT }, (_, i) =>
    x * weights.x[i]! + y * weights.y[i]! + z * weights.z[i]! > 0 ? 1 : 0,
  );
}

const component = fc.double({ min: -1, max: 1, noNaN: true });
const anyDirection = fc
  .tuple(component, component, component)
  .filter((direction) => Math.hypot(...direction) > 0.1);

describe("the object-colour solid", () => {
  it("holds the colour of every reflectance in 0..1", () => {
    fc.assert(
      fc.property(anyReflectance, anyViewing, (reflectance, viewing) => {
        const weights = weightsFor(viewing);
        const seen = tristimulusFromReflectance(reflectance, weights);
        expect(depthInObjectColourSolid(seen, weights)).toBeGreaterThan(-ROUNDING);
      }),
    );
  });

  it("has every optimal colour on its surface, and nothing further out that way", () => {
    fc.assert(
      fc.property(anyDirection, anyViewing, (direction, viewing) => {
        const weights = weightsFor(viewing);
        const edge = tristimulusFromReflectance(optimalReflectance(weights, direction), weights);
        expect(Math.abs(depthInObjectColourSolid(edge, weights))).toBeLessThan(ROUNDING);
        const beyond: Tristimulus = {
          X: edge.X + 0.1 * direction[0],
          Y: edge.Y + 0.1 * direction[1],
          Z: edge.Z + 0.1 * direction[2],
        };
        expect(depthInObjectColourSolid(beyond, weights)).toBeLessThan(-ROUNDING);
      }),
    );
  });

  it("is symmetric about medium grey", () => {
    fc.assert(
      fc.property(anyReflectance, anyViewing, (reflectance, viewing) => {
        const weights = weightsFor(viewing);
        const one = tristimulusFromReflectance(reflectance, weights);
        const opposite = tristimulusFromReflectance(
          constantSpectrum(1).map((value, i) => value - reflectance[i]!),
          weights,
        );
        expect(depthInObjectColourSolid(opposite, weights)).toBeCloseTo(
          depthInObjectColourSolid(one, weights),
          9,
        );
      }),
    );
  });

  it("needs no face between two bands of the same colour", () => {
    const weights = weightsFor({ illuminant: "D65", observer: "2deg" });
    const doubled: WeightSet = {
      x: weights.x.slice(),
      y: weights.y.slice(),
      z: weights.z.slice(),
      white: weights.white,
    };
    for (const row of [doubled.x, doubled.y, doubled.z]) row[20] = row[19]!;
    const seen = tristimulusFromReflectance(constantSpectrum(0.5), doubled);
    const depth = depthInObjectColourSolid(seen, doubled);
    expect(depth).toBeGreaterThan(0);
    expect(depth).toBeLessThan(100);
  });
});
