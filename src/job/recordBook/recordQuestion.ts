/** A record as evidence asks about it: on its own, without the rest of the book, so that what others expect can be told. */
import type { EvidenceRecord } from "../../core/evidence/record.ts";
import { evidenceInputs } from "../evidenceInputs.ts";
import type { Library } from "../libraryDocument.ts";
import type { Problem } from "../problem.ts";
import type { TestPrint } from "../recordDocument.ts";

export type AskedRecord =
  | { readonly ok: true; readonly record: EvidenceRecord }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** `print` as evidence takes it, whether it stands in the book or is being typed. */
export function askedRecord(library: Library, print: TestPrint): AskedRecord {
  const { records, leftOut } = evidenceInputs({
    ...library,
    testPrints: [{ ...print, supersedesId: null }],
    goodsInChecks: [],
    slipAnswers: [],
  });
  const [record] = records;
  return record === undefined
    ? { ok: false, problems: leftOut.flatMap(({ problems }) => problems) }
    : { ok: true, record };
}
