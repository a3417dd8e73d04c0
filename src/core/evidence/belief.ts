/** What is believed of one print: the few unknowns that matter for one cell, as one joint normal. */
import type { EvidenceLevel, SpreadSource } from "../prediction/prediction.ts";
import type { Surprise } from "../prediction/unknowns.ts";

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
 * A joint normal of one cell's unknowns. Means are deviations from the model's expected print, to be handed to
 * `printedFilm`/`printedReflectance`; deviations around them are lumped into six axes:
 * - lnWetOut: everything that scales wet-out but the deposit: epsilon, fibres' gains (each by its share of the effect),
 *   strength of the bases, what the model misses of it (0.05) and a resistant finish;
 * - lnTint: strength of the colourants by their share of the effect, and what the model misses of it (0.04);
 * - lnDeposit: the set-up's and print to print (0.08);
 * - closedFraction: not a logarithm; cut at 0 by whoever draws it;
 * - lnHaze, lnBlackScattering: of the bases' haze and of the black's own scattering.
 * What the model misses of L*, a* and b* themselves is not in here: it stays with whoever predicts.
 */
export interface CellBelief {
  readonly mean: Required<Surprise>;
  /** Means lumped by axis, for whoever shifts an axis instead of every unknown. */
  readonly axisMeans: Float64Array;
  /** BELIEF_AXIS_COUNT x BELIEF_AXIS_COUNT, row by row. */
  readonly covariance: Float64Array;
  /**
   * Part of lnWetOut's standard deviation that is Student-t with 5 degrees of freedom: the style's while no record of
   * it teaches, else 0. It is counted in `covariance` too.
   */
  readonly styleTailSd: number;
  readonly evidence: EvidenceLevel;
  /** Share of each source in the variance of delta-L* (covariance with the whole over the variance); sums to 1 with the model's own. */
  readonly bySource: readonly { readonly source: SpreadSource; readonly share: number }[];
}

/** Standard deviation of one axis. */
export function beliefSd(belief: CellBelief, axis: BeliefAxis): number {
  const k = BELIEF_AXES.indexOf(axis);
  return Math.sqrt(belief.covariance[k * BELIEF_AXIS_COUNT + k]!);
}
