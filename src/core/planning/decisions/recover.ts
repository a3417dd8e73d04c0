/** A first-off that came out wrong: every change the shop can make now, predicted and ranked. Plain data, codes only. */
import {
  addsWhite,
  changeSets,
  changesScreen,
  type Printing,
  type RecoverChange,
  type RecoverStock,
  withChanges,
} from "./recoverChanges.ts";
import { DEFAULT_RECOVER_EFFORT, effortOf, type RecoverEffort } from "./recoverEffort.ts";

/** What a changed print is expected to be, under evidence that already holds the first-off. CIELAB, negative is darker. */
export interface RecoverPrediction {
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  /** 0..1. */
  readonly chanceInBand: number;
  /** Colour difference to the approved print, where both colours are known; without it the difference in delta-L* counts. */
  readonly deltaE00FromApproved?: number;
  /** Whether the prediction itself shows a little white in a clear. */
  readonly milkyHaze?: boolean;
}

export type RecoverCaution =
  /** White lifts darks and turns them milky: it does not undo darkening. */
  | "milky-haze"
  /** The artwork has to be made anew as a halftone. */
  | "needs-new-screen";

export interface RecoverOption {
  /** Empty: printed on as it is. */
  readonly changes: readonly RecoverChange[];
  readonly printing: Printing;
  readonly prediction: RecoverPrediction;
  /** From the approved print: delta-E00 where known, else |delta-L*|. */
  readonly distance: number;
  readonly minutes: number;
  readonly cost: number;
  readonly screenChange: boolean;
  readonly cautions: readonly RecoverCaution[];
}

export interface RecoverRequest {
  readonly printing: Printing;
  readonly stock: RecoverStock;
  /** Change of L* of the approved print, or the target's. */
  readonly approvedDeltaL: number;
  /** Null where it cannot be printed so: a limit of a data sheet, a mix that is refused. */
  readonly predict: (printing: Printing, changes: readonly RecoverChange[]) => RecoverPrediction | null;
  readonly effort?: RecoverEffort;
  readonly rule?: RecoverRule;
}

export interface RecoverRule {
  /** Chances this near count as equal. */
  readonly equalChance: number;
  /** Distances this near count as equal. */
  readonly equalDistance: number;
  /** A change without a screen change that has this chance suffices. */
  readonly sufficientChance: number;
}

/** 0.05: model.md §7. 0.1 of colour difference: below what an instrument repeats on cloth. 0.9: invented default. */
export const DEFAULT_RECOVER_RULE: RecoverRule = {
  equalChance: 0.05,
  equalDistance: 0.1,
  sufficientChance: 0.9,
};

export interface RecoverPlan {
  /**
   * Best first, and last printing on as it is: what ranks behind that does not help, and is left out like pairs that one
   * of their own changes alone does as well as.
   */
  readonly options: readonly RecoverOption[];
  /** The best of those that keep the screen; null where there is none but printing on. */
  readonly bestOnThisScreen: RecoverOption | null;
  readonly sufficesOnThisScreen: boolean;
  /** Options that were predicted; those refused are not counted. */
  readonly predictedCount: number;
}

/**
 * Changes ranked by chance in band (`equalChance` counts as equal), then distance to the approved print, minutes and cost
 * (model.md §7); ahead of them all, in the same order, those that keep the screen and have `sufficientChance`.
 */
export function planRecovery(request: RecoverRequest): RecoverPlan {
  const { printing, stock, approvedDeltaL, predict } = request;
  const rule = request.rule ?? DEFAULT_RECOVER_RULE;
  const options: RecoverOption[] = [];
  for (const changes of changeSets(printing, stock)) {
    const after = withChanges(printing, changes);
    const prediction = predict(after, changes);
    if (prediction === null) continue;
    options.push({
      changes,
      printing: after,
      prediction,
      distance: prediction.deltaE00FromApproved ?? Math.abs(prediction.deltaL50 - approvedDeltaL),
      ...effortOf(printing, changes, stock, request.effort ?? DEFAULT_RECOVER_EFFORT),
      screenChange: changesScreen(changes),
      cautions: cautionsOf(printing, changes, stock, prediction),
    });
  }
  const suffices = (option: RecoverOption) =>
    !option.screenChange && option.prediction.chanceInBand >= rule.sufficientChance;
  const ranked = [
    ...rankOptions(options.filter(suffices), rule),
    ...rankOptions(
      options.filter((option) => !suffices(option)),
      rule,
    ),
  ];
  const asItIs = ranked.findIndex(({ changes }) => changes.length === 0);
  const useful = withoutIdlePairs(asItIs < 0 ? ranked : ranked.slice(0, asItIs + 1));
  const onThisScreen = useful.find(({ screenChange, changes }) => !screenChange && changes.length > 0);
  return {
    options: useful,
    bestOnThisScreen: onThisScreen ?? null,
    sufficesOnThisScreen: useful.some(suffices),
    predictedCount: options.length,
  };
}

function cautionsOf(
  printing: Printing,
  changes: readonly RecoverChange[],
  stock: RecoverStock,
  prediction: RecoverPrediction,
): RecoverCaution[] {
  const cautions: RecoverCaution[] = [];
  if (prediction.milkyHaze === true || addsWhite(printing, changes, stock)) cautions.push("milky-haze");
  if (changes.some(({ kind }) => kind === "halftone")) cautions.push("needs-new-screen");
  return cautions;
}

/**
 * `options` in the order of `planRecovery`. "Counts as equal" would not be an order between neighbours (a = b, b = c, a < c),
 * so the best chance draws all within `equalChance` of it into its group, the best of the rest the next, and so on.
 */
export function rankOptions(options: readonly RecoverOption[], rule: RecoverRule): RecoverOption[] {
  const byChance = [...options].sort((a, b) => b.prediction.chanceInBand - a.prediction.chanceInBand);
  return groupsWithin(byChance, ({ prediction }) => -prediction.chanceInBand, rule.equalChance).flatMap(
    (equals) => {
      const byDistance = equals.sort((a, b) => a.distance - b.distance);
      return groupsWithin(byDistance, ({ distance }) => distance, rule.equalDistance).flatMap((alike) =>
        alike.sort((a, b) => a.minutes - b.minutes || a.cost - b.cost || a.changes.length - b.changes.length),
      );
    },
  );
}

/** Runs of `sorted` (rising by `key`) that lie within `width` of their first. */
function groupsWithin<Item>(sorted: readonly Item[], key: (item: Item) => number, width: number): Item[][] {
  const groups: Item[][] = [];
  let first = Number.NEGATIVE_INFINITY;
  for (const item of sorted) {
    const group = groups.at(-1);
    // The last digits of a difference of decimals must not part what was meant as equal.
    if (group !== undefined && key(item) <= first + width + 1e-9) group.push(item);
    else {
      groups.push([item]);
      first = key(item);
    }
  }
  return groups;
}

/** `ranked` without the pairs that come after one of their own two changes made alone. */
function withoutIdlePairs(ranked: readonly RecoverOption[]): RecoverOption[] {
  const singlesBefore = new Set<RecoverChange>();
  return ranked.filter(({ changes }) => {
    const [one, other] = changes;
    if (one === undefined) return true;
    if (other === undefined) {
      singlesBefore.add(one);
      return true;
    }
    return !singlesBefore.has(one) && !singlesBefore.has(other);
  });
}
