/** Which records a prediction rests on: what each one took away of the spread that there was before any. */
import type { Viewing } from "../colorimetry/viewing.ts";
import { type ExaminedCell, examine } from "./beliefFor.ts";
import { blockOf } from "./beliefOfCell.ts";
import { solveLower, solveUpper } from "./dense.ts";
import type { Lesson } from "./lesson.ts";
import type { Posterior } from "./posterior.ts";
import type { EvidencePrint } from "./record.ts";

export interface Influence {
  readonly recordId: string;
  /** Its part of all that the records took away of the variance of delta-L*; all parts sum to 1. */
  readonly share: number;
}

/** Covariance of delta-L* of the cell with every unknown of the posterior. */
interface Reach {
  readonly block: number;
  readonly own: Float64Array;
  readonly shared: Float64Array;
  /** Part of the slopes in each shared unknown, and in each unknown of the cell's own block. */
  readonly ownSlopes: Float64Array;
  readonly sharedSlopes: Float64Array;
}

function reachOf(posterior: Posterior, styleKey: string, { cell, slopes }: ExaminedCell): Reach {
  const block = blockOf(posterior, styleKey);
  const sharedSlopes = new Float64Array(posterior.shared.length);
  const ownSlopes = new Float64Array(block?.unknowns.length ?? 0);
  cell.unknowns.forEach(({ key }, i) => {
    const isOwn = i < cell.wetCount;
    const at = isOwn ? block?.positions.get(key) : posterior.sharedPositions.get(key);
    if (at === undefined) return;
    (isOwn ? ownSlopes : sharedSlopes)[at]! += slopes.jacobian[i]!;
  });
  // With A the block's own precision, W = A^-1 coupling and C the shared covariance: shared part C (s - W' l), own part
  // A^-1 l - W times that.
  const open = sharedSlopes.slice();
  const own = ownSlopes.slice();
  if (block !== undefined) {
    const { factor, coupling, shared } = block.eliminated;
    for (let i = 0; i < ownSlopes.length; i++) {
      if (ownSlopes[i] === 0) continue;
      shared.forEach((position, j) => {
        open[position]! -= coupling[i * shared.length + j]! * ownSlopes[i]!;
      });
    }
    solveLower(factor, own.length, own);
    solveUpper(factor, own.length, own);
  }
  const count = open.length;
  const shared = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) shared[i]! += posterior.sharedCovariance[i * count + j]! * open[j]!;
  }
  if (block !== undefined) addCoupled(own, block.eliminated, shared);
  return { block: posterior.blockOfStyle.get(styleKey) ?? -1, own, shared, ownSlopes, sharedSlopes };
}

function addCoupled(
  own: Float64Array,
  { coupling, shared: columns }: { coupling: Float64Array; shared: Int32Array },
  shared: Float64Array,
): void {
  for (let i = 0; i < own.length; i++) {
    columns.forEach((position, j) => {
      own[i]! -= coupling[i * columns.length + j]! * shared[position]!;
    });
  }
}

/** Covariance of delta-L* with each unknown of a lesson: after all records, and before any. */
function covariancesWith(
  posterior: Posterior,
  reach: Reach,
  lesson: Lesson,
): { after: number[]; before: number[] } {
  const { locals, shared, block } = lesson;
  const after: number[] = [];
  const before: number[] = [];
  const { variances, eliminated } = posterior.blocks[block]!;
  for (const i of locals) {
    if (block === reach.block) {
      after.push(reach.own[i]!);
      before.push(variances[i]! * reach.ownSlopes[i]!);
      continue;
    }
    // Another style: only through what is shared.
    let sum = 0;
    eliminated.shared.forEach((position, j) => {
      sum -= eliminated.coupling[i * eliminated.shared.length + j]! * reach.shared[position]!;
    });
    after.push(sum);
    before.push(0);
  }
  for (const i of shared) {
    after.push(reach.shared[i]!);
    before.push(posterior.shared[i]!.sd ** 2 * reach.sharedSlopes[i]!);
  }
  return { after, before };
}

/**
 * The records that a prediction of `print` rests on, the most telling first. With q the slopes of delta-L* and C the
 * posterior covariance, record r pulls the estimate by k_r = q'C J_r' N_r^-1 times its residual, and prior minus posterior
 * variance is exactly the sum of k_r J_r P^-1 q over all records (P the prior precision): that term is its share. Records
 * that say the same thing share it evenly. Empty where no record says anything.
 */
export function influence(posterior: Posterior, print: EvidencePrint, viewing: Viewing): Influence[] {
  const examined = examine(posterior, print, viewing);
  const reach = reachOf(posterior, print.garment.styleKey, examined);
  const found: { recordId: string; share: number }[] = [];
  let total = 0;
  for (const lesson of posterior.lessons) {
    const { after, before } = covariancesWith(posterior, reach, lesson);
    const { jacobian } = lesson.linearised;
    const p = lesson.target.length;
    const count = after.length;
    const along = (values: readonly number[], row: number): number =>
      values.reduce((sum, value, i) => sum + value * jacobian[row * count + i]!, 0);
    let share = 0;
    for (let row = 0; row < p; row++) {
      const pulled = along(after, row);
      if (pulled === 0) continue;
      for (let other = 0; other < p; other++) {
        share += lesson.weight * pulled * lesson.inverseNoise[row * p + other]! * along(before, other);
      }
    }
    total += share;
    found.push({ recordId: lesson.teaching.id, share });
  }
  if (!(total > 0)) return [];
  return found
    .map(({ recordId, share }) => ({ recordId, share: share / total }))
    .sort((one, other) => other.share - one.share);
}
