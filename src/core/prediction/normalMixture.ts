/** A distribution on a line as a mixture of normals: what a spread is read from. */
import { CUMULATIVE_TABLE, TABLE_MIDDLE, TABLE_STEPS_PER_UNIT } from "./normalDistribution.ts";

/** The first `count` parts; there is room for more. */
export interface NormalMixture {
  count: number;
  readonly masses: Float64Array;
  readonly means: Float64Array;
  /** One over each standard deviation. */
  readonly precisions: Float64Array;
}

export function mixtureRoom(most: number): NormalMixture {
  return {
    count: 0,
    masses: new Float64Array(most),
    means: new Float64Array(most),
    precisions: new Float64Array(most),
  };
}

/** Probability below `limit`: sum of the masses times Phi((limit - mean) / sd), Phi as `normalCumulativeFast` has it. */
export function probabilityBelow({ count, masses, means, precisions }: NormalMixture, limit: number): number {
  const last = CUMULATIVE_TABLE.length - 1;
  let sum = 0;
  for (let k = 0; k < count; k++) {
    const position = (limit - means[k]!) * precisions[k]! * TABLE_STEPS_PER_UNIT + TABLE_MIDDLE;
    if (position <= 0) continue;
    const mass = masses[k]!;
    if (position >= last) {
      sum += mass;
      continue;
    }
    const below = position | 0;
    const value = CUMULATIVE_TABLE[below]!;
    sum += mass * (value + (position - below) * (CUMULATIVE_TABLE[below + 1]! - value));
  }
  return sum;
}

/** Rise of `probabilityBelow` per unit at `limit`. */
let rise = 0;

/** `probabilityBelow`, which leaves its slope in `rise`: the same steps of the table give both. */
function probabilityAndRise({ count, masses, means, precisions }: NormalMixture, limit: number): number {
  const last = CUMULATIVE_TABLE.length - 1;
  let sum = 0;
  let slope = 0;
  for (let k = 0; k < count; k++) {
    const scale = precisions[k]! * TABLE_STEPS_PER_UNIT;
    const position = (limit - means[k]!) * scale + TABLE_MIDDLE;
    if (position <= 0) continue;
    const mass = masses[k]!;
    if (position >= last) {
      sum += mass;
      continue;
    }
    const below = position | 0;
    const value = CUMULATIVE_TABLE[below]!;
    const step = CUMULATIVE_TABLE[below + 1]! - value;
    sum += mass * (value + (position - below) * step);
    slope += mass * step * scale;
  }
  rise = slope;
  return sum;
}

/**
 * Newton's next step leaves a quantile near enough once it is this near in probability before, or, where little rises, as much
 * nearer as the rise is less than even from one end to the other.
 */
const CLOSE = 1e-4;
const MOST_STEPS = 60;

/**
 * The value below which the part `probability` of the mixture lies (its masses sum to 1), by Newton's method from `guess`,
 * kept between `low` and `high` by bisection where it leaves them; to about 1e-7 in probability.
 */
export function quantileOf(
  mixture: NormalMixture,
  probability: number,
  low: number,
  high: number,
  guess: number,
): number {
  let below = low;
  let above = high;
  let x = Math.min(high, Math.max(low, guess));
  for (let step = 0; step < MOST_STEPS; step++) {
    const miss = probabilityAndRise(mixture, x) - probability;
    const next = x - miss / rise;
    if (miss < 0) below = x;
    else above = x;
    // x itself is now an end of what is left, and may be where the quantile lies.
    const isInside = next >= below && next <= above;
    const close = CLOSE * Math.min(1, rise * (high - low));
    if (isInside && miss < close && miss > -close) return next;
    x = isInside ? next : (below + above) / 2;
  }
  return x;
}
