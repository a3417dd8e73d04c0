/**
 * One coordinate of a print as a polynomial of its two strong unknowns: how far it wets out and how much tint it holds. A
 * spread needs a hundred colours per cell; the exact model gives a few nodes, the rest is read off here.
 */

/**
 * Nodes along each axis, the four Chebyshev points of the first kind. Measured by us on the test garments: over 2.5 standard
 * deviations 4 x 4 nodes miss the exact L* by no more than 6 x 4 over 2.9 did, 0.06 within 2 (a test holds it).
 */
export const WET_NODE_COUNT = 4;
export const TINT_NODE_COUNT = 4;
const NODES = [1, 3, 5, 7].map((k) => Math.cos((Math.PI * k) / 8));

/**
 * The axes run in a power of the factor on wet-out or tint, in which L* is nearly straight: found by trying powers against
 * the random reference (0.15 to 1 for the tint; 0.3 to 0.5 missed least). `wetOutAtNode` undoes the wet-out's by squaring.
 */
const WET_POWER = 2 / 3;
const TINT_POWER = 0.4;

/**
 * An axis of factor^power over 2.5 standard deviations `sd` of ln(factor) to either side; points beyond are held at its edge.
 */
export interface FactorAxis {
  readonly sd: number;
  readonly power: number;
  /** factor^power one standard deviation up. */
  readonly step: number;
  /** Middle and half range of factor^power. */
  readonly middle: number;
  readonly half: number;
}

function factorAxis(sd: number, power: number): FactorAxis {
  const step = Math.exp(sd * power);
  const up = step * step * Math.sqrt(step);
  return { sd, power, step, middle: (up + 1 / up) / 2, half: (up - 1 / up) / 2 };
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
  const root = middle + half * NODES[k]!;
  return root * Math.sqrt(root);
}

/** ln(tint factor) at tint node `k`. */
export function lnTintAtNode({ middle, half, power }: FactorAxis, k: number): number {
  return Math.log(middle + half * NODES[k]!) / power;
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

const OUTER = NODES[0]!;
const INNER = NODES[1]!;
const BETWEEN_SQUARES = OUTER * OUTER - INNER * INNER;

/** Turns the values at one axis's nodes, in place, into coefficients: even and odd powers come from pairs of nodes. */
function fitAlong(values: Float64Array, start: number, stride: number): void {
  const second = start + stride;
  const third = second + stride;
  const fourth = third + stride;
  const outerSum = (values[start]! + values[fourth]!) / 2;
  const innerSum = (values[second]! + values[third]!) / 2;
  const outerSlope = (values[start]! - values[fourth]!) / (2 * OUTER);
  const innerSlope = (values[second]! - values[third]!) / (2 * INNER);
  const square = (outerSum - innerSum) / BETWEEN_SQUARES;
  const cube = (outerSlope - innerSlope) / BETWEEN_SQUARES;
  values[start] = outerSum - square * OUTER * OUTER;
  values[second] = outerSlope - cube * OUTER * OUTER;
  values[third] = square;
  values[fourth] = cube;
}

/**
 * Turns the values at the nodes, node (wet i, tint j) at [i * tintCount + j], in place into coefficients of x^i y^j.
 * `tintCount` is TINT_NODE_COUNT, or 1 for a clear.
 */
export function fitSurface(values: Float64Array, tintCount: number): void {
  for (let j = 0; j < tintCount; j++) fitAlong(values, j, tintCount);
  if (tintCount === 1) return;
  for (let i = 0; i < WET_NODE_COUNT; i++) fitAlong(values, i * tintCount, 1);
}

/** Value of a fitted surface at positions `x` (wet-out) and `y` (tint). */
export function surfaceValue(
  coefficients: readonly number[],
  tintCount: number,
  x: number,
  y: number,
): number {
  let value = 0;
  for (let i = WET_NODE_COUNT - 1; i >= 0; i--) {
    let along = 0;
    for (let j = tintCount - 1; j >= 0; j--) along = along * y + coefficients[i * tintCount + j]!;
    value = value * x + along;
  }
  return value;
}
