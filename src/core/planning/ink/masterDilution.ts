/** Masters: a colourant dispersed beforehand in a base, weighed by a sheet of their own, dated and used before a date. */
import type { AvailableMaster } from "./potRecipe.ts";
import { type RefusedWeighSheet, type WrittenWeighSheet, writeWeighSheet } from "./weighSheet.ts";

export interface MasterDilutionRequest {
  readonly colourantId: string;
  readonly baseId: string;
  /** Wanted part of colourant, above 0 and below 1: usually 0.1 or 0.02. */
  readonly massFraction: number;
  readonly batchGrams: number;
  readonly scaleStepGrams: number;
  /** Stronger masters of the colourant that this one may be let down from. */
  readonly masters: readonly AvailableMaster[];
  /** Calendar days, YYYY-MM-DD; null where the shop enters none. */
  readonly madeOn: string;
  readonly expiresOn: string | null;
}

export type MasterDilution =
  | {
      readonly ok: true;
      readonly sheet: WrittenWeighSheet;
      /** Part of colourant by the rounded grams: what the master is to be stored with. */
      readonly trueMassFraction: number;
      readonly madeOn: string;
      readonly expiresOn: string | null;
    }
  | RefusedWeighSheet;

/** Where a master stands on a day; `no-date` where its expiry was not entered as a day. */
export type MasterState = "usable" | "expired" | "no-date";

const CALENDAR_DAY = /^\d{4}-\d{2}-\d{2}$/;

/**
 * The weigh sheet of a master. Only stronger masters in the same base are used to make it.
 * @throws RangeError for dates that are not YYYY-MM-DD or the wrong way round, and as `writeWeighSheet`.
 */
export function diluteMaster(request: MasterDilutionRequest): MasterDilution {
  const { colourantId, baseId, massFraction, batchGrams, scaleStepGrams, madeOn, expiresOn } = request;
  if (!(massFraction > 0 && massFraction < 1)) {
    throw new RangeError(`massFraction of a master must be between 0 and 1; got ${massFraction}`);
  }
  requireDay("madeOn", madeOn);
  if (expiresOn !== null) {
    requireDay("expiresOn", expiresOn);
    if (expiresOn < madeOn) throw new RangeError(`expiresOn must not be before ${madeOn}; got ${expiresOn}`);
  }
  const sheet = writeWeighSheet({
    recipe: [
      { itemId: baseId, role: "base", massFraction: 1 - massFraction },
      { itemId: colourantId, role: "colourant", massFraction },
    ],
    masters: request.masters.filter((master) => master.massFraction > massFraction),
    otherBases: "refused",
    batchGrams,
    scaleStepGrams,
  });
  if (!sheet.ok) return sheet;
  const colourant = sheet.trueRecipe.find((part) => part.itemId === colourantId)!;
  return { ok: true, sheet, trueMassFraction: colourant.massFraction, madeOn, expiresOn };
}

/**
 * Whether a master may be weighed from on a day; on its last day it still may.
 * @param expiresOn as entered, perhaps not a date. @param day YYYY-MM-DD. @throws RangeError for another `day`.
 */
export function masterStateOn(expiresOn: string, day: string): MasterState {
  requireDay("day", day);
  if (!CALENDAR_DAY.test(expiresOn)) return "no-date";
  return day <= expiresOn ? "usable" : "expired";
}

function requireDay(name: string, day: string): void {
  if (!CALENDAR_DAY.test(day)) throw new RangeError(`${name} must be YYYY-MM-DD; got ${day}`);
}
