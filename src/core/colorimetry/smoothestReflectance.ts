/**
 * The numerical heart of the reconstruction: Newton's method for the smoothest reflectance with given tristimulus values.
 */
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { solveInPlace } from "./linearSystem.ts";
import type { Tristimulus } from "./viewing.ts";
import type { WeightSet } from "./weights.ts";

const UNKNOWN_COUNT = BAND_COUNT + 3;

/** Our choice: largest residual that counts as solved, in z and in X, Y, Z of 0..1; far below any reading. */
const RESIDUAL_LIMIT = 1e-9;
/** Our choice: cloth colours take under ten Newton steps (tested); this leaves room for those at the edge of the solid. */
const ITERATION_LIMIT = 60;
/** Our choice: a step that does not lessen the residual is halved, at most this often. */
const HALVING_LIMIT = 8;
/** Our choice: the shortest stage of the way from the grey that is tried. */
const STRIDE_LIMIT = 1 / 64;

/** Residual of the stationarity conditions at `unknowns` = z (BAND_COUNT) and the multipliers of X, Y, Z. */
function residualAt(
  unknowns: Float64Array,
  target: readonly number[],
  rows: readonly Float64Array[],
): Float64Array {
  const residual = new Float64Array(UNKNOWN_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    const z = unknowns[i]!;
    const tanh = Math.tanh(z);
    let pull = 0;
    for (let c = 0; c < 3; c++) {
      pull += rows[c]![i]! * unknowns[BAND_COUNT + c]!;
      residual[BAND_COUNT + c] = residual[BAND_COUNT + c]! + (rows[c]![i]! * (1 + tanh)) / 2;
    }
    residual[i] = residual[i]! + ((1 - tanh * tanh) / 2) * pull;
    if (i > 0) {
      const slope = 2 * (z - unknowns[i - 1]!);
      residual[i] = residual[i]! + slope;
      residual[i - 1] = residual[i - 1]! - slope;
    }
  }
  for (let c = 0; c < 3; c++) residual[BAND_COUNT + c] = residual[BAND_COUNT + c]! - target[c]!;
  return residual;
}

/** Derivative of the residual: tridiagonal in z, bordered by the three constraints; symmetric. */
function jacobianAt(unknowns: Float64Array, rows: readonly Float64Array[]): Float64Array {
  const matrix = new Float64Array(UNKNOWN_COUNT * UNKNOWN_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    const tanh = Math.tanh(unknowns[i]!);
    const slope = (1 - tanh * tanh) / 2;
    let pull = 0;
    for (let c = 0; c < 3; c++) {
      pull += rows[c]![i]! * unknowns[BAND_COUNT + c]!;
      matrix[i * UNKNOWN_COUNT + BAND_COUNT + c] = slope * rows[c]![i]!;
      matrix[(BAND_COUNT + c) * UNKNOWN_COUNT + i] = slope * rows[c]![i]!;
    }
    const neighbours = i === 0 || i === BAND_COUNT - 1 ? 1 : 2;
    matrix[i * UNKNOWN_COUNT + i] = 2 * neighbours - 2 * slope * tanh * pull;
    if (i > 0) {
      matrix[i * UNKNOWN_COUNT + i - 1] = -2;
      matrix[(i - 1) * UNKNOWN_COUNT + i] = -2;
    }
  }
  return matrix;
}

function norm(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0));
}

function largest(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

interface Solution {
  readonly unknowns: Float64Array;
  readonly iterations: number;
}

/** Damped Newton from `start`; undefined where the residual does not vanish. */
function solveFrom(
  start: Float64Array,
  target: readonly number[],
  rows: readonly Float64Array[],
): Solution | undefined {
  let unknowns = start;
  let residual = residualAt(unknowns, target, rows);
  for (let iterations = 0; iterations <= ITERATION_LIMIT; iterations++) {
    if (largest(residual) < RESIDUAL_LIMIT) return { unknowns, iterations };
    const step = residual.slice();
    if (!solveInPlace(jacobianAt(unknowns, rows), step)) return undefined;
    const before = norm(residual);
    let share = 1;
    let next = unknowns;
    for (let halvings = 0; halvings <= HALVING_LIMIT; halvings++) {
      next = unknowns.map((value, i) => value - share * step[i]!);
      residual = residualAt(next, target, rows);
      if (norm(residual) < before) break;
      share /= 2;
    }
    unknowns = next;
  }
  return undefined;
}

export interface SmoothestReflectance {
  readonly spectrum: Spectrum;
  /** Newton steps of all the stages together. */
  readonly iterations: number;
}

/**
 * The reflectance R = (tanh z + 1)/2 of least sum (z[i+1] - z[i])^2 whose tristimulus values are `target`, or undefined
 * where damped Newton steps do not reach it (at or beyond the edge of the object-colour solid).
 * S. A. Burns 2020, "Numerical methods for smoothest reflectance reconstruction", Color Res. Appl. 45 (LHTSS). Departs
 * from it in starting at the grey of equal luminance, in halving steps that do not lessen the residual, and, where the
 * whole way from the grey is too far, in walking it by stages, each started from the last.
 */
export function smoothestReflectance(
  target: Tristimulus,
  weights: WeightSet,
): SmoothestReflectance | undefined {
  const rows = [weights.x, weights.y, weights.z].map((row) => row.map((value) => value / 100));
  const wanted = [target.X / 100, target.Y / 100, target.Z / 100];
  const luminance = target.Y / weights.white.Y;
  const grey = [weights.white.X, weights.white.Y, weights.white.Z].map((value) => (luminance * value) / 100);
  let unknowns: Float64Array = new Float64Array(UNKNOWN_COUNT).fill(
    Math.atanh(2 * luminance - 1),
    0,
    BAND_COUNT,
  );
  let iterations = 0;
  let done = 0;
  let stride = 1;
  while (done < 1) {
    const reach = Math.min(1, done + stride);
    const stage = grey.map((value, c) => value + reach * (wanted[c]! - value));
    const solution = solveFrom(unknowns, stage, rows);
    if (solution === undefined) {
      stride /= 2;
      if (stride < STRIDE_LIMIT) return undefined;
    } else {
      unknowns = solution.unknowns;
      iterations += solution.iterations;
      done = reach;
    }
  }
  return { spectrum: unknowns.slice(0, BAND_COUNT).map((z) => (Math.tanh(z) + 1) / 2), iterations };
}
