/** What a record says against what all other prints led to expect: the bench form's answer, and the record book's. */
import { beliefFor, examine } from "../core/evidence/beliefFor.ts";
import { extend } from "../core/evidence/extend.ts";
import { forget } from "../core/evidence/forget.ts";
import { learn } from "../core/evidence/learn.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import type { EvidenceRecord } from "../core/evidence/record.ts";
import { type Suspicion, suspicionOf } from "../core/evidence/suspicious.ts";
import { type BeliefAxis, beliefCovariance, type CellBelief } from "../core/prediction/cellBelief.ts";
import type { TargetBand } from "../core/prediction/inputs.ts";
import type { EvidenceLevel } from "../core/prediction/prediction.ts";
import { predictPrint } from "../core/prediction/predictPrint.ts";

export interface RecordRequest {
  readonly record: EvidenceRecord;
  /** The record that this one corrects: it is no witness against its own correction. */
  readonly correctsId: string | null;
  readonly band: TargetBand;
}

/** Change of L* as predicted, with what it rests on. */
export interface Expected {
  readonly deltaL: number;
  readonly deltaL5: number;
  readonly deltaL95: number;
  readonly deltaEab: number;
  readonly greyScaleGrade: string;
  readonly chanceInBand: number;
  readonly evidence: EvidenceLevel;
}

export interface RecordFinding {
  /** From all prints but this one. */
  readonly expected: Expected;
  /** What is expected of the same print once this record teaches too; null for one after a wash, which does not. */
  readonly afterwards: Expected | null;
  /**
   * Parts of what is unknown of this print's wet-out and tint (their variances) that this record takes away; null where
   * it teaches nothing of it by rule (washed) or there is none (no tint).
   */
  readonly wetOutCut: number | null;
  readonly tintCut: number | null;
  /** How far L* moves on this print when ln of its wet-out moves by one: where it hardly does, no print teaches of it. */
  readonly slopePerLnWetOut: number;
  /** Null where it does not stand out. */
  readonly suspicion: Suspicion | null;
}

/** The posterior without the print that the record was read on, whichever of its readings teaches. */
function withoutPrint(posterior: Posterior, { record, correctsId }: RecordRequest): Posterior {
  const known = new Map(posterior.records.map((one) => [one.id, one]));
  const corrected = correctsId === null ? undefined : known.get(correctsId)?.printKey;
  const taught = posterior.lessons.filter(({ teaching }) => {
    const printKey = known.get(teaching.id)?.printKey;
    return printKey !== undefined && (printKey === record.printKey || printKey === corrected);
  });
  return taught.reduce((left, { teaching }) => forget(left, teaching.id), posterior);
}

function expectedOf({ record, band }: RecordRequest, belief: CellBelief): Expected {
  const { print, viewing } = record;
  const { mix, application, garment } = print;
  const predicted = predictPrint({ garment: garment.garment, mix, application, viewing, band, belief });
  const { deltaL, deltaEab, greyScaleGrade, spread, evidence } = predicted;
  return {
    deltaL,
    deltaL5: spread.p5.deltaL,
    deltaL95: spread.p95.deltaL,
    deltaEab,
    greyScaleGrade,
    chanceInBand: spread.chanceInBand,
    evidence,
  };
}

function cutOf(before: CellBelief, after: CellBelief, axis: BeliefAxis): number {
  const variance = beliefCovariance(before, axis, axis);
  return variance === 0 ? 0 : Math.max(0, 1 - beliefCovariance(after, axis, axis) / variance);
}

/** The finding on a record that stands in the book or is being typed. @throws RangeError as `learn`. */
export function findingOf(posterior: Posterior | null, request: RecordRequest): RecordFinding {
  const { record } = request;
  const { print, viewing } = record;
  const others = withoutPrint(posterior ?? learn([]), request);
  const before = beliefFor(others, print, viewing);
  const expected = expectedOf(request, before);
  const ofLot = others.records.filter(
    (one) =>
      one.id !== record.id &&
      one.id !== request.correctsId &&
      one.print.garment.lotKey === print.garment.lotKey &&
      !others.setAside.has(one.id),
  );
  const suspicion = suspicionOf(others, record, ofLot);
  const slopePerLnWetOut = Math.abs(examine(others, print, viewing).slopes.wetOut[0] ?? 0);
  if (record.washCount > 0)
    return { expected, afterwards: null, wetOutCut: null, tintCut: null, slopePerLnWetOut, suspicion: null };
  // Under an id of its own: a record that is set aside teaches nothing, and here it is asked what it would teach.
  const id = `asked ${record.id}`;
  const after = beliefFor(extend(others, { ...record, id }), print, viewing);
  const hasTint = print.mix.parts.some((part) => part.kind === "colourant" && part.massFraction > 0);
  return {
    expected,
    afterwards: expectedOf(request, after),
    wetOutCut: cutOf(before, after, "lnWetOut"),
    tintCut: hasTint ? cutOf(before, after, "lnTint") : null,
    slopePerLnWetOut,
    suspicion,
  };
}
