/** What all records together say of one print: the belief that a prediction takes in place of the prior. */
import type { Viewing } from "../colorimetry/viewing.ts";
import { BELIEF_AXIS_COUNT } from "../prediction/cellBelief.ts";
import type { EvidenceLevel, SpreadSource } from "../prediction/prediction.ts";
import {
  DEPOSIT_SD_PRINT_TO_PRINT,
  DEPOSIT_SD_WEIGHED,
  DISCREPANCY_DELTA_L,
  DISCREPANCY_LN_TINT,
  DISCREPANCY_LN_WET_OUT,
  type Surprise,
} from "../prediction/unknowns.ts";
import type { LearnedBelief } from "./belief.ts";
import { covarianceOf, knowsStyle, meansOf } from "./beliefOfCell.ts";
import { type Cell, cachedCloth, cellOf, mainBaseKey, NONE, surpriseAt } from "./cell.ts";
import { axesOf, dominatingGain } from "./cellAxes.ts";
import { type CellSlopes, cellSlopes } from "./cellSlopes.ts";
import { lotBaseKey, type Posterior } from "./posterior.ts";
import type { EvidencePrint } from "./record.ts";

/** One print under a posterior, linearised where its unknowns most probably are. */
export interface ExaminedCell {
  readonly cell: Cell;
  readonly means: Float64Array;
  readonly covariance: Float64Array;
  readonly slopes: CellSlopes;
}

export function examine(posterior: Posterior, print: EvidencePrint, viewing: Viewing): ExaminedCell {
  const cloth = cachedCloth(posterior.cloths, print.garment.garment, viewing);
  const cell = cellOf(print, cloth, posterior.scales);
  const { styleKey } = print.garment;
  const means = meansOf(posterior, cell, styleKey);
  return {
    cell,
    means,
    covariance: covarianceOf(posterior, cell, styleKey),
    slopes: cellSlopes(cell, means),
  };
}

/** What is expected of `print`, without how sure: the means of `beliefFor`, at a small part of its cost. */
export function expectationFor(
  posterior: Posterior,
  print: EvidencePrint,
  viewing: Viewing,
): Required<Surprise> {
  const cloth = cachedCloth(posterior.cloths, print.garment.garment, viewing);
  const cell = cellOf(print, cloth, posterior.scales);
  return surpriseAt(cell, meansOf(posterior, cell, print.garment.styleKey));
}

/** Part of the variance of ln g that other records must have taken away for `related prints` (model.md §6). */
const RELATED_VARIANCE_CUT = 0.4;

/**
 * Evidence level (model.md §6): `this lot`, a print on this lot with this base and, for a tinted mix, any record of each
 * colourant; `related prints`, the variance of ln g for this base and the fibre that carries most of the wet-out cut by
 * at least 40 %; else `model only`.
 */
export function evidenceLevelOf(
  posterior: Posterior,
  print: EvidencePrint,
  examined: ExaminedCell,
): EvidenceLevel {
  const { mix, itemKeys, garment } = print;
  const baseKey = mainBaseKey(mix, itemKeys);
  const tintsKnown = mix.parts.every(
    (part, i) =>
      part.kind === "base" || part.massFraction === 0 || posterior.printedColourants.has(itemKeys[i]!),
  );
  if (tintsKnown && posterior.printedLotBases.has(lotBaseKey(garment.lotKey, baseKey))) return "this lot";
  const { cell, covariance, slopes, means } = examined;
  const count = cell.unknowns.length;
  const counted = [dominatingGain(cell, slopes.jacobian, means)];
  for (let k = 0; k < cell.wetCount; k++) counted.push(k);
  const base = itemKeys.indexOf(baseKey);
  if (base >= 0 && mix.parts[base]!.kind === "base" && cell.strengthOf[base] !== NONE) {
    counted.push(cell.strengthOf[base]!);
  }
  let before = 0;
  let after = 0;
  const loading = (i: number): number => cell.wetLoadings[i] ?? 1;
  for (const i of counted) {
    before += (loading(i) * cell.unknowns[i]!.sd) ** 2;
    for (const j of counted) after += loading(i) * loading(j) * covariance[i * count + j]!;
  }
  return after <= (1 - RELATED_VARIANCE_CUT) * before ? "related prints" : "model only";
}

/** What is believed of `print` under `viewing`: the prior where `posterior` knows nothing. */
export function beliefFor(posterior: Posterior, print: EvidencePrint, viewing: Viewing): LearnedBelief {
  const examined = examine(posterior, print, viewing);
  const { cell, means, covariance, slopes } = examined;
  const count = cell.unknowns.length;
  const axes = axesOf(cell, slopes.jacobian, means);
  const lumped = new Float64Array(BELIEF_AXIS_COUNT ** 2);
  const axisMeans = new Float64Array(BELIEF_AXIS_COUNT);
  for (let p = 0; p < BELIEF_AXIS_COUNT; p++) {
    for (let i = 0; i < count; i++) {
      const share = axes[p * count + i]!;
      if (share === 0) continue;
      axisMeans[p]! += share * means[i]!;
      for (let q = 0; q < BELIEF_AXIS_COUNT; q++) {
        for (let j = 0; j < count; j++) {
          lumped[p * BELIEF_AXIS_COUNT + q]! += share * covariance[i * count + j]! * axes[q * count + j]!;
        }
      }
    }
  }
  const hasTint = print.mix.parts.some((part) => part.kind === "colourant" && part.massFraction > 0);
  const ownDeposit = print.depositOfThisPrintWeighed ? DEPOSIT_SD_WEIGHED : DEPOSIT_SD_PRINT_TO_PRINT;
  const misses = [DISCREPANCY_LN_WET_OUT, hasTint ? DISCREPANCY_LN_TINT : 0, ownDeposit];
  misses.forEach((sd, p) => {
    lumped[p * BELIEF_AXIS_COUNT + p]! += sd * sd;
  });
  const isUnseen = !knowsStyle(posterior, print.garment.styleKey);
  return {
    mean: surpriseAt(cell, means),
    axisMeans,
    covariance: lumped,
    styleTailSd: isUnseen ? cell.unknowns[0]!.sd : 0,
    evidence: evidenceLevelOf(posterior, print, examined),
    bySource: sharesBySource(examined, ownDeposit),
  };
}

/** Share of each source in the variance of L*, largest first. */
function sharesBySource(
  { cell, covariance, slopes }: ExaminedCell,
  ownDeposit: number,
): LearnedBelief["bySource"] {
  const count = cell.unknowns.length;
  const { jacobian, wetOut, tint, deposit, heatherGap } = slopes;
  const parts = new Map<SpreadSource, number>();
  const add = (source: SpreadSource, variance: number): void => {
    parts.set(source, (parts.get(source) ?? 0) + variance);
  };
  for (let i = 0; i < count; i++) {
    let along = 0;
    for (let j = 0; j < count; j++) along += covariance[i * count + j]! * jacobian[j]!;
    add(cell.unknowns[i]!.source, jacobian[i]! * along);
  }
  add("deposit", (deposit[0]! * ownDeposit) ** 2);
  add("colourant-strength", (tint[0]! * DISCREPANCY_LN_TINT) ** 2);
  add(
    "model",
    (wetOut[0]! * DISCREPANCY_LN_WET_OUT) ** 2 + DISCREPANCY_DELTA_L ** 2 + (heatherGap[0]! / 2) ** 2,
  );
  let total = 0;
  for (const variance of parts.values()) total += variance;
  return [...parts]
    .map(([source, variance]) => ({ source, share: variance / total }))
    .sort((one, other) => other.share - one.share);
}
