// A job in a synthetic shop: what each mix is expected to do on its garments, what it truly does, and test prints made on them.

import { labFromReflectance } from "../../../../src/core/colorimetry/cielab.ts";
import { deltaHueAb } from "../../../../src/core/colorimetry/difference.ts";
import { weightsFor } from "../../../../src/core/colorimetry/weights.ts";
import { beliefFor } from "../../../../src/core/evidence/beliefFor.ts";
import { extend } from "../../../../src/core/evidence/extend.ts";
import type { Posterior } from "../../../../src/core/evidence/posterior.ts";
import { believedCell } from "../../../../src/core/prediction/believedCell.ts";
import { cellResponse } from "../../../../src/core/prediction/cellResponse.ts";
import { normalCumulative } from "../../../../src/core/prediction/normalDistribution.ts";
import { probabilityBelow } from "../../../../src/core/prediction/normalMixture.ts";
import { workspaceFor } from "../../../../src/core/prediction/printedColour.ts";
import { spreadOf } from "../../../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../../../src/core/prediction/wettableGarment.ts";
import { drawsFor } from "../../../generator/draws.ts";
import { pairReading, readPrint, SHOP_VIEWING } from "../../../generator/shopReadings.ts";
import type { SyntheticShop } from "../../../generator/syntheticShop.ts";
import { type TargetCell, type TargetGarment, targetGarments } from "../../../generator/targetGarments.ts";
import { DEPOSIT_SD_PRINT_TO_PRINT, PIECE_SD } from "../../../generator/trueEffects.ts";
import { AS_USUAL, type Chance, truePrint } from "../../../generator/truePrint.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const JOB_GARMENTS = 14;
/** Issue "Which mixes, which test prints, and how to recover": spoiled piece and share refused. */
const SPOILED_PIECE = 3.2;
const REFUSED_SHARE = 0.7;

export interface JobLine extends Pick<TargetGarment, "group" | "classes" | "lot" | "cells"> {
  readonly pieces: number;
  /** Money lost where all prints miss the band. */
  readonly stake: number;
  /** By cell: part of the prints of a run that is truly in band, 0..1. */
  readonly sharesInBand: readonly number[];
}

/** What is expected of one cell: chances of too dark, in band, too light; the rest misses by its hue. */
export interface Outlook {
  readonly chanceBelow: number;
  readonly chanceInBand: number;
  readonly chanceAbove: number;
}

function recipeOf({ bases, colourants }: SyntheticShop, { baseKey, blackFraction }: TargetCell) {
  const base = bases.find(({ key }) => key === baseKey)!;
  return { base, colourant: blackFraction === 0 ? null : colourants[0]!, fraction: blackFraction };
}

/**
 * Part of a run's prints in band, by model.md §7: lightness within the tolerance, and no more hue shift beyond that of the clear
 * alone than the limit. Prints of a run scatter by deposit and piece, and each is accepted or refused by itself, as the plan
 * takes it (evidencePlan.ts): a normal by the slopes of L* at one standard deviation of each. The hue is that of the usual print.
 */
function shareInBand(shop: SyntheticShop, { lot }: TargetGarment, cell: TargetCell): number {
  const recipe = recipeOf(shop, cell);
  const printedLab = (of: typeof recipe, chance: Chance = AS_USUAL) =>
    labFromReflectance(truePrint(shop.effects, lot, of, shop.setUps[0]!, chance), weightsFor(SHOP_VIEWING));
  const usual = printedLab(recipe);
  const hueShift = (printed: typeof usual) => Math.abs(deltaHueAb(lot.bareLab, printed));
  const clear = printedLab({ ...recipe, colourant: null, fraction: 0 });
  if (hueShift(usual) - hueShift(clear) > BAND.hueLimit) return 0;
  const byDeposit = printedLab(recipe, { ...AS_USUAL, lnDeposit: DEPOSIT_SD_PRINT_TO_PRINT }).L - usual.L;
  const byPiece = printedLab(recipe, { ...AS_USUAL, lnPiece: PIECE_SD }).L - usual.L;
  const sd = Math.hypot(byDeposit, byPiece);
  const deltaL = usual.L - lot.bareLab.L;
  const below = (limit: number) =>
    sd > 0 ? normalCumulative((limit - deltaL) / sd) : Number(deltaL <= limit);
  return below(BAND.deltaL + BAND.tolerance) - below(BAND.deltaL - BAND.tolerance);
}

