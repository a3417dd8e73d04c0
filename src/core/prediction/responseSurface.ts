/**
 * One coordinate of a print as a polynomial of its two strong unknowns: how far it wets out and how much tint it holds. A
 * spread needs a hundred colours per cell; the exact model gives a few nodes, the rest is read off here.
 */

/**
 * Nodes along each axis: Chebyshev points of the first kind. Measured by us on the demo garments over 2.9 standard
 * deviations: 6 x 4 nodes miss the exact L* by at most 0.05 within 1.8 standard deviations (tests hold it).
 */
export const WET_NODE_COUNT = 6;
export const TINT_NODE_COUNT = 4;
/** Standard deviations that each axis reaches to either side; points beyond are held at its edge. */
export const NODE_REACH = 2.9;

const chebyshevNodes = (count: number): number[] =>
  Array.from({ length: count }, (_, k) => Math.cos((Math.PI * (2 * k + 1)) / (2 * count)));

const WET_NODES = chebyshevNodes(WET_NODE_COUNT);
/** Standard normals of the tint nodes. */
export const TINT_NODES: readonly number[] = chebyshevNodes(TINT_NODE_COUNT).map((x) => NODE_REACH * x);

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
const TINT_INVERSE = coefficientsFrom(chebyshevNodes(TINT_NODE_COUNT));

/** The wet-out axis: it runs in sqrt(factor), in which L* is nearly straight, over NODE_REACH times `sd` in ln(factor). */
export interface WetAxis {
  readonly sd: number;
  /** Middle and half range of sqrt(factor). */
  readonly middle: number;
  readonly half: number;
}

export function wetAxis(sd: number): WetAxis {
  const up = Math.exp((NODE_REACH * sd) / 2);
  return { sd, middle: (up + 1 / up) / 2, half: (up - 1 / up) / 2 };
}

/** ln(wet-out factor) at wet-out node `k`. */
export function lnWetOutAtNode({ middle, half }: WetAxis, k: number): number {
  return 2 * Math.log(middle + half * WET_NODES[k]!);
}

/** Within -1..1. */
export function heldOnAxis(position: number): number {
  return Math.min(1, Math.max(-1, position));
}

/** Position on the wet-out axis of sqrt(wet-out factor). */
export function wetPosition({ middle, half }: WetAxis, rootOfFactor: number): number {
  return heldOnAxis((rootOfFactor - middle) / half);
}

/** Position on the tint axis of standard normal `z`. */
export function tintPosition(z: number): number {
  return heldOnAxis(z / NODE_REACH);
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
