/** What a colour leaves open of its spectrum: the smoothest one is the most probable, and others are probable too. */
import { labFromTristimulus } from "../colorimetry/cielab.ts";
import { tristimulusFromReflectance } from "../colorimetry/tristimulus.ts";
import type { WeightSet } from "../colorimetry/weights.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { factorise, solveLower } from "./dense.ts";

/** z = atanh(2R - 1) is held within what 0.0005 and 0.9995 give: a band outside says no more. */
const HIGHEST_Z = Math.atanh(0.999);
/** Least standard deviation of one step: what even the plainest grey leaves open. Invented default. */
const LEAST_STEP_SD = 0.03;
/** The open part is taken to step twice as much, in variance, as the smoothest spectrum itself does. Invented default. */
const STEP_PER_SMOOTHEST = 2;

/**
 * Variance of one step of the walk. The smoothest reflectance (S. A. Burns 2020) is the most probable one where z walks at
 * random from band to band; how far it steps is taken from the smoothest one itself, since a deep dye steps further than a
 * grey.
 */
export function stepVariance(reflectance: Spectrum): number {
  const z = reflectance.map((r) => {
    const at = Math.atanh(Math.min(1, Math.max(-1, 2 * r - 1)));
    return Math.min(HIGHEST_Z, Math.max(-HIGHEST_Z, at));
  });
  let squares = 0;
  for (let i = 1; i < BAND_COUNT; i++) squares += (z[i]! - z[i - 1]!) ** 2;
  return LEAST_STEP_SD ** 2 + (STEP_PER_SMOOTHEST * squares) / (BAND_COUNT - 1);
}

/** Where the walk starts, nothing is known. */
const START_SD = 3;
/** What an instrument itself is unsure of in X, Y, Z (0..100). Invented default. */
const READING_SD = 0.1;

/** Covariance matrix of the walk, START_SD^2 + step min(i, j), times `row`: two running sums. */
function throughWalk(row: Spectrum, step: number): Spectrum {
  const product = new Float64Array(BAND_COUNT);
  let above = 0;
  for (let i = BAND_COUNT - 1; i >= 0; i--) {
    above += row[i]!;
    product[i] = above;
  }
  const all = START_SD ** 2 * above;
  let sum = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    if (i > 0) sum += product[i]!;
    product[i] = all + step * sum;
  }
  return product;
}

/** dR/dz of each band: 2 R (1 - R); 0 where a brightener lifts R above 1. */
export function bandSlopes(reflectance: Spectrum): Spectrum {
  return reflectance.map((r) => Math.max(0, 2 * r * (1 - r)));
}

/** dX, dY and dZ by z, where the reflectance changes by `slopes` per z: 3 rows of BAND_COUNT. */
export function tristimulusSlopes(slopes: Spectrum, { x, y, z }: WeightSet): Spectrum[] {
  return [x, y, z].map((row) => row.map((weight, i) => weight * slopes[i]!));
}

const LAB_STEP = 1e-4;

/** dL*, da* and db* by z, where `reflectance` changes by `bySlopes` per z: 3 rows of BAND_COUNT. */
export function labSlopesOf(reflectance: Spectrum, bySlopes: Spectrum, weights: WeightSet): Spectrum[] {
  const at = tristimulusFromReflectance(reflectance, weights);
  const centre = labFromTristimulus(at, weights.white);
  const slopes = tristimulusSlopes(bySlopes, weights);
  const found = [0, 1, 2].map(() => new Float64Array(BAND_COUNT));
  (["X", "Y", "Z"] as const).forEach((axis, c) => {
    const moved = labFromTristimulus({ ...at, [axis]: at[axis] + LAB_STEP }, weights.white);
    const by = [moved.L - centre.L, moved.a - centre.a, moved.b - centre.b].map((d) => d / LAB_STEP);
    for (let row = 0; row < 3; row++) {
      for (let i = 0; i < BAND_COUNT; i++) found[row]![i]! += by[row]! * slopes[c]![i]!;
    }
  });
  return found;
}

/**
 * Covariance (3 x 3) of three linear functions `wanted` of z, the functions `known` being read: that of the walk
 * conditioned on them, `step` being its variance per band (Gaussian process regression: Rasmussen & Williams 2006, eq. 2.24; from memory).
 */
export function conditionedCovariance(
  wanted: readonly Spectrum[],
  known: readonly Spectrum[],
  step: number,
): Float64Array {
  const all = [...known, ...wanted];
  const through = all.map((row) => throughWalk(row, step));
  const n = known.length;
  const m = wanted.length;
  const dot = (one: Spectrum, other: Spectrum): number =>
    one.reduce((sum, value, i) => sum + value * other[i]!, 0);
  const matrix = new Float64Array(n * n);
  const cross = new Float64Array(n * m);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) matrix[i * n + j] = dot(known[i]!, through[j]!);
    matrix[i * n + i]! += READING_SD ** 2;
    for (let j = 0; j < m; j++) cross[i * m + j] = dot(known[i]!, through[n + j]!);
  }
  factorise(matrix, n);
  solveLower(matrix, n, cross, m);
  const covariance = new Float64Array(m * m);
  for (let i = 0; i < m; i++) {
    for (let j = 0; j < m; j++) {
      covariance[i * m + j] = dot(wanted[i]!, through[n + j]!);
      for (let k = 0; k < n; k++) covariance[i * m + j]! -= cross[k * m + i]! * cross[k * m + j]!;
    }
  }
  return covariance;
}
