/** A first-off as it is kept: the record by which it teaches, and the entry that says what was decided. */

import type { Documents } from "../../job/documents.ts";
import { MODEL_VERSION } from "../../job/modelVersion.ts";
import { judgeReading } from "../../job/press/firstOffReading.ts";
import { pressReadingsOf } from "../../job/press/pressReadings.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import type { PullChange } from "../../job/press/pullForm.ts";
import type { PressEntry } from "../../job/pressDocument.ts";
import type { Problem } from "../../job/problem.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { printOfForm } from "../../job/recordBook/benchPrint.ts";
import type { TestPrint } from "../../job/recordDocument.ts";

/** Ids and time are arguments, so that the same form makes the same entry. */
interface Making {
  readonly entryId: string;
  readonly printId: string;
  readonly at: string;
  readonly change: PullChange;
  /** The second person; empty where nobody has signed. */
  readonly signer: string;
}

export type KeptFirstOff =
  | { readonly ok: true; readonly print: TestPrint; readonly entry: PressEntry }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly reason: "other-light" | "no-tolerance" | "no-signer" };

/** What may run is signed by a second person; what is stopped or adjusted may be kept by who read it. */
export function keptFirstOff(
  { job }: Documents,
  run: PressRun,
  form: BenchForm,
  { entryId, printId, at, change, signer }: Making,
): KeptFirstOff {
  const readAt = form.readAt ?? at;
  const made = printOfForm({ ...form, readAt, printedAt: form.printedAt ?? readAt }, printId);
  if (!made.ok) return made;
  const read = pressReadingsOf(made.print.readings, job.viewing);
  if (!read.ok || run.lot === null) return { ok: false, reason: "other-light" };
  const judged = judgeReading(read.readings, run.lot, run.lineBand, run.referenceSd);
  if (!judged.ok) return judged;
  const { action, mean, standardUncertainty, conformanceProbability } = judged.verdict;
  if (action === "run" && signer === "") return { ok: false, reason: "no-signer" };
  const { deltaL, tolerance } = run.lineBand.band;
  const corrects = run.firstOffs.find(({ print }) => print !== null && print.id === form.supersedesId);
  // What must not be printed on must not be taken for a reference either.
  const kept = made.print.verdict === "rejected" ? "none" : made.print.verdict;
  const verdict = action === "stop" ? "rejected" : kept;
  return {
    ok: true,
    print: { ...made.print, verdict },
    entry: {
      id: entryId,
      lineId: run.line.id,
      placeId: run.place.id,
      kind: "first-off",
      change,
      subject: run.subject,
      readings: read.readings,
      testPrintId: made.print.id,
      band: { deltaL, tolerance },
      said: { action, mean, standardUncertainty, conformanceProbability, modelVersion: MODEL_VERSION },
      by: signer === "" ? made.print.operator : signer,
      at,
      note: form.note,
      supersedesId: corrects?.entry.id ?? null,
    },
  };
}
