/** What was read on a line's first-off, against what the record book leads to expect of that very print. */
import { conformanceProbability } from "../../core/planning/decisions/conformance.ts";
import type { RecoverPrediction } from "../../core/planning/decisions/recover.ts";
import { pairSdOf } from "../../job/decisions/testTerms.ts";
import type { Documents } from "../../job/documents.ts";
import type { Band } from "../../job/jobDocument.ts";
import { readingMeans } from "../../job/readingMeans.ts";
import { standing } from "../../job/standing.ts";
import type { RecoverAsk, UnexplainedFirstOff } from "./decisionProtocol.ts";
import type { ReadyLine } from "./placePrints.ts";

/** The mean of a first-off's pairs. */
export interface FirstOffRead {
  readonly deltaL: number;
  readonly standardUncertainty: number;
}

/** Of a normal, nine in ten. */
const Z_90 = 1.6448536269514722;

/** The record that was asked for, or that of the line's latest first-off in the press log. */
export function firstOffIdOf({ job }: Documents, { lineId, placeId, firstOffId }: RecoverAsk): string | null {
  const logged = standing(job.pressLog).findLast(
    (entry) => entry.lineId === lineId && entry.placeId === placeId && entry.testPrintId !== null,
  );
  return firstOffId ?? logged?.testPrintId ?? null;
}

/** What was read on the first-off under the job's light; null where there is none, or it was read by eye or under another. */
export function firstOffRead(documents: Documents, ask: RecoverAsk, { lot }: ReadyLine): FirstOffRead | null {
  const { job, library } = documents;
  const id = firstOffIdOf(documents, ask);
  const print = standing(library.testPrints).find((one) => one.id === id);
  if (print === undefined || print.readings.kind === "by-eye") return null;
  const { bare, print: printed, viewing, pairCount } = readingMeans(print.readings, job.viewing);
  const { illuminant, observer } = job.viewing;
  if (viewing.illuminant !== illuminant || viewing.observer !== observer) return null;
  return { deltaL: printed.L - bare.L, standardUncertainty: pairSdOf(lot) / Math.sqrt(pairCount) };
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
