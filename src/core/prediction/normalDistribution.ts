/** The normal and the Student-t distribution, as far as the spread needs them. */

const TABLE_LIMIT = 6;
/** Of the table below. */
export const TABLE_STEPS_PER_UNIT = 256;
export const TABLE_MIDDLE = TABLE_LIMIT * TABLE_STEPS_PER_UNIT;
const TABLE_SIZE = 2 * TABLE_MIDDLE + 1;

/**
 * Cumulative probability of the standard normal at `x`, to about 1e-15 for |x| <= 8: the power series
 * 1/2 + phi(x) (x + x^3/3 + x^5/(3 5) + ...) for small |x| (Abramowitz & Stegun 1964, 26.2.11) and Laplace's continued
 * fraction (26.2.14) beyond.
 */
export function normalCumulative(x: number): number {
  const density = normalDensity(x);
  if (Math.abs(x) < 3) {
    let term = x;
    let sum = x;
    for (let k = 3; Math.abs(term) > 1e-17 * Math.abs(sum); k += 2) {
      term *= (x * x) / k;
      sum += term;
    }
    return 0.5 + density * sum;
  }
  const y = Math.abs(x);
  let fraction = y;
  for (let k = 60; k >= 1; k--) fraction = y + k / fraction;
  const tail = density / fraction;
  return x < 0 ? tail : 1 - tail;
}

/** Density of the standard normal at 0. */
const AT_ZERO = 1 / Math.sqrt(2 * Math.PI);

/** Density of the standard normal at `x`. */
export function normalDensity(x: number): number {
  return Math.exp(-0.5 * x * x) * AT_ZERO;
}

/** Phi at (i - TABLE_MIDDLE) / TABLE_STEPS_PER_UNIT. */
export const CUMULATIVE_TABLE = Float64Array.from({ length: TABLE_SIZE }, (_, i) =>
  normalCumulative((i - TABLE_MIDDLE) / TABLE_STEPS_PER_UNIT),
);

/** `normalCumulative` by linear interpolation in a table: within 5e-7, and 0 or 1 beyond 6 standard deviations. */
export function normalCumulativeFast(x: number): number {
  const position = x * TABLE_STEPS_PER_UNIT + TABLE_MIDDLE;
  if (position <= 0) return 0;
  if (position >= TABLE_SIZE - 1) return 1;
  const below = position | 0;
  const value = CUMULATIVE_TABLE[below]!;
  return value + (position - below) * (CUMULATIVE_TABLE[below + 1]! - value);
}

/** What cutting a normal at 0 adds to its mean, and the standard deviation of what is left. */
export interface CutNormal {
  readonly mean: number;
  readonly sd: number;
}

/** What max(0, normal of `mean` and `sd`) adds to `mean`, by its first two moments; of a normal without spread, nothing. */
export function cutAtZero(mean: number, sd: number): CutNormal {
  if (sd === 0) return { mean: 0, sd: 0 };
  const above = normalCumulative(mean / sd);
  const density = sd * normalDensity(mean / sd);
  const cut = mean * above + density;
  const square = (mean * mean + sd * sd) * above + mean * density;
  return { mean: cut - mean, sd: Math.sqrt(Math.max(0, square - cut * cut)) };
}

/** Cumulative probability of Student's t with 5 degrees of freedom at `t` (closed form for odd nu, A&S 26.7.3). */
export function studentCumulative5(t: number): number {
  const c2 = 1 / (1 + (t * t) / 5);
  return 0.5 + (Math.atan(t / Math.sqrt(5)) + (t / Math.sqrt(5)) * c2 * (1 + (2 / 3) * c2)) / Math.PI;
}

/**
 * Where `cumulative` (rising) reaches `probability`, by bisection to the last digit.
 * @throws RangeError unless 0 < probability < 1.
 */
export function quantileOf(cumulative: (x: number) => number, probability: number): number {
  if (!(probability > 0 && probability < 1)) {
    throw new RangeError(`probability must be in 0..1, exclusive; got ${probability}`);
  }
  let low = -40;
  let high = 40;
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2;
    if (cumulative(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
