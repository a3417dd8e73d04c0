/** What a record is called wherever it is spoken of: garment, lot, ink and day. */
import type { Library } from "../../job/libraryDocument.ts";
import { lineName } from "../../job/lineName.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { dayWords } from "../words/checklistSentences.ts";
import { recipeName } from "../words/mixWords.ts";

export interface RecordName {
  readonly garment: string;
  readonly lot: string;
  readonly mix: string;
  readonly setUp: string;
  readonly day: string;
}

export function recordName(
  { garmentLots, shelf }: Pick<Library, "garmentLots" | "shelf">,
  print: TestPrint,
): RecordName {
  const lot = garmentLots.find((one) => one.id === print.garmentLotId);
  return {
    garment: lot === undefined ? "a garment no longer in the library" : lineName(lot),
    lot: lot?.lot ?? "",
    mix: recipeName(print.recipe, shelf),
    setUp: shelf.setUps.find((one) => one.id === print.setUpId)?.name ?? "a set-up no longer on the shelf",
    day: dayWords(print.printedAt),
  };
}
