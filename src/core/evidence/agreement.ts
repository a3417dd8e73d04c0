/** How well a record agrees with what is believed of its print by all others: a squared distance and where it would move to. */

import { factorise, lnDeterminant, solveLower, solveUpper } from "./dense.ts";
import { smallArray } from "./smallArrays.ts";
import type { Teaching } from "./teaching.ts";

/** Mean and covariance of the unknowns of one teaching, in its order, without the record itself. */
export interface Expectation {
  readonly means: Float64Array;
  readonly covariance: Float64Array;
}

export interface Agreement {
  /** Squared distance: what the unknowns have to move by plus what is left of the residual, both in their own spreads. */
  readonly distance2: number;
  /** Observed minus expected at the means. */
  readonly residual: Float64Array;
  /** ln of the determinant of the predictive covariance. */
  readonly lnDeterminant: number;
}

const MOST_STEPS = 12;
const ARRIVED = 1e-3;

/**
 * The least of (x - m)' C^-1 (x - m) + (y - h(x))' N^-1 (y - h(x)) over the unknowns x, by Gauss-Newton in the space of
 * the observation. For a straight h it is the Mahalanobis distance of y under its predictive normal; where h bends, a print
 * that simply reacts strongly is as far off as its reaction is unusual, not as its L* is.
 * `moreVariance` (as many rows and columns as the observation) is added to the noise.
 */
export function agreementWith(
  teaching: Teaching,
  { means, covariance }: Expectation,
  moreVariance: Float64Array | null = null,
): Agreement {
  const { dimension: p, observed } = teaching;
  const count = means.length;
  let x = means;
  let first: Float64Array | null = null;
  let distance2 = 0;
  let lnDet = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const { expected, jacobian, noise } = teaching.linearise(x);
    const residual = observed.map((y, row) => y - expected[row]!);
    first ??= residual;
    const half = smallArray(count * p);
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) {
        const c = covariance[i * count + j]!;
        if (c === 0) continue;
        for (let row = 0; row < p; row++) half[i * p + row]! += c * jacobian[row * count + j]!;
      }
    }
    const spread = smallArray(p * p);
    const goal = residual.slice();
    for (let row = 0; row < p; row++) {
      for (let i = 0; i < count; i++) {
        const slope = jacobian[row * count + i]!;
        goal[row]! += slope * (x[i]! - means[i]!);
        for (let other = 0; other < p; other++) spread[row * p + other]! += slope * half[i * p + other]!;
      }
    }
    const predictive = spread.map((v, k) => v + noise[k]!);
    moreVariance?.forEach((variance, k) => {
      predictive[k]! += variance;
    });
    const pull = goal.slice();
    factorise(predictive, p);
    solveLower(predictive, p, pull);
    solveUpper(predictive, p, pull);
    lnDet = lnDeterminant(predictive, p);
    distance2 = 0;
    for (let row = 0; row < p; row++) distance2 += pull[row]! * goal[row]!;
    const share = step < 4 ? 1 : 0.5;
    let moved = 0;
    const next = x.slice();
    for (let i = 0; i < count; i++) {
      let wanted = means[i]!;
      for (let row = 0; row < p; row++) wanted += half[i * p + row]! * pull[row]!;
      wanted = Math.max(wanted, teaching.unknowns[i]!.lowest);
      const by = share * Math.max(-LONGEST, Math.min(LONGEST, wanted - x[i]!));
      next[i] = x[i]! + by;
      moved = Math.max(moved, Math.abs(by));
    }
    x = next;
    if (moved < ARRIVED) break;
  }
  return { distance2, residual: first!, lnDeterminant: lnDet };
}

/** No unknown moves further in one step. */
const LONGEST = 0.4;
