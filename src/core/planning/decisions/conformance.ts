/**
 * Conformity of a measured value with two limits, after JCGM 106:2012 (Evaluation of measurement data: the role of
 * measurement uncertainty in conformity assessment; read in excerpts and from memory): conformance probability and the
 * acceptance limits that a guard band leaves.
 */
import { normalCumulative } from "../../prediction/normalDistribution.ts";

/** The values that conform: both ends in the unit of what is measured; an end may be infinite. */
export interface ToleranceInterval {
  readonly lower: number;
  readonly upper: number;
}

function requireInterval({ lower, upper }: ToleranceInterval): void {
  if (!(lower < upper)) throw new RangeError(`lower must be below upper; got ${lower} and ${upper}`);
}

function requirePositive(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) throw new RangeError(`${name} must be > 0 and finite; got ${value}`);
}

/**
 * Probability that the measured quantity lies within `tolerance`, given the estimate and its standard uncertainty, for a
 * normal state of knowledge (JCGM 106:2012, 7.2, p_c = Phi((T_U - y)/u) - Phi((T_L - y)/u)).
 * @throws RangeError for an uncertainty that is not positive or limits in the wrong order.
 */
export function conformanceProbability(
  estimate: number,
  standardUncertainty: number,
  tolerance: ToleranceInterval,
): number {
  requireInterval(tolerance);
  requirePositive("standardUncertainty", standardUncertainty);
  const above = (tolerance.upper - estimate) / standardUncertainty;
  const below = (tolerance.lower - estimate) / standardUncertainty;
  // On the upper side both are near 1: by symmetry the difference is taken where its digits are.
  return below > 0
    ? normalCumulative(-below) - normalCumulative(-above)
    : normalCumulative(above) - normalCumulative(below);
}

/**
 * Interval of estimates whose conformance probability is at least `leastProbability`: guarded acceptance (JCGM 106:2012,
 * 8.3), exact for two limits rather than one limit at a time. The guard band on each side is what it lacks of
 * `tolerance`; null where no estimate reaches the probability, because the uncertainty is too large for the interval.
 * @throws RangeError unless 0.5 <= leastProbability < 1, both limits are finite and the uncertainty is positive.
 */
export function acceptanceInterval(
  tolerance: ToleranceInterval,
  standardUncertainty: number,
  leastProbability: number,
): ToleranceInterval | null {
  if (!(leastProbability >= 0.5 && leastProbability < 1)) {
    throw new RangeError(`leastProbability must be in 0.5..1, 1 excluded; got ${leastProbability}`);
  }
  const { lower, upper } = tolerance;
  if (!(Number.isFinite(lower) && Number.isFinite(upper))) {
    throw new RangeError(`both limits must be finite; got ${lower} and ${upper}`);
  }
  const probability = (estimate: number) => conformanceProbability(estimate, standardUncertainty, tolerance);
  const middle = (lower + upper) / 2;
  if (probability(middle) < leastProbability) return null;
  // Falls from the middle outwards, and is at most one half beyond the limit.
  let inside = middle;
  let outside = upper;
  for (let i = 0; i < 60; i++) {
    const between = (inside + outside) / 2;
    if (probability(between) >= leastProbability) inside = between;
    else outside = between;
  }
  return { lower: lower + upper - inside, upper: inside };
}

/**
 * The largest standard uncertainty at which an estimate still conforms with `leastProbability`; null where the estimate is
 * on or outside a limit, for then none is small enough.
 * @throws RangeError as `acceptanceInterval`.
 */
export function largestUncertainty(
  estimate: number,
  tolerance: ToleranceInterval,
  leastProbability: number,
): number | null {
  if (!(leastProbability >= 0.5 && leastProbability < 1)) {
    throw new RangeError(`leastProbability must be in 0.5..1, 1 excluded; got ${leastProbability}`);
  }
  requireInterval(tolerance);
  if (!(estimate > tolerance.lower && estimate < tolerance.upper)) return null;
  // From inside both tails grow with the uncertainty, so that the probability falls.
  let small = 0;
  let large = tolerance.upper - tolerance.lower;
  for (let i = 0; i < 60; i++) {
    const between = (small + large) / 2;
    if (conformanceProbability(estimate, between, tolerance) >= leastProbability) small = between;
    else large = between;
  }
  return small > 0 ? small : null;
}
