/** A cell's belief as evidence makes it: what the prediction takes, and what only the quick quantiles and tests ask for. */
import { type BeliefAxis, beliefCovariance, type CellBelief } from "../prediction/cellBelief.ts";

export interface LearnedBelief extends CellBelief {
  /** Means lumped by axis, in the order of BELIEF_AXES. */
  readonly axisMeans: Float64Array;
  /**
   * Part of lnWetOut's standard deviation that is Student-t with 5 degrees of freedom: the style's while no record of it
   * teaches, else 0. It is counted in `covariance` too.
   */
  readonly styleTailSd: number;
}

/** Standard deviation of one axis. */
export function beliefSd(belief: CellBelief, axis: BeliefAxis): number {
  return Math.sqrt(beliefCovariance(belief, axis, axis));
}
