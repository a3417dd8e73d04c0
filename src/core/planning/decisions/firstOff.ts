/** What to do with a first-off: run, adjust, stop, or read more pairs before deciding. Codes and figures, no sentences. */
import { Z_95 } from "../../evidence/sampleSize.ts";
import { normalCumulative, quantileOf } from "../../prediction/normalDistribution.ts";
import {
  acceptanceInterval,
  conformanceProbability,
  largestUncertainty,
  type ToleranceInterval,
} from "./conformance.ts";
import type { MeanReading } from "./readingUncertainty.ts";

export type FirstOffAction = "run" | "adjust" | "stop" | "read-more";

export type FirstOffReason =
  /** The mean lies within the guarded band. */
  | "in-band-surely"
  /** Within reach of a limit; so many more pairs would decide it if the mean stays. */
  | "near-limit"
  /** Within reach of a limit, and no sensible number of pairs would decide it: bring it nearer to the middle. */
  | "on-limit"
  /** Even in the middle of the band these readings could not show that it conforms. */
  | "band-narrower-than-noise"
  /** Surely outside, by less than half a tolerance. */
  | "out-of-band"
  /** Surely outside, and further than an adjustment at the press is expected to bring it back. */
  | "far-out-of-band";

export interface FirstOffBand {
  /** Wanted change of L*; negative is darker. */
  readonly deltaL: number;
  readonly tolerance: number;
}

export interface FirstOffRule {
  /** Conformance probability from which it may run; outside it has to be as sure. */
  readonly sureProbability: number;
  /** Tolerances from the middle of the band beyond which adjusting gives way to stopping. */
  readonly stopFactor: number;
  /** More pairs than this are not asked for. */
  readonly largestReadMore: number;
}

/**
 * 0.95: the probability commonly asked (JCGM 106:2012 leaves it to the parties). 1.5: common practice, no source (trade.md
 * §7). 30 pairs: a reading session's patience, invented default.
 */
export const DEFAULT_FIRST_OFF_RULE: FirstOffRule = {
  sureProbability: 0.95,
  stopFactor: 1.5,
  largestReadMore: 30,
};

export interface FirstOffVerdict {
  readonly action: FirstOffAction;
  readonly reason: FirstOffReason;
  /** Further pairs, for `read-more`; otherwise 0. */
  readonly readMoreCount: number;
  readonly mean: number;
  readonly standardUncertainty: number;
  /** 95 % interval of the run's change of L*. */
  readonly interval: ToleranceInterval;
  readonly conformanceProbability: number;
  /** Means that may run with these readings; null where none may. */
  readonly acceptance: ToleranceInterval | null;
  /** What the guard band takes off each side, delta-L*; null likewise. */
  readonly guardBand: number | null;
  /** Mean less the band's middle: negative is too dark. */
  readonly offset: number;
}

/**
 * Pairs to read besides those read, until the uncertainty is `wanted` if the mean and the scatter stay and the pairs are
 * spread over new pieces likewise; Infinity where the reference alone is less sure. n = (sd/E)^2 (trade.md §2).
 */
function furtherPairs({ pairCount, randomUncertainty, referenceUncertainty }: MeanReading, wanted: number) {
  const left = wanted ** 2 - referenceUncertainty ** 2;
  if (!(left > 0)) return Infinity;
  return Math.max(1, Math.ceil((pairCount * randomUncertainty ** 2) / left - pairCount - 1e-9));
}

/** The largest uncertainty at which a mean outside is surely outside, by the nearer limit alone; 0 on the limit. */
function largestUncertaintyOutside(distance: number, { sureProbability }: FirstOffRule): number {
  return distance / quantileOf(normalCumulative, sureProbability);
}

/**
 * What to do with a first-off whose readings came out as `reading`, against `band`: run where it conforms with
 * `sureProbability` (guarded acceptance, JCGM 106:2012, 8.3); outside as surely: adjust within `stopFactor` tolerances,
 * stop beyond; else undecided, and read the pairs that would decide it, or adjust where they would be too many.
 * @throws RangeError for a tolerance that is not positive, or an uncertainty of 0.
 */
export function judgeFirstOff(
  reading: MeanReading,
  band: FirstOffBand,
  rule: FirstOffRule = DEFAULT_FIRST_OFF_RULE,
): FirstOffVerdict {
  const { mean, standardUncertainty } = reading;
  if (!(band.tolerance > 0)) throw new RangeError(`tolerance must be > 0; got ${band.tolerance}`);
  const tolerance = { lower: band.deltaL - band.tolerance, upper: band.deltaL + band.tolerance };
  const chance = conformanceProbability(mean, standardUncertainty, tolerance);
  const acceptance = acceptanceInterval(tolerance, standardUncertainty, rule.sureProbability);
  const offset = mean - band.deltaL;
  const decided = (action: FirstOffAction, reason: FirstOffReason, readMoreCount = 0): FirstOffVerdict => ({
    action,
    reason,
    readMoreCount,
    mean,
    standardUncertainty,
    interval: {
      lower: mean - Z_95 * standardUncertainty,
      upper: mean + Z_95 * standardUncertainty,
    },
    conformanceProbability: chance,
    acceptance,
    guardBand: acceptance === null ? null : tolerance.upper - acceptance.upper,
    offset,
  });
  if (chance >= rule.sureProbability) return decided("run", "in-band-surely");
  const outside = Math.abs(offset) > band.tolerance;
  if (outside && chance <= 1 - rule.sureProbability) {
    return Math.abs(offset) > rule.stopFactor * band.tolerance
      ? decided("stop", "far-out-of-band")
      : decided("adjust", "out-of-band");
  }
  const wanted = outside
    ? largestUncertaintyOutside(Math.abs(offset) - band.tolerance, rule)
    : largestUncertainty(mean, tolerance, rule.sureProbability);
  const count = wanted === null ? Infinity : furtherPairs(reading, wanted);
  if (count <= rule.largestReadMore) {
    return decided("read-more", acceptance === null ? "band-narrower-than-noise" : "near-limit", count);
  }
  return decided("adjust", "on-limit");
}
