/**
 * Which colours a reflectance between 0 and 1 can have at all under one light and observer.
 */
import { BAND_COUNT } from "../spectrum/spectrum.ts";
import type { Tristimulus } from "./viewing.ts";
import type { WeightSet } from "./weights.ts";

/** Four numbers per facet: a unit normal (x, y, z) and the largest value normal . XYZ that a reflectance reaches. */
type Facets = Float64Array;

const facetsOf = new WeakMap<WeightSet, Facets>();

/** The largest normal . XYZ over all reflectances in 0..1: bands that help at 1, the others at 0. */
function support(weights: WeightSet, nx: number, ny: number, nz: number): number {
  let total = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    total += Math.max(0, nx * weights.x[i]! + ny * weights.y[i]! + nz * weights.z[i]!);
  }
  return total;
}

function deriveFacets(weights: WeightSet): Facets {
  const { x, y, z } = weights;
  const facets: number[] = [];
  for (let i = 0; i < BAND_COUNT; i++) {
    for (let j = i + 1; j < BAND_COUNT; j++) {
      const nx = y[i]! * z[j]! - z[i]! * y[j]!;
      const ny = z[i]! * x[j]! - x[i]! * z[j]!;
      const nz = x[i]! * y[j]! - y[i]! * x[j]!;
      const length = Math.hypot(nx, ny, nz);
      if (length < Number.EPSILON * Math.hypot(x[i]!, y[i]!, z[i]!) * Math.hypot(x[j]!, y[j]!, z[j]!))
        continue;
      for (const sign of [1 / length, -1 / length]) {
        facets.push(nx * sign, ny * sign, nz * sign, support(weights, nx * sign, ny * sign, nz * sign));
      }
    }
  }
  return Float64Array.from(facets);
}

/**
 * How far inside the object-colour solid `tristimulus` lies: the distance in X, Y, Z to its nearest face, negative
 * outside. With 36 bands the solid is the zonotope of the 36 weight vectors; its faces are spanned by pairs of them
 * (Schrodinger 1920 and MacAdam 1935 for the continuous solid, from memory), so the answer is exact.
 */
export function depthInObjectColourSolid(tristimulus: Tristimulus, weights: WeightSet): number {
  let facets = facetsOf.get(weights);
  if (facets === undefined) {
    facets = deriveFacets(weights);
    facetsOf.set(weights, facets);
  }
  let depth = Number.POSITIVE_INFINITY;
  for (let k = 0; k < facets.length; k += 4) {
    const along =
      facets[k]! * tristimulus.X + facets[k + 1]! * tristimulus.Y + facets[k + 2]! * tristimulus.Z;
    depth = Math.min(depth, facets[k + 3]! - along);
  }
  return depth;
}