/** 14 garments of those the shop is asked about. */
export function jobOf(shop: SyntheticShop, withLibrary: boolean): JobLine[] {
  const draws = drawsFor(shop.seed, "job");
  return draws
    .shuffled(targetGarments(shop))
    .slice(0, JOB_GARMENTS)
    .map((target) => {
      // 50 to 2,500 pieces, as often below 350 as above. Invented.
      const pieces = Math.round(50 * Math.exp(draws.between(0, Math.log(50))));
      return {
        ...target,
        group: withLibrary ? target.group : "untested",
        pieces,
        stake: pieces * SPOILED_PIECE * REFUSED_SHARE,
        sharesInBand: target.cells.map((cell) => shareInBand(shop, target, cell)),
      };
    });
}

/** The outlook of every cell of a line. */
export function outlooksOf(posterior: Posterior, { cells }: JobLine): Outlook[] {
  const cloth = wettableGarment(cells[0]!.print.garment.garment, SHOP_VIEWING);
  const room = workspaceFor(cloth);
  return cells.map(({ print }) => {
    const belief = beliefFor(posterior, print, SHOP_VIEWING);
    const cell = believedCell(cloth, print.mix, print.application, belief);
    const response = cellResponse(room, cell.cloth, cell.ink, BAND.hueLimit, cell.doubt);
    const { chanceInBand } = spreadOf(room, cell.cloth, cell.ink, BAND, response);
    // The room still holds the distribution that the spread was read from.
    const { all } = room.spread;
    const most = Math.max(0, 1 - chanceInBand);
    const chanceBelow = Math.min(probabilityBelow(all, BAND.deltaL - BAND.tolerance), most);
    const above = 1 - probabilityBelow(all, BAND.deltaL + BAND.tolerance);
    const chanceAbove = Math.min(Math.max(0, above), Math.max(0, 1 - chanceInBand - chanceBelow));
    return { chanceInBand, chanceBelow, chanceAbove };
  });
}

/** Cells by their chance in band, the likeliest first. */
export function likeliest(outlooks: readonly Outlook[]): number[] {
  return outlooks
    .map((_, c) => c)
    .sort((one, other) => outlooks[other]!.chanceInBand - outlooks[one]!.chanceInBand);
}

/** What the job loses where each garment gets its likeliest mix. */
export function lossUnder(posterior: Posterior, job: readonly JobLine[]): number {
  return job.reduce((sum, line) => {
    const best = likeliest(outlooksOf(posterior, line))[0]!;
    return sum + (1 - line.sharesInBand[best]!) * line.stake;
  }, 0);
}

/** What the job loses where each garment gets the mix of which most prints are in band. */
export function leastLoss(job: readonly JobLine[]): number {
  return job.reduce((sum, { sharesInBand, stake }) => sum + (1 - Math.max(...sharesInBand)) * stake, 0);
}

/** `posterior` after a test print of one cell of a line: the same shop, line and cell, the same reading. */
export function tested(
  shop: SyntheticShop,
  posterior: Posterior,
  { lot, cells }: JobLine,
  c: number,
): Posterior {
  const { print } = cells[c]!;
  const id = `job ${lot.lotKey} ${c}`;
  const recipe = recipeOf(shop, cells[c]!);
  const reading = readPrint(drawsFor(shop.seed, id), shop.effects, lot, recipe, shop.setUps[0]!);
  return extend(posterior, {
    id,
    printKey: id,
    print,
    viewing: SHOP_VIEWING,
    reading: pairReading(reading),
    at: "2026-06-01T00:00:00.000Z",
    washCount: 0,
  });
}
