/** Records that disagree with all others, with the slip that would explain each: named, never dropped in silence. */
import { agreementWith, type Expectation } from "./agreement.ts";
import { type BareExpectation, bareAgreement, bareExpectation } from "./bareCheck.ts";
import { covarianceOf, meansOf } from "./beliefOfCell.ts";
import { forget } from "./forget.ts";
import { teachingOf } from "./learn.ts";
import { withoutLesson } from "./leaveOneOut.ts";
import { RECORD_DEGREES_OF_FREEDOM } from "./lesson.ts";
import { normalEquivalent } from "./normalEquivalent.ts";
import type { Posterior } from "./posterior.ts";
import type { EvidenceRecord } from "./record.ts";
import { type Slip, type UndoneSlip, undoneSlips } from "./slips.ts";
import type { Teaching } from "./teaching.ts";

export interface Suspicion {
  readonly recordId: string;
  /** How far off the record is, in standard deviations of what all others lead to expect (normalEquivalent.ts). */
  readonly residualSd: number;
  /** Observed minus expected: L*, a*, b* of the change, or an eye's signed difference alone. */
  readonly residual: readonly number[];
  /** Whether its bare reading is what stands out against the lot's others. */
  readonly bareStandsOut: boolean;
  /** The slip that explains it, and how far off the record is once that is undone; null where none does. */
  readonly slip: Slip | null;
  readonly undoneSd: number | null;
  /** Kept out of the fit until someone answers. */
  readonly setAside: boolean;
}

/** A record is named beyond this many standard deviations, and a slip proposed where undoing it brings it under the other. */
export const NAMED_BEYOND_SD = 3;
export const EXPLAINED_BELOW_SD = 2;
/** Beyond this by the quick formula a record is looked at with a fit of its own. */
const LOOKED_AT_BEYOND_SD = 2.2;

/** How many records hold a slip of one kind, beforehand. Invented default. */
const SLIP_ODDS = 0.01;

interface Distance {
  readonly sd: number;
  readonly bareSd: number;
  readonly residual: Float64Array;
  /** ln of the density of what was read, each reading's error a Student-t as in the fit. */
  readonly lnDensity: number;
}

/** ln of a multivariate Student-t density but for what depends on its dimension alone. */
function lnStudent(distance2: number, dimension: number, lnDeterminant: number): number {
  const nu = RECORD_DEGREES_OF_FREEDOM;
  return -0.5 * lnDeterminant - 0.5 * (nu + dimension) * Math.log1p(distance2 / nu);
}

/** Distance of a record: of its print, of its bare reading, and of both together, whichever stands out most. */
function distanceOf(
  record: EvidenceRecord,
  teaching: Teaching,
  expectation: Expectation,
  bare: BareExpectation | null,
  undone?: UndoneSlip,
): Distance {
  const { dimension } = teaching;
  const more = undone?.ofChange ?? null;
  const { distance2, lnDeterminant, residual } = agreementWith(teaching, expectation, more);
  const print = normalEquivalent(distance2, dimension);
  const ofPrint = lnStudent(distance2, dimension, lnDeterminant);
  if (bare === null || record.reading.kind !== "pair")
    return { sd: print, bareSd: 0, residual, lnDensity: ofPrint };
  const ofBare = bareAgreement(record.reading.bare, bare, undone?.ofBare);
  const bareSd = normalEquivalent(ofBare.distance2, 3);
  const both = normalEquivalent(distance2 + ofBare.distance2, dimension + 3);
  const lnDensity = ofPrint + lnStudent(ofBare.distance2, 3, ofBare.lnDeterminant);
  return { sd: Math.max(print, bareSd, both), bareSd, residual, lnDensity };
}

function expectationOf(posterior: Posterior, teaching: Teaching, record: EvidenceRecord): Expectation {
  const cell = teaching.cells[0]!;
  const { styleKey } = record.print.garment;
  return { means: meansOf(posterior, cell, styleKey), covariance: covarianceOf(posterior, cell, styleKey) };
}

/**
 * The record against `others`, a posterior that does not hold it; null where it does not stand out. A slip is proposed where
 * undoing it brings the record under 2 and makes what was read a hundred times likelier than an error of the fit's own
 * heavy tails does: relighting is unsure, and what is unsure explains everything a little.
 */
export function suspicionOf(
  others: Posterior,
  record: EvidenceRecord,
  ofLot: readonly EvidenceRecord[],
): Suspicion | null {
  const cloths = new Map(others.cloths);
  const measure = (one: EvidenceRecord, undone?: UndoneSlip): Distance => {
    const teaching = teachingOf(one, cloths, others.scales);
    const expectation = expectationOf(others, teaching, one);
    return distanceOf(one, teaching, expectation, bareExpectation(one, ofLot), undone);
  };
  const found = measure(record);
  if (found.sd <= NAMED_BEYOND_SD) return null;
  let slip: Slip | null = null;
  let undoneSd: number | null = null;
  let likeliest = found.lnDensity - Math.log(SLIP_ODDS);
  for (const undone of undoneSlips(record)) {
    const { sd, lnDensity } = measure(undone.record, undone);
    if (sd >= EXPLAINED_BELOW_SD || lnDensity <= likeliest) continue;
    slip = undone.slip;
    undoneSd = sd;
    likeliest = lnDensity;
  }
  return {
    recordId: record.id,
    residualSd: found.sd,
    residual: [...found.residual],
    bareStandsOut: found.bareSd > NAMED_BEYOND_SD,
    slip,
    undoneSd,
    setAside: others.setAside.has(record.id) && slip !== null,
  };
}

/** Every record that stands out, the worst first: those that teach, and those set aside. */
export function suspicious(posterior: Posterior): Suspicion[] {
  const byId = new Map(posterior.records.map((record) => [record.id, record]));
  const byLot = new Map<string, EvidenceRecord[]>();
  for (const record of posterior.records) {
    if (posterior.setAside.has(record.id)) continue;
    const { lotKey } = record.print.garment;
    const list = byLot.get(lotKey);
    if (list === undefined) byLot.set(lotKey, [record]);
    else list.push(record);
  }
  const ofLot = (record: EvidenceRecord): EvidenceRecord[] => byLot.get(record.print.garment.lotKey) ?? [];
  const found: Suspicion[] = [];
  const look = (others: Posterior, record: EvidenceRecord, isSetAside: boolean): void => {
    const suspicion = suspicionOf(others, record, ofLot(record));
    if (suspicion !== null) found.push({ ...suspicion, setAside: isSetAside });
  };
  for (const lesson of posterior.lessons) {
    const record = byId.get(lesson.teaching.id);
    if (record === undefined) continue;
    const bare = bareExpectation(record, ofLot(record));
    const quick = distanceOf(record, lesson.teaching, withoutLesson(posterior, lesson), bare);
    if (quick.sd > LOOKED_AT_BEYOND_SD) look(forget(posterior, record.id), record, false);
  }
  for (const id of posterior.setAside) {
    const record = byId.get(id);
    if (record !== undefined) look(posterior, record, true);
  }
  return found.sort((one, other) => other.residualSd - one.residualSd);
}
