/** What was read on a line's first-off, against what the record book leads to expect of that very print. */
import { isSameViewing } from "../../core/colorimetry/viewing.ts";
import { conformanceProbability } from "../../core/planning/decisions/conformance.ts";
import type { RecoverPrediction } from "../../core/planning/decisions/recover.ts";
import { checklistSubject } from "../../job/checklistSubject.ts";
import { pairSdOf } from "../../job/decisions/testTerms.ts";
import type { Documents } from "../../job/documents.ts";
import type { Band } from "../../job/jobDocument.ts";
import { readingMeans } from "../../job/readingMeans.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { lastCorrection, standingInPlace } from "../../job/standing.ts";
import type { RecoverAsk, UnexplainedFirstOff } from "./decisionProtocol.ts";
import type { ReadyLine } from "./placePrints.ts";

/** The mean of a first-off's pairs. */
export interface FirstOffRead {
  readonly recordId: string;
  readonly deltaL: number;
  readonly standardUncertainty: number;
}

/** Of a normal, nine in ten. */
const Z_90 = 1.6448536269514722;

/** The record that was asked for, or that of the latest first-off of the line as it is chosen to be printed; corrected ones as corrected. */
function firstOffOf(documents: Documents, { lineId, placeId, firstOffId }: RecoverAsk): TestPrint | null {
  const { job, library } = documents;
  const subject = checklistSubject(documents, lineId, placeId);
  // A first-off of an earlier lot, mix or set-up says nothing of what printing on as it is now would give.
  const logged = standingInPlace(job.pressLog).findLast(
    (entry) =>
      entry.lineId === lineId &&
      entry.placeId === placeId &&
      entry.testPrintId !== null &&
      entry.subject === subject,
  );
  return lastCorrection(library.testPrints, firstOffId ?? logged?.testPrintId ?? null);
}

/** What was read on the first-off under the job's light; null where there is none, or it was read by eye or under another. */
export function firstOffRead(documents: Documents, ask: RecoverAsk, { lot }: ReadyLine): FirstOffRead | null {
  const { job } = documents;
  const record = firstOffOf(documents, ask);
  if (record === null || record.readings.kind === "by-eye") return null;
  const { bare, print, viewing, pairCount } = readingMeans(record.readings, job.viewing);
  if (!isSameViewing(viewing, job.viewing)) return null;
  return {
    recordId: record.id,
    deltaL: print.L - bare.L,
    standardUncertainty: pairSdOf(lot) / Math.sqrt(pairCount),
  };
}

/** Printing on as it is gives what was read, whatever all other prints lead to expect. */
export function asRead(
  { deltaL, standardUncertainty }: FirstOffRead,
  expected: RecoverPrediction,
  band: Band,
): RecoverPrediction {
  const reach = Z_90 * standardUncertainty;
  const tolerance = { lower: band.deltaL - band.tolerance, upper: band.deltaL + band.tolerance };
  const chanceInBand =
    band.tolerance > 0
      ? conformanceProbability(deltaL, standardUncertainty, tolerance)
      : expected.chanceInBand;
  return { ...expected, deltaL5: deltaL - reach, deltaL50: deltaL, deltaL95: deltaL + reach, chanceInBand };
}

export function unexplainedBy(
  { deltaL, standardUncertainty }: FirstOffRead,
  expected: RecoverPrediction,
): UnexplainedFirstOff | null {
  const reach = Z_90 * standardUncertainty;
  const isExplained = deltaL > expected.deltaL5 - reach && deltaL < expected.deltaL95 + reach;
  if (isExplained) return null;
  return { readDeltaL: deltaL, expectedDeltaL5: expected.deltaL5, expectedDeltaL95: expected.deltaL95 };
}
