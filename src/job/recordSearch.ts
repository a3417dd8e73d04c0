/** Finds test prints in the record book by words: garment, ink, screen, who, when, note, verdict. */

import type { Library } from "./libraryDocument.ts";
import type { TestPrint } from "./recordDocument.ts";
import { lookupNames } from "./recordWords.ts";
import { standing } from "./standing.ts";

export interface IndexedRecord {
  readonly print: TestPrint;
  /** Whether no later record corrects it. */
  readonly stands: boolean;
  /** All that can be searched for, folded. */
  readonly words: string;
}

/** Case, accents and blanks aside. */
function folded(text: string): string {
  return text
    .normalize("NFD")
    .replace(/\p{Diacritic}/gu, "")
    .toLowerCase()
    .replace(/\s+/g, " ")
    .trim();
}

/** The record book made searchable, newest print first; records of one time keep their order, the later first. */
export function recordIndex(
  library: Pick<Library, "shelf" | "garmentLots" | "testPrints">,
): readonly IndexedRecord[] {
  const stands = new Set(standing(library.testPrints).map(({ id }) => id));
  const wordsOf = lookupNames(library);
  return library.testPrints
    .map((print) => ({ print, stands: stands.has(print.id), words: folded(wordsOf(print).join(" ")) }))
    .reverse()
    .sort((one, other) => Date.parse(other.print.printedAt) - Date.parse(one.print.printedAt));
}

export interface RecordQuery {
  /** Words that must all be found, parts of words too; empty finds everything. */
  readonly text: string;
  readonly garmentLotId: string | null;
  /** Whether corrected records are wanted as well. */
  readonly withSuperseded: boolean;
}

/** The records that the query finds, in the index's order. */
export function searchRecords(index: readonly IndexedRecord[], query: RecordQuery): IndexedRecord[] {
  const wanted = folded(query.text)
    .split(" ")
    .filter((word) => word !== "");
  return index.filter(
    ({ print, stands, words }) =>
      (stands || query.withSuperseded) &&
      (query.garmentLotId === null || print.garmentLotId === query.garmentLotId) &&
      wanted.every((word) => words.includes(word)),
  );
}
