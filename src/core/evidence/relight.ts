/** A colour read under one light as it would read under another, and how unsure that is: many spectra have one colour. */
import { labFromReflectance, labFromTristimulus } from "../colorimetry/cielab.ts";
import { reflectanceFromLab } from "../colorimetry/reconstruct.ts";
import { tristimulusFromReflectance } from "../colorimetry/tristimulus.ts";
import type { Lab, Viewing } from "../colorimetry/viewing.ts";
import { type WeightSet, weightsFor } from "../colorimetry/weights.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { factorise, solveLower } from "./dense.ts";

/**
 * The smoothest reflectance (S. A. Burns 2020) is the most probable one where z = atanh(2R - 1) walks at random from band
 * to band; this is one step's standard deviation. Invented default: a dye's band takes z from -1.5 to 0 in some 60 nm.
 */
const STEP_SD = 0.15;
/** Where the walk starts, nothing is known. */
const START_SD = 3;
/** What an instrument itself is unsure of in X, Y, Z (0..100). Invented default. */
const READING_SD = 0.1;

/** Covariance of z at bands i and j of the walk. */
const walk = (i: number, j: number): number => START_SD ** 2 + STEP_SD ** 2 * Math.min(i, j);

/** A relit colour with what its uncertainty is made of. */
export interface Relit {
  readonly lab: Lab;
  /** Covariance (3 x 3) of `lab`. */
  readonly covariance: Float64Array;
  /** dX, dY, dZ by z under the light it was read in, and dL*, da*, db* by z under the other: 3 rows of BAND_COUNT each. */
  readonly readSlopes: readonly Spectrum[];
  readonly labSlopes: readonly Spectrum[];
}

function tristimulusSlopes(reflectance: Spectrum, { x, y, z }: WeightSet): Spectrum[] {
  return [x, y, z].map((row) => row.map((weight, i) => weight * 2 * reflectance[i]! * (1 - reflectance[i]!)));
}

const LAB_STEP = 1e-4;

function labSlopesOf(reflectance: Spectrum, weights: WeightSet): Spectrum[] {
  const at = tristimulusFromReflectance(reflectance, weights);
  const centre = labFromTristimulus(at, weights.white);
  const slopes = tristimulusSlopes(reflectance, weights);
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
 * conditioned on them (Gaussian process regression: Rasmussen & Williams 2006, eq. 2.24; from memory).
 */
export function conditionedCovariance(wanted: readonly Spectrum[], known: readonly Spectrum[]): Float64Array {
  const all = [...known, ...wanted];
  const through = all.map((row) => {
    const product = new Float64Array(BAND_COUNT);
    for (let i = 0; i < BAND_COUNT; i++) {
      for (let j = 0; j < BAND_COUNT; j++) product[i]! += walk(i, j) * row[j]!;
    }
    return product;
  });
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

/** `lab`, read under `actual`, as it would read under `stated`; null for a colour that no reflectance has. */
export function relit(lab: Lab, actual: Viewing, stated: Viewing): Relit | null {
  const found = reflectanceFromLab(lab, actual);
  if (!found.ok) return null;
  const { spectrum } = found;
  const readSlopes = tristimulusSlopes(spectrum, weightsFor(actual));
  const labSlopes = labSlopesOf(spectrum, weightsFor(stated));
  return {
    lab: labFromReflectance(spectrum, weightsFor(stated)),
    covariance: conditionedCovariance(labSlopes, readSlopes),
    readSlopes,
    labSlopes,
  };
}

/**
 * Covariance of the change from `bare` to `print`, both relit: a dye that relighting misjudges on the cloth it misjudges
 * on the print as well, so only the difference of their slopes counts.
 */
export function changeCovariance(bare: Relit, print: Relit): Float64Array {
  const wanted = print.labSlopes.map((row, c) => row.map((value, i) => value - bare.labSlopes[c]![i]!));
  return conditionedCovariance(wanted, [...bare.readSlopes, ...print.readSlopes]);
}
