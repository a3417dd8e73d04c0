/** That a lot is another than the one that was approved or released, in plain words. */
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { dateWords } from "./checklistSentences.ts";

interface Earlier {
  readonly lot: GarmentLot | null;
  readonly by: string | null;
  readonly at: string | null;
}

function lotWords(lot: GarmentLot | null): string {
  if (lot === null) return "a lot no longer in the library";
  return lot.lot === "" ? lineName(lot) : `lot ${lot.lot} of ${lineName(lot)}`;
}

function whoWords({ by, at }: Earlier): string {
  if (by === null) return "";
  return ` by ${by}${at === null ? "" : `, ${dateWords(at)}`}`;
}

/** "Approved was lot BC-2231 of ... by ..., 28 Jan 2026: that does not hold for lot BC-7708." */
export function lotChangeSentences(
  change: { readonly approved: Earlier | null; readonly released: Earlier | null },
  lot: GarmentLot | null,
): string[] {
  const this_ = lot === null || lot.lot === "" ? "this lot" : `lot ${lot.lot}`;
  const { approved, released } = change;
  return [
    ...(approved === null
      ? []
      : [
          approved.by === null
            ? `It stands in for ${lotWords(approved.lot)}: nothing is approved for ${this_}.`
            : `Approved was ${lotWords(approved.lot)}${whoWords(approved)}: that does not hold for ${this_}.`,
        ]),
    ...(released === null
      ? []
      : [
          `Released was ${lotWords(released.lot)}${whoWords(released)}: that no longer holds, this is ${this_}.`,
        ]),
  ];
}
