/** The one thing that can be done to the checklist's ledger: add to it. */
import type { Documents } from "../documents.ts";
import { type ChecklistEntry, checklistEntrySchema } from "../jobDocument.ts";
import { requireId, requireValid, withItem } from "./listEdit.ts";

/** Item entries name their item; an override gives its reason. @throws RangeError where they do not. */
export function appendChecklistEntry(documents: Documents, entry: ChecklistEntry): Documents {
  const { job } = documents;
  requireValid(checklistEntrySchema, entry, "entry");
  requireId(job.lines, entry.lineId, "line");
  requireId(job.places, entry.placeId, "place");
  const concernsItem = entry.action === "sign" || entry.action === "withdraw";
  if (concernsItem !== (entry.itemCode !== null)) {
    throw new RangeError(
      `itemCode must ${concernsItem ? "name an item" : "be null"} for ${entry.action}; got ${entry.itemCode}`,
    );
  }
  if (entry.action === "override" && entry.note.trim() === "") {
    throw new RangeError("an override must give its reason; got none");
  }
  return { ...documents, job: { ...job, checklist: withItem(job.checklist, entry, "entry") } };
}
