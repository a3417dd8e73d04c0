/**
 * One colour coordinate of a print as a polynomial of its two strong unknowns: how far it wets out and how much tint
 * it holds. A spread needs hundreds of colours per cell; the exact model gives a few nodes, the rest is read off here.
 */

/**
 * Nodes along each axis: Chebyshev points of the first kind. Measured by us on the demo garments over 2.9 standard
 * deviations: 6 x 4 nodes miss the exact L* by at most 0.05 within 1.8 standard deviations (tests hold it).
 */
export const WET_NODE_COUNT = 6;
export const TINT_NODE_COUNT = 4;

const chebyshevNodes = (count: number): number[] =>
  Array.from({ length: count }, (_, k) => Math.cos((Math.PI * (2 * k + 1)) / (2 * count)));

const WET_NODES = chebyshevNodes(WET_NODE_COUNT);
const TINT_NODES = chebyshevNodes(TINT_NODE_COUNT);

/** Row i, column k: what the value at node k adds to the coefficient of x^i (inverse of the Vandermonde matrix). */
function coefficientsFrom(nodes: readonly number[]): Float64Array {
  const n = nodes.length;
  const inverse = new Float64Array(n * n);
  for (let k = 0; k < n; k++) {
    let polynomial = [1];
    for (let j = 0; j < n; j++) {
      if (j === k) continue;
      const scale = 1 / (nodes[k]! - nodes[j]!);
      const next = new Array<number>(polynomial.length + 1).fill(0);
      for (let i = 0; i < polynomial.length; i++) {
        next[i + 1] = next[i + 1]! + polynomial[i]! * scale;
        next[i] = next[i]! - polynomial[i]! * nodes[j]! * scale;
      }
      polynomial = next;
    }
    for (let i = 0; i < n; i++) inverse[i * n + k] = polynomial[i]!;
  }
  return inverse;
}

const WET_INVERSE = coefficientsFrom(WET_NODES);
const TINT_INVERSE = coefficientsFrom(TINT_NODES);

/** Where along the axes a surface stands. The wet-out axis runs in sqrt(factor), in which L* is nearly straight. */
export interface SurfaceRange {
  /** Half range of ln(wet-out factor). */
  readonly lnWetOut: number;
  /** Half range of ln(tint factor); 0 for a clear. */
  readonly lnTint: number;
}

/** ln(wet-out factor) at wet-out node `k`. */
export function lnWetOutAtNode(range: SurfaceRange, k: number): number {
  const middle = Math.cosh(range.lnWetOut / 2);
  const half = Math.sinh(range.lnWetOut / 2);
  return 2 * Math.log(middle + half * WET_NODES[k]!);
}

/** ln(tint factor) at tint node `k`. */
export function lnTintAtNode(range: SurfaceRange, k: number): number {
  return range.lnTint * TINT_NODES[k]!;
}

/** Position on the wet-out axis, -1..1 and held there, of an ln(wet-out factor). */
export function wetPosition(range: SurfaceRange, lnWetOut: number): number {
  const x = (Math.exp(lnWetOut / 2) - Math.cosh(range.lnWetOut / 2)) / Math.sinh(range.lnWetOut / 2);
  return Math.min(1, Math.max(-1, x));
}

/** Position on the tint axis, -1..1 and held there, of an ln(tint factor); 0 for a clear. */
export function tintPosition(range: SurfaceRange, lnTint: number): number {
  return range.lnTint === 0 ? 0 : Math.min(1, Math.max(-1, lnTint / range.lnTint));
}

/**
 * Turns the values at the nodes, node (wet i, tint j) at [i * tintCount + j], in place into coefficients of x^i y^j.
 * `tintCount` is TINT_NODE_COUNT, or 1 for a clear.
 */
export function fitSurface(values: Float64Array, tintCount: number): void {
  multiplyAlong(values, WET_INVERSE, WET_NODE_COUNT, tintCount, tintCount, 1);
  if (tintCount > 1) multiplyAlong(values, TINT_INVERSE, TINT_NODE_COUNT, 1, WET_NODE_COUNT, TINT_NODE_COUNT);
}

const lane = new Float64Array(Math.max(WET_NODE_COUNT, TINT_NODE_COUNT));

/** Multiplies each of `laneCount` lanes of `values` (elements `stride` apart, lanes `laneStride` apart) by `matrix`. */
function multiplyAlong(
  values: Float64Array,
  matrix: Float64Array,
  size: number,
  stride: number,
  laneCount: number,
  laneStride: number,
): void {
  for (let l = 0; l < laneCount; l++) {
    const start = l * laneStride;
    for (let i = 0; i < size; i++) {
      let sum = 0;
      for (let k = 0; k < size; k++) sum += matrix[i * size + k]! * values[start + k * stride]!;
      lane[i] = sum;
    }
    for (let i = 0; i < size; i++) values[start + i * stride] = lane[i]!;
  }
}

/** Value of a fitted surface at positions `x` (wet-out) and `y` (tint). */
export function surfaceValue(coefficients: Float64Array, tintCount: number, x: number, y: number): number {
  let value = 0;
  for (let i = WET_NODE_COUNT - 1; i >= 0; i--) {
    let along = 0;
    for (let j = tintCount - 1; j >= 0; j--) along = along * y + coefficients[i * tintCount + j]!;
    value = value * x + along;
  }
  return value;
}

/** Writes into `out` the polynomial in y (`tintCount` coefficients) that a fitted surface is at wet-out position `x`. */
export function cutAtWetOut(
  out: Float64Array,
  coefficients: Float64Array,
  tintCount: number,
  x: number,
): void {
  for (let j = 0; j < tintCount; j++) {
    let value = 0;
    for (let i = WET_NODE_COUNT - 1; i >= 0; i--) value = value * x + coefficients[i * tintCount + j]!;
    out[j] = value;
  }
}

/** Writes into `out` the polynomial in x (WET_NODE_COUNT coefficients) that a fitted surface is at tint position `y`. */
export function cutAtTint(out: Float64Array, coefficients: Float64Array, tintCount: number, y: number): void {
  for (let i = 0; i < WET_NODE_COUNT; i++) {
    let value = 0;
    for (let j = tintCount - 1; j >= 0; j--) value = value * y + coefficients[i * tintCount + j]!;
    out[i] = value;
  }
}

/** Value at `position` of the polynomial of the first `count` coefficients. */
export function polynomialValue(coefficients: Float64Array, count: number, position: number): number {
  let value = 0;
  for (let i = count - 1; i >= 0; i--) value = value * position + coefficients[i]!;
  return value;
}
