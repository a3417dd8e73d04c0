/** Many points of a fitted surface at once, by the band kernel where there is one. */
import { bandKernel } from "./kernel/bandKernel.ts";
import { MOST_POINTS, POINTS_AT, SURFACE_AT } from "./kernel/residentBands.ts";
import { surfaceValue, WET_NODE_COUNT } from "./responseSurface.ts";

/** Positions of points on a surface, and values at them. */
export interface SurfacePoints {
  readonly x: Float64Array;
  readonly y: Float64Array;
}

const PAIR = 2;
const X = POINTS_AT / 8;
const Y = X + MOST_POINTS;
const VALUES = Y + MOST_POINTS;

/**
 * Positions of up to MOST_POINTS points, in the kernel's memory where there is one: there is one such set, to be filled and
 * asked before anything else is predicted.
 */
export function surfacePoints(): SurfacePoints {
  if (bandKernel === null) return { x: new Float64Array(MOST_POINTS), y: new Float64Array(MOST_POINTS) };
  const { numbers } = bandKernel;
  return { x: numbers.subarray(X, Y), y: numbers.subarray(Y, VALUES) };
}

/** Writes into `out` the values at the first `count` of `points` of a surface with a tint axis. */
export function tintedSurfaceAt(
  out: Float64Array,
  coefficients: readonly number[],
  tintCount: number,
  points: SurfacePoints,
  count: number,
): void {
  if (bandKernel === null) {
    for (let p = 0; p < count; p++) {
      out[p] = surfaceValue(coefficients, tintCount, points.x[p]!, points.y[p]!);
    }
    return;
  }
  const { numbers } = bandKernel;
  for (let i = 0; i < coefficients.length; i++) numbers[SURFACE_AT / 8 + i] = coefficients[i]!;
  bandKernel.surfaceAt(SURFACE_AT, X * 8, Y * 8, VALUES * 8, Math.ceil(count / PAIR));
  for (let p = 0; p < count; p++) out[p] = numbers[VALUES + p]!;
}

/** Writes into `out` the values at the first `count` of `points` of the surface of a clear, a polynomial of x. */
export function clearSurfaceAt(
  out: Float64Array,
  coefficients: readonly number[],
  points: SurfacePoints,
  count: number,
): void {
  const { x } = points;
  for (let p = 0; p < count; p++) {
    const at = x[p]!;
    let value = 0;
    for (let i = WET_NODE_COUNT - 1; i >= 0; i--) value = value * at + coefficients[i]!;
    out[p] = value;
  }
}
