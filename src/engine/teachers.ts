/** The records that taught most about one cell: each by what would be unknown again without it. */
import { type ExaminedCell, examine } from "../core/evidence/beliefFor.ts";
import { forget } from "../core/evidence/forget.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import { evidencePrintOf } from "./cellPrediction.ts";
import type { MatrixColumn, MatrixRow, Teacher, TeachersRequest } from "./protocol.ts";

/** As many as a sentence can name. */
const MOST_NAMED = 3;
/** Records that could matter are tried one by one; no more than this many, the most related first. Invented default. */
const MOST_TRIED = 24;
/** A record that brings back less than this part of the prior's variance did not matter. Invented default. */
const SMALLEST_SHARE = 0.02;

/** Variance of L* that the unknowns of a cell make. */
function varianceL({ cell, covariance, slopes }: ExaminedCell): number {
  const n = cell.unknowns.length;
  const { jacobian } = slopes;
  let variance = 0;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) variance += jacobian[i]! * covariance[i * n + j]! * jacobian[j]!;
  }
  return variance;
}

/** The variance that the prior alone would give the same unknowns. */
function priorVarianceL({ cell, slopes }: ExaminedCell): number {
  return cell.unknowns.reduce((sum, { sd }, i) => sum + (slopes.jacobian[i]! * sd) ** 2, 0);
}

/** How much a record has in common with a cell: its lot before its style before its inks. */
function kinship(posterior: Posterior, index: number, row: MatrixRow, column: MatrixColumn): number {
  const { garment, itemKeys } = posterior.records[index]!.print;
  const inks = (column.itemKeys ?? []).filter((key) => itemKeys.includes(key)).length;
  const lot = garment.lotKey === row.keys?.lotKey ? 100 : 0;
  const style = garment.styleKey === row.keys?.styleKey ? 10 : 0;
  return lot + style + inks;
}

/** The most telling records of a cell, first the one that taught most. */
export function teachersOf(posterior: Posterior, request: TeachersRequest): readonly Teacher[] {
  const { row, column, viewing } = request;
  const print = evidencePrintOf(row, column);
  if (print === null) return [];
  const now = examine(posterior, print, viewing);
  const known = varianceL(now);
  const prior = priorVarianceL(now);
  if (prior === 0) return [];
  const taught = new Set(posterior.lessons.map(({ teaching }) => teaching.id));
  return posterior.records
    .map((record, index) => ({ record, kin: kinship(posterior, index, row, column) }))
    .filter(({ record, kin }) => kin > 0 && taught.has(record.id))
    .sort((one, other) => other.kin - one.kin)
    .slice(0, MOST_TRIED)
    .map(({ record }) => {
      const without = varianceL(examine(forget(posterior, record.id), print, viewing));
      return { recordId: record.id, share: (without - known) / prior };
    })
    .filter(({ share }) => share >= SMALLEST_SHARE)
    .sort((one, other) => other.share - one.share)
    .slice(0, MOST_NAMED);
}
