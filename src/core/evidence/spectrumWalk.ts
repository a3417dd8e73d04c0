/** What a colour leaves open of its spectrum: the smoothest one is the most probable, and others are probable too. */

import { labFromTristimulus } from "../colorimetry/cielab.ts";
import { tristimulusFromReflectance } from "../colorimetry/tristimulus.ts";
import type { WeightSet } from "../colorimetry/weights.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { factorise, solveLower } from "./dense.ts";
import { smallArray } from "./smallArrays.ts";

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

/** Writes into `out` the walk's covariance matrix, START_SD^2 + step min(i, j), times `row`: two running sums. */
function throughWalk(out: Spectrum, row: Spectrum, step: number): void {
  let above = 0;
  for (let i = BAND_COUNT - 1; i >= 0; i--) {
    above += row[i]!;
    out[i] = above;
  }
  const all = START_SD ** 2 * above;
  let sum = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    if (i > 0) sum += out[i]!;
    out[i] = all + step * sum;
  }
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

/**
 * Writes into `out` dL*, da* and db* by z, where `reflectance` changes by `bySlopes` per z: 3 rows of BAND_COUNT.
 */
export function labSlopesInto(
  out: readonly Spectrum[],
  reflectance: Spectrum,
  bySlopes: Spectrum,
  weights: WeightSet,
): void {
  const at = tristimulusFromReflectance(reflectance, weights);
  const { L, a, b } = labFromTristimulus(at, weights.white);
  const byX = labFromTristimulus({ ...at, X: at.X + LAB_STEP }, weights.white);
  const byY = labFromTristimulus({ ...at, Y: at.Y + LAB_STEP }, weights.white);
  const byZ = labFromTristimulus({ ...at, Z: at.Z + LAB_STEP }, weights.white);
  const { x, y, z } = weights;
  const [lightness, red, yellow] = out;
  for (let i = 0; i < BAND_COUNT; i++) {
    const per = bySlopes[i]! / LAB_STEP;
    const X = x[i]! * per;
    const Y = y[i]! * per;
    const Z = z[i]! * per;
    lightness![i] = X * (byX.L - L) + Y * (byY.L - L) + Z * (byZ.L - L);
    red![i] = X * (byX.a - a) + Y * (byY.a - a) + Z * (byZ.a - a);
    yellow![i] = X * (byX.b - b) + Y * (byY.b - b) + Z * (byZ.b - b);
  }
}

/** Three rows of BAND_COUNT. */
export function threeRows(): Spectrum[] {
  return [0, 1, 2].map(() => new Float64Array(BAND_COUNT));
}

/** What is read of z, made ready for many covariances. */
export interface Conditioning {
  /** The rows read, through the walk's covariance. */
  readonly through: readonly Spectrum[];
  /** Cholesky factor of the covariance of what is read. */
  readonly factor: Float64Array;
  /** Variance of one step of the walk. */
  readonly step: number;
}

/** Linear functions `known` of z, each read within READING_SD, of a walk whose step has variance `step`. */
export function conditioningOn(known: readonly Spectrum[], step: number): Conditioning {
  const n = known.length;
  const through = known.map((row) => {
    const product = new Float64Array(BAND_COUNT);
    throughWalk(product, row, step);
    return product;
  });
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) factor[i * n + j] = dot(known[i]!, through[j]!);
    factor[i * n + i]! += READING_SD ** 2;
  }
  factorise(factor, n);
  return { through, factor, step };
}

function dot(one: Spectrum, other: Spectrum): number {
  let sum = 0;
  for (let i = 0; i < BAND_COUNT; i++) sum += one[i]! * other[i]!;
  return sum;
}

/** Filled anew at each call. */
const product: Spectrum = new Float64Array(BAND_COUNT);

/**
 * Covariance (3 x 3) of three linear functions `wanted` of z: that of the walk conditioned on what is read (Gaussian
 * process regression: Rasmussen & Williams 2006, eq. 2.24; from memory).
 */
export function conditionedCovariance(
  wanted: readonly Spectrum[],
  { through, factor, step }: Conditioning,
): Float64Array {
  const n = through.length;
  const cross = smallArray(n * 3);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < 3; j++) cross[i * 3 + j] = dot(through[i]!, wanted[j]!);
  }
  solveLower(factor, n, cross, 3);
  const covariance = smallArray(9);
  for (let i = 0; i < 3; i++) {
    throughWalk(product, wanted[i]!, step);
    for (let j = i; j < 3; j++) {
      let sum = dot(product, wanted[j]!);
      for (let k = 0; k < n; k++) sum -= cross[k * 3 + i]! * cross[k * 3 + j]!;
      covariance[i * 3 + j] = sum;
      covariance[j * 3 + i] = sum;
    }
  }
  return covariance;
}
