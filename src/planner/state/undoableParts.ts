/** The documents in two parts: what undo may take back, and the ledgers that it never touches. */
import type { Documents } from "../../job/documents.ts";
import type { Job } from "../../job/jobDocument.ts";
import type { Library } from "../../job/libraryDocument.ts";

export interface Undoable {
  readonly job: Omit<Job, "checklist">;
  readonly shelf: Library["shelf"];
  readonly garmentLots: Library["garmentLots"];
}

/** Append-only: sign-offs, test prints, approvals. */
export interface Ledgers {
  readonly checklist: Job["checklist"];
  readonly testPrints: Library["testPrints"];
  readonly approvals: Library["approvals"];
}

export function undoablePart({ job, library }: Documents): Undoable {
  const { checklist: _, ...rest } = job;
  return { job: rest, shelf: library.shelf, garmentLots: library.garmentLots };
}

export function ledgerPart({ job, library }: Documents): Ledgers {
  return { checklist: job.checklist, testPrints: library.testPrints, approvals: library.approvals };
}

export function joined(undoable: Undoable, ledgers: Ledgers): Documents {
  return {
    job: { ...undoable.job, checklist: ledgers.checklist },
    library: {
      shelf: undoable.shelf,
      garmentLots: undoable.garmentLots,
      testPrints: ledgers.testPrints,
      approvals: ledgers.approvals,
    },
  };
}

/** Whether `next` is `previous` with nothing but additions at the ends. */
export function onlyAdds(previous: Ledgers, next: Ledgers): boolean {
  const begins = (before: readonly unknown[], after: readonly unknown[]) =>
    before.length <= after.length && before.every((entry, index) => entry === after[index]);
  return (
    begins(previous.checklist, next.checklist) &&
    begins(previous.testPrints, next.testPrints) &&
    begins(previous.approvals, next.approvals)
  );
}
