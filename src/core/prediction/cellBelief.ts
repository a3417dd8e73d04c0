/** What test prints have taught of one cell, in place of the prior: the few unknowns that matter for it as one joint normal. */
import type { EvidenceLevel, SpreadSource } from "./prediction.ts";
import type { Surprise } from "./unknowns.ts";

/** Order of the rows of `CellBelief.covariance`. */
export const BELIEF_AXES = [
  "lnWetOut",
  "lnTint",
  "lnDeposit",
  "closedFraction",
  "lnHaze",
  "lnBlackScattering",
] as const;
export type BeliefAxis = (typeof BELIEF_AXES)[number];
export const BELIEF_AXIS_COUNT = BELIEF_AXES.length;

/**
 * A joint normal of one cell's unknowns. Means are deviations from the model's expected print; deviations around them are
 * lumped into six axes:
 * - lnWetOut: everything that scales wet-out but the deposit: epsilon, fibres' gains (each by its share of the effect),
 *   strength of the bases, what the model misses of it and a resistant finish;
 * - lnTint: strength of the colourants by their share of the effect, and what the model misses of it;
 * - lnDeposit: the set-up's and print to print;
 * - closedFraction: not a logarithm; cut at 0;
 * - lnHaze, lnBlackScattering: of the bases' haze and of the black's own scattering.
 * What the model misses of L*, a* and b* themselves is not in here: the prediction adds it.
 */
export interface CellBelief {
  readonly mean: Required<Surprise>;
  /** BELIEF_AXIS_COUNT x BELIEF_AXIS_COUNT, row by row. */
  readonly covariance: Float64Array;
  readonly evidence: EvidenceLevel;
  /** Share of each source in the variance of delta-L*; sums to 1 with the model's own. */
  readonly bySource: readonly { readonly source: SpreadSource; readonly share: number }[];
}

/** Covariance of two axes of `belief`. */
export function beliefCovariance({ covariance }: CellBelief, one: BeliefAxis, other: BeliefAxis): number {
  return covariance[BELIEF_AXES.indexOf(one) * BELIEF_AXIS_COUNT + BELIEF_AXES.indexOf(other)]!;
}
