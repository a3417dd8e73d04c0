/** The documents in two parts: what undo may take back, and the ledgers that it never touches. */
import type { Documents } from "../../job/documents.ts";
import { JOB_LEDGER_NAMES, type Job, type JobLedgerName } from "../../job/jobDocument.ts";
import { LEDGER_NAMES, type Library, type LibraryLedgers, ledgersOf } from "../../job/libraryDocument.ts";

export interface Undoable {
  readonly job: Omit<Job, JobLedgerName>;
  readonly shelf: Library["shelf"];
  readonly garmentLots: Library["garmentLots"];
}

/** Append-only: sign-offs, the press log and the library's records. */
export interface Ledgers extends Readonly<LibraryLedgers>, Readonly<Pick<Job, JobLedgerName>> {}

export function undoablePart({ job, library }: Documents): Undoable {
  const { checklist: _, pressLog: __, ...rest } = job;
  return { job: rest, shelf: library.shelf, garmentLots: library.garmentLots };
}

export function ledgerPart({ job, library }: Documents): Ledgers {
  return { checklist: job.checklist, pressLog: job.pressLog, ...ledgersOf(library) };
}

export function joined(undoable: Undoable, { checklist, pressLog, ...records }: Ledgers): Documents {
  const { job, shelf, garmentLots } = undoable;
  return { job: { ...job, checklist, pressLog }, library: { shelf, garmentLots, ...records } };
}

/** Whether `next` is `previous` with nothing but additions at the ends. */
export function onlyAdds(previous: Ledgers, next: Ledgers): boolean {
  const begins = (before: readonly unknown[], after: readonly unknown[]) =>
    before.length <= after.length && before.every((entry, index) => entry === after[index]);
  return [...JOB_LEDGER_NAMES, ...LEDGER_NAMES].every((name) => begins(previous[name], next[name]));
}
