/** Keeps every record that was ever stored: the library's ledgers, a job's checklist and its press log are only ever added to. */
import type { Job } from "../job/jobDocument.ts";
import { eachLedger, type LedgerName, type Library, type LibraryLedgers } from "../job/libraryDocument.ts";

/** The stored entries in their order, as the next ones say them where they do, then the next ones that are new. */
function united<Entry extends { readonly id: string }>(
  stored: readonly Entry[],
  next: readonly Entry[],
): Entry[] {
  const byId = new Map(next.map((entry) => [entry.id, entry]));
  const storedIds = new Set(stored.map((entry) => entry.id));
  return [
    ...stored.map((entry) => byId.get(entry.id) ?? entry),
    ...next.filter((entry) => !storedIds.has(entry.id)),
  ];
}

/** The next library with the stored records that it does not know. */
export function libraryWithRecordsOf(stored: Library, next: Library): Library {
  const both = <Name extends LedgerName>(name: Name) =>
    united<{ readonly id: string }>(stored[name], next[name]) as Library[Name];
  return { ...next, ...eachLedger<LibraryLedgers>(both) };
}

/** The next job with the stored checklist and press log entries that it does not know. */
export function jobWithRecordsOf(stored: Job, next: Job): Job {
  return {
    ...next,
    checklist: united(stored.checklist, next.checklist),
    pressLog: united(stored.pressLog, next.pressLog),
  };
}
