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

/**
 * The axes run in a power of the factor on wet-out or tint, in which L* is nearly straight: found by trying powers against
 * the random reference (0.15 to 1 for the tint; 0.3 to 0.5 missed least). `wetOutAtNode` undoes the wet-out's by squaring.
 */
const WET_POWER = 0.5;
const TINT_POWER = 0.4;

const chebyshevNodes = (count: number): number[] =>
  Array.from({ length: count }, (_, k) => Math.cos((Math.PI * (2 * k + 1)) / (2 * count)));

const WET_NODES = chebyshevNodes(WET_NODE_COUNT);
const TINT_NODES = chebyshevNodes(TINT_NODE_COUNT);

/** An axis of factor^power over NODE_REACH times `sd` in ln(factor). */
export interface FactorAxis {
  readonly sd: number;
  readonly power: number;
  /** Middle and half range of factor^power. */
  readonly middle: number;
  readonly half: number;
}

function factorAxis(sd: number, power: number): FactorAxis {
  const up = Math.exp(NODE_REACH * sd * power);
  return { sd, power, middle: (up + 1 / up) / 2, half: (up - 1 / up) / 2 };
}

/** The axis of the wet-out factor of standard deviation `sd` in ln. */
export function wetAxis(sd: number): FactorAxis {
  return factorAxis(sd, WET_POWER);
}

/** The axis of the tint factor; one of `sd` 0, a clear's, has no extent. */
export function tintAxis(sd: number): FactorAxis {
  return factorAxis(sd, TINT_POWER);
}

/** Wet-out factor at wet-out node `k`. */
export function wetOutAtNode({ middle, half }: FactorAxis, k: number): number {
  const root = middle + half * WET_NODES[k]!;
  return root * root;
}

/** ln(tint factor) at tint node `k`. */
export function lnTintAtNode({ middle, half, power }: FactorAxis, k: number): number {
  return Math.log(middle + half * TINT_NODES[k]!) / power;
}

/** Position on an axis, -1..1 and held there, of a factor raised to the axis's power. */
export function positionOfPower({ middle, half }: FactorAxis, powerOfFactor: number): number {
  if (half === 0) return 0;
  return Math.min(1, Math.max(-1, (powerOfFactor - middle) / half));
}

/** Position on an axis of a factor given as its ln. */
export function axisPosition(axis: FactorAxis, lnFactor: number): number {
  return positionOfPower(axis, Math.exp(lnFactor * axis.power));
}

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
