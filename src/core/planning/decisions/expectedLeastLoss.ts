/** What the best choice is expected to cost once an answer is known that is not known yet: by quadrature over the answer. */
import { normalDensity } from "../../prediction/normalDistribution.ts";

/** Expected loss of an option by the mean of its driver after the answer; made once the variance taken from it is known. */
export type LossAfter = (option: number, settledVariance: number) => (mean: number) => number;

interface Nodes {
  readonly at: Float64Array;
  readonly weight: Float64Array;
}

/** Trapezoid nodes of the standard normal: their error falls faster than any power of the step for a smooth integrand. */
function normalNodes(reach: number, count: number): Nodes {
  const at = Float64Array.from({ length: count }, (_, i) => reach * ((2 * i) / (count - 1) - 1));
  const density = at.map((z) => normalDensity(z));
  const total = density.reduce((sum, each) => sum + each, 0);
  return { at, weight: density.map((each) => each / total) };
}

/** As few as the textbook's closed form (within 0.2 %) and the simulations of the tests allow. */
const ALONG = normalNodes(4.2, 25);
const ACROSS = normalNodes(2.8, 5);
const MIDDLE: Nodes = { at: new Float64Array(1), weight: new Float64Array([1]) };
/** A second line with less than this part of the variance is not looked along. */
const SECOND_SHARE = 5e-3;
/** Steps of the power method towards the direction of most variance; any direction would be valid, a near one is better. */
const POWER_STEPS = 4;

/**
 * Takes out of `covariance` (n x n, positive semidefinite, changed in place) the line through nearly the most of its variance:
 * l = M v / sqrt(v'Mv), what is left, M - l l', is positive semidefinite for any v. Null where nothing is left.
 */
function takeLine(covariance: Float64Array, n: number): Float64Array | null {
  let v = new Float64Array(n);
  let largest = 0;
  for (let i = 0; i < n; i++) if (covariance[i * n + i]! > covariance[largest * n + largest]!) largest = i;
  if (!(covariance[largest * n + largest]! > 0)) return null;
  v[largest] = 1;
  let image = new Float64Array(n);
  for (let step = 0; ; step++) {
    let along = 0;
    let square = 0;
    for (let i = 0; i < n; i++) {
      let sum = 0;
      for (let j = 0; j < n; j++) sum += covariance[i * n + j]! * v[j]!;
      image[i] = sum;
      along += sum * v[i]!;
      square += sum * sum;
    }
    if (!(along > 0)) return null;
    if (step === POWER_STEPS) {
      const scale = 1 / Math.sqrt(along);
      for (let i = 0; i < n; i++) image[i]! *= scale;
      break;
    }
    const scale = 1 / Math.sqrt(square);
    for (let i = 0; i < n; i++) image[i]! *= scale;
    [v, image] = [image, v];
  }
  for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) covariance[i * n + j]! -= image[i]! * image[j]!;
  return image;
}

function squaredLength(line: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < line.length; i++) sum += line[i]! * line[i]!;
  return sum;
}

/**
 * E min_o loss(o, m_o + e_o), e normal with mean 0 and covariance `settled`: the mean of each option's driver once the answer
 * is in scatters around today's with the covariance that the answer will take away (preposterior analysis, Raiffa &
 * Schlaifer, Applied Statistical Decision Theory, 1961, ch. 5).
 *
 * Exact (to the quadrature) for one test, whose answer moves all options along one line. Of several tests' answers the two
 * lines with most variance are followed; the rest is left unsettled, which understates what they are worth and never
 * overstates it. Where the best option changes between two nodes, the bend of the least loss is allowed for.
 * @param means today's mean of each option's driver, n of them
 * @param settled n x n, row by row; left as it is
 * @throws RangeError without an option.
 */
export function expectedLeastLoss(
  means: ArrayLike<number>,
  settled: Float64Array,
  lossAfter: LossAfter,
): number {
  const n = means.length;
  if (n === 0) throw new RangeError("means must hold at least one option");
  const left = settled.slice();
  const first = takeLine(left, n);
  const rest = first === null ? null : takeLine(left, n);
  const second = first !== null && rest !== null && isWide(rest, first) ? rest : null;
  const losses = Array.from({ length: n }, (_, o) =>
    lossAfter(o, (first?.[o] ?? 0) ** 2 + (second?.[o] ?? 0) ** 2),
  );
  if (first === null) return Math.min(...losses.map((loss, o) => loss(means[o]!)));
  const across = second === null ? MIDDLE : ACROSS;
  const start = new Float64Array(n);
  let expected = 0;
  for (let j = 0; j < across.at.length; j++) {
    for (let o = 0; o < n; o++) start[o] = means[o]! + (second?.[o] ?? 0) * across.at[j]!;
    expected += across.weight[j]! * leastAlong(losses, start, first);
  }
  return expected;
}

function isWide(line: Float64Array, first: Float64Array): boolean {
  return squaredLength(line) > SECOND_SHARE * squaredLength(first);
}

/** Weight that a node a part of the way from node i - 1 to node i would have: the logarithm of the normal is a parabola. */
function weightBetween(i: number, part: number): number {
  const { at, weight } = ALONG;
  const step = at[i]! - at[i - 1]!;
  const bulge = Math.exp((part * (1 - part) * step * step) / 2);
  return weight[i - 1]! ** (1 - part) * weight[i]! ** part * bulge;
}

/**
 * What the trapezoid misses, per unit of weight and change of loss within a step, where two straight losses cross at `z`, a
 * part of the way between two nodes: Euler & Maclaurin's -B_2/2 for the bend, and -h z B_3/3 for the slope of the normal there.
 */
function bendCorrection(part: number, z: number, step: number): number {
  const b2 = part * part - part + 1 / 6;
  const b3 = part * (part - 0.5) * (part - 1);
  return -b2 / 2 - (step * z * b3) / 3;
}

/** E min_o loss(o, start_o + slope_o z), z standard normal. */
function leastAlong(
  losses: readonly ((mean: number) => number)[],
  start: Float64Array,
  slope: Float64Array,
): number {
  const n = losses.length;
  const { at, weight } = ALONG;
  let sum = 0;
  let bestBefore = -1;
  let leastBefore = 0;
  for (let i = 0; i < at.length; i++) {
    const z = at[i]!;
    let best = 0;
    let least = Infinity;
    for (let o = 0; o < n; o++) {
      const value = losses[o]!(start[o]! + slope[o]! * z);
      if (value < least) {
        least = value;
        best = o;
      }
    }
    sum += weight[i]! * least;
    if (bestBefore >= 0 && best !== bestBefore) {
      const before = at[i - 1]!;
      const gained = losses[best]!(start[best]! + slope[best]! * before) - leastBefore;
      const lost = losses[bestBefore]!(start[bestBefore]! + slope[bestBefore]! * z) - least;
      const both = gained + lost;
      if (both > 0) {
        const part = gained / both;
        sum += weightBetween(i, part) * both * bendCorrection(part, before + part * (z - before), z - before);
      }
    }
    bestBefore = best;
    leastBefore = least;
  }
  return sum;
}
