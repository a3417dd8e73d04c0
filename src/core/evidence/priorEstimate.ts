/** The prior's scales re-estimated from a shop's own records: returned for somebody to accept, never applied by itself. */

import { lnDeterminant } from "./dense.ts";
import { type LearnOptions, learn } from "./learn.ts";
import { lessonCovariance } from "./leaveOneOut.ts";
import { distance2Of, residualAt } from "./lesson.ts";
import type { Posterior } from "./posterior.ts";
import { DEFAULT_PRIOR_SCALES, type PriorScales } from "./priorScales.ts";
import type { EvidenceRecord } from "./record.ts";
import { valuesOf } from "./settle.ts";
import type { UnknownKind } from "./unknown.ts";

/** Fewer teaching records were seen to say nearly nothing of the scales (model.md §6). */
export const LEAST_RECORDS_FOR_SCALES = 100;
/** The default scale counts as this many unknowns of its kind. Invented default. */
const PRIOR_COUNT = 8;
const MOST_ROUNDS = 30;
/** EM creeps where records say little of a kind: each step in ln is taken this much further. Ours. */
const STRETCH = 1.6;
const ARRIVED = 0.01;

/** The kinds of unknown whose scale a shop can teach, by the name of the scale. Haze and surfaces are seen too seldom. */
const ESTIMATED = {
  styleScale: "style",
  mill: "mill",
  colourway: "colourway",
  lot: "lot",
  baseOnStyle: "baseOnStyle",
  fibreGain: "fibreGain",
  baseStrength: "baseStrength",
  colourantStrength: "colourantStrength",
} as const satisfies Partial<Record<keyof PriorScales, UnknownKind>>;

export interface ScaleEstimate {
  readonly scales: PriorScales;
  /** Unknowns of each kind that records speak of. */
  readonly counts: Readonly<Partial<Record<keyof PriorScales, number>>>;
  /** ln of the marginal likelihood under the estimated scales minus that under the present ones (Laplace). */
  readonly lnEvidenceGain: number;
  readonly recordCount: number;
}

/** Sum of mean square (value^2 + variance) over prior variance, and number, of the unknowns of each kind. */
function spreadByKind(posterior: Posterior): Map<UnknownKind, { squares: number; count: number }> {
  const found = new Map<UnknownKind, { squares: number; count: number }>();
  const add = (kind: UnknownKind, square: number): void => {
    const sum = found.get(kind) ?? { squares: 0, count: 0 };
    found.set(kind, { squares: sum.squares + square, count: sum.count + 1 });
  };
  const seen = new Set<string>();
  for (const lesson of posterior.lessons) {
    const values = valuesOf(lesson, posterior.blocks, posterior.sharedValues);
    const { unknowns } = lesson.teaching;
    if (unknowns.every(({ key }) => seen.has(key))) continue;
    const covariance = lessonCovariance(posterior, lesson);
    unknowns.forEach(({ key, kind, sd }, i) => {
      if (seen.has(key)) return;
      seen.add(key);
      add(kind, (values[i]! ** 2 + covariance[i * unknowns.length + i]!) / (sd * sd));
    });
  }
  return found;
}

/**
 * ln of the marginal likelihood by Laplace's approximation, up to what does not depend on the scales: the fit's own
 * -1/2 (misfit + prior distance) - 1/2 ln |H| + 1/2 ln |P| (MacKay, Neural Computation 4 (1992) 415; from memory).
 */
export function lnEvidence(posterior: Posterior): number {
  let sum = -0.5 * posterior.sharedLnDeterminant;
  for (const lesson of posterior.lessons) {
    const values = valuesOf(lesson, posterior.blocks, posterior.sharedValues);
    sum -= 0.5 * lesson.weight * distance2Of(lesson, residualAt(lesson, values));
  }
  for (const { unknowns, values, variances, eliminated } of posterior.blocks) {
    sum -= 0.5 * lnDeterminant(eliminated.factor, unknowns.length);
    unknowns.forEach((_, i) => {
      sum -= 0.5 * (values[i]! ** 2 / variances[i]! + Math.log(variances[i]!));
    });
  }
  posterior.shared.forEach(({ sd }, i) => {
    sum -= 0.5 * ((posterior.sharedValues[i]! / sd) ** 2 + 2 * Math.log(sd));
  });
  return sum;
}

/**
 * Scales that make the records most probable: EM on the Laplace marginal likelihood (each variance the mean of value^2 +
 * variance over its unknowns; Dempster, Laird & Rubin 1977; from memory) under a scaled inverse chi-square prior worth 8
 * unknowns at the default scale. Null under LEAST_RECORDS_FOR_SCALES teaching records.
 */
export function estimateScales(
  records: readonly EvidenceRecord[],
  options: LearnOptions = {},
): ScaleEstimate | null {
  const start = learn(records, options);
  const recordCount = start.lessons.filter(({ teaching }) => teaching.cells.length === 1).length;
  if (recordCount < LEAST_RECORDS_FOR_SCALES) return null;
  let posterior = start;
  const counts: Partial<Record<keyof PriorScales, number>> = {};
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const spread = spreadByKind(posterior);
    const next: Record<keyof PriorScales, number> = { ...posterior.scales };
    let moved = 0;
    for (const [name, kind] of Object.entries(ESTIMATED) as [keyof typeof ESTIMATED, UnknownKind][]) {
      const { squares, count } = spread.get(kind) ?? { squares: 0, count: 0 };
      counts[name] = count;
      const present = posterior.scales[name];
      const usual = DEFAULT_PRIOR_SCALES[name];
      const wanted = Math.sqrt((PRIOR_COUNT * usual ** 2 + squares * present ** 2) / (PRIOR_COUNT + count));
      next[name] = present * (wanted / present) ** STRETCH;
      moved = Math.max(moved, Math.abs(Math.log(next[name] / present)));
    }
    posterior = learn(records, { ...options, scales: next, from: posterior });
    if (moved < ARRIVED) break;
  }
  return {
    scales: posterior.scales,
    counts,
    lnEvidenceGain: lnEvidence(posterior) - lnEvidence(start),
    recordCount,
  };
}
