/** What a change at the press takes: minutes of standstill and money. */
import { type ChangeMinutes, DEFAULT_CHANGE_MINUTES } from "../ink/runOrder.ts";
import type { Printing, RecoverChange, RecoverStock } from "./recoverChanges.ts";

export interface RecoverEffort {
  readonly minutes: ChangeMinutes;
  /** Weighing and stirring a pot that is not at the press yet. */
  readonly mixPotMinutes: number;
  /** Weighing more tint into the pot in use. */
  readonly addTintMinutes: number;
  readonly strokeMinutes: number;
  readonly squeegeeMinutes: number;
  /** Output, coating, exposure and drying of a screen that is not there: a halftone needs one. */
  readonly newScreenMinutes: number;
  /** Money. */
  readonly perPressMinute: number;
  readonly perInkChange: number;
  readonly perNewScreen: number;
}

/**
 * New screen: the middle of 1 to 2 hours, from memory, no source (trade.md §7). Press hour 60, ink change 12, screen and
 * film 25: posted US list prices (trade.md §1). The other minutes are invented defaults.
 */
export const DEFAULT_RECOVER_EFFORT: RecoverEffort = {
  minutes: DEFAULT_CHANGE_MINUTES,
  mixPotMinutes: 10,
  addTintMinutes: 5,
  strokeMinutes: 1,
  squeegeeMinutes: 3,
  newScreenMinutes: 90,
  perPressMinute: 1,
  perInkChange: 12,
  perNewScreen: 25,
};

export interface Effort {
  readonly minutes: number;
  readonly cost: number;
}

/**
 * Minutes and money of making `changes`. All changes of the ink are one change of pot: tint that is only added goes into
 * the pot in use; anything else is another mix, a wash-up, and mixing unless that base untinted stands ready. Another
 * screen comes with its own, clean, so that it takes no wash-up.
 */
export function effortOf(
  printing: Printing,
  changes: readonly RecoverChange[],
  stock: RecoverStock,
  effort: RecoverEffort = DEFAULT_RECOVER_EFFORT,
): Effort {
  const kinds = new Set(changes.map(({ kind }) => kind));
  const otherScreen = kinds.has("screen") || kinds.has("halftone");
  let minutes = 0;
  let money = 0;
  const inkChanges = changes.filter(({ kind }) => kind === "base" || kind === "tint");
  if (inkChanges.length > 0) {
    money += effort.perInkChange;
    if (inkChanges.every((change) => isMoreTint(printing, change))) {
      minutes += effort.addTintMinutes + (otherScreen ? 0 : effort.minutes.wipe);
    } else {
      minutes += (isReady(printing, inkChanges, stock) ? 0 : effort.mixPotMinutes) + washMinutes();
    }
  }
  function washMinutes(): number {
    return otherScreen ? 0 : effort.minutes.washUp + effort.minutes.darkToLight;
  }
  if (kinds.has("strokes")) minutes += effort.strokeMinutes;
  if (kinds.has("squeegee")) minutes += effort.squeegeeMinutes;
  if (otherScreen) minutes += effort.minutes.screenSetUp;
  if (kinds.has("halftone")) {
    minutes += effort.newScreenMinutes;
    money += effort.perNewScreen;
  }
  return { minutes, cost: money + minutes * effort.perPressMinute };
}

function isMoreTint(printing: Printing, change: RecoverChange): boolean {
  if (change.kind !== "tint") return false;
  const now = printing.tints.find(({ colourantKey }) => colourantKey === change.colourantKey);
  return change.massFraction > (now?.massFraction ?? 0);
}

/** Whether the changed mix is one base alone whose pot is open. */
function isReady(printing: Printing, inkChanges: readonly RecoverChange[], stock: RecoverStock): boolean {
  const base = inkChanges.find((change) => change.kind === "base");
  const key = base?.kind === "base" ? base.baseKey : printing.baseKey;
  const untinted = printing.tints.every(({ colourantKey }) =>
    inkChanges.some(
      (change) => change.kind === "tint" && change.colourantKey === colourantKey && change.massFraction === 0,
    ),
  );
  const addsNone = inkChanges.every((change) => change.kind !== "tint" || change.massFraction === 0);
  return untinted && addsNone && stock.bases.some((each) => each.key === key && each.potReady);
}
