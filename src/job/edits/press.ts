/** The one thing that can be done to the press log: add to it. A correction is a new entry that names the one it corrects. */
import type { Documents } from "../documents.ts";
import { type PressEntry, pressEntrySchema } from "../pressDocument.ts";
import { requireId, requireValid, withItem } from "./listEdit.ts";
import { requireCorrectable } from "./records.ts";

/**
 * @throws RangeError where the line, the place, the test print or the corrected entry does not exist, where it does not say
 * what was printed, or where a pull names a test print: a first-off alone teaches.
 */
export function appendPressEntry(documents: Documents, entry: PressEntry): Documents {
  const { job, library } = documents;
  requireValid(pressEntrySchema, entry, "entry");
  requireId(job.lines, entry.lineId, "line");
  requireId(job.places, entry.placeId, "place");
  if (entry.subject.trim() === "")
    throw new RangeError("entry.subject must say what was printed; got nothing");
  if (entry.testPrintId !== null) {
    if (entry.kind !== "first-off") {
      throw new RangeError(`testPrintId must be null for a ${entry.kind}; got ${entry.testPrintId}`);
    }
    requireId(library.testPrints, entry.testPrintId, "test print");
  }
  requireCorrectable(job.pressLog, entry, "press entry");
  return { ...documents, job: { ...job, pressLog: withItem(job.pressLog, entry, "press entry") } };
}
