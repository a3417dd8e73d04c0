/** Later pulls of a run against its own level and against the band: when to look for a cause, and when to act. */
import { conformanceProbability } from "./conformance.ts";
import type { FirstOffBand } from "./firstOff.ts";

/** One pull: some pieces taken from the run and read. */
export interface Pull {
  readonly id: string;
  /** Mean change of L* and its standard uncertainty. */
  readonly mean: number;
  readonly standardUncertainty: number;
  /** What was changed just before it: readings before and after are not one level any more. */
  readonly change: "none" | "lot" | "pot" | "shift" | "restart";
}

/** The rules of the Western Electric handbook by what they see. */
export type RunSignal =
  | "one-beyond-3-sd"
  | "two-of-three-beyond-2-sd"
  | "four-of-five-beyond-1-sd"
  | "eight-on-one-side";

export type PullAction =
  /** On with it. */
  | "run"
  /** The run has moved and is still in band: look for what changed. */
  | "look"
  /** No longer surely in band: bring it back before going on. */
  | "adjust"
  /** Rather out of band than in. */
  | "stop"
  /** First pull after a lot or pot change: a first-off of its own. */
  | "first-off";

export interface PulledPoint {
  readonly id: string;
  /** Pulls since the level was set, this one included. */
  readonly stretch: number;
  /** Standard deviations from the level of the stretch; 0 for the pull that sets it. */
  readonly fromLevel: number;
  readonly conformanceProbability: number;
  readonly signals: readonly RunSignal[];
  readonly action: PullAction;
}

interface Rule {
  readonly signal: RunSignal;
  readonly count: number;
  readonly among: number;
  readonly beyond: number;
}

/** Western Electric Co., Statistical Quality Control Handbook (1956), zone tests; from memory. */
const RULES: readonly Rule[] = [
  { signal: "one-beyond-3-sd", count: 1, among: 1, beyond: 3 },
  { signal: "two-of-three-beyond-2-sd", count: 2, among: 3, beyond: 2 },
  { signal: "four-of-five-beyond-1-sd", count: 4, among: 5, beyond: 1 },
  { signal: "eight-on-one-side", count: 8, among: 8, beyond: 0 },
];

/**
 * Signals of the last of `deviations`, in standard deviations from the level, oldest first: so many of the last few, the
 * last one among them, beyond a limit on one side.
 */
export function runSignals(deviations: readonly number[]): RunSignal[] {
  const last = deviations.at(-1);
  if (last === undefined) return [];
  const side = Math.sign(last);
  return RULES.filter(({ count, among, beyond }) => {
    const beyondLimit = deviations.slice(-among).filter((deviation) => side * deviation > beyond);
    return side * last > beyond && beyondLimit.length >= count;
  }).map(({ signal }) => signal);
}

export interface PullRule {
  /** Below this conformance probability it is adjusted, below one half stopped. */
  readonly sureProbability: number;
  /** Standard deviation of the print from pull to pull while nothing is wrong, delta-L*: besides the reading's own. */
  readonly pullSd: number;
}

/** 0.8: a run that is under way is stopped on less than a first-off asks for. Both invented defaults. */
export const DEFAULT_PULL_RULE: PullRule = { sureProbability: 0.8, pullSd: 0.15 };

/** Changes after which the print may be another one: what follows is judged as a first-off. */
const NEW_FIRST_OFF: ReadonlySet<Pull["change"]> = new Set(["lot", "pot"]);

/**
 * Each pull of a run, oldest first, with what to do about it. The level is the first pull since the last change; a pull's
 * distance from it is counted in standard deviations of their difference. Being in band decides first (JCGM 106:2012,
 * conformance probability), the run rules tell of a drift while there is still room.
 * @throws RangeError for an uncertainty that is not positive or a negative `pullSd`.
 */
export function judgePulls(
  pulls: readonly Pull[],
  band: FirstOffBand,
  rule: PullRule = DEFAULT_PULL_RULE,
): PulledPoint[] {
  if (!(rule.pullSd >= 0)) throw new RangeError(`pullSd must be >= 0; got ${rule.pullSd}`);
  const tolerance = { lower: band.deltaL - band.tolerance, upper: band.deltaL + band.tolerance };
  const spreadOf = (pull: Pull) => Math.hypot(pull.standardUncertainty, rule.pullSd);
  let level: Pull | null = null;
  let deviations: number[] = [];
  return pulls.map((pull) => {
    const chance = conformanceProbability(pull.mean, pull.standardUncertainty, tolerance);
    const begins = level === null || pull.change !== "none";
    if (begins || level === null) {
      level = pull;
      deviations = [];
    } else {
      deviations.push((pull.mean - level.mean) / Math.hypot(spreadOf(pull), spreadOf(level)));
    }
    const signals = runSignals(deviations);
    return {
      id: pull.id,
      stretch: deviations.length + 1,
      fromLevel: deviations.at(-1) ?? 0,
      conformanceProbability: chance,
      signals,
      action: actionOf(chance, signals, NEW_FIRST_OFF.has(pull.change), rule),
    };
  });
}

function actionOf(
  chance: number,
  signals: readonly RunSignal[],
  isFirstOff: boolean,
  rule: PullRule,
): PullAction {
  if (chance < 0.5) return "stop";
  if (isFirstOff) return "first-off";
  if (chance < rule.sureProbability) return "adjust";
  return signals.length > 0 ? "look" : "run";
}
