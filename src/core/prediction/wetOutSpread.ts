/** How uncertain the wet-out of one cell is: the unknowns that scale it, added up in ln(wet-out). */
import type { PrintableInk } from "./printableInk.ts";
import { type Workspace, wetCloth } from "./printedColour.ts";
import { lightnessOver } from "./printedLab.ts";
import {
  BASE_ON_STYLE_SD,
  COLOURWAY_SD,
  DISCREPANCY_LN_WET_OUT,
  darkWidening,
  FIBRE_GAIN_SD,
  LOT_SD,
  MILL_SD,
  RESISTANT_FINISH_SD,
  STYLE_SD,
} from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

const GAIN_STEP = 0.2;

export interface WetOutSpread {
  /** Standard deviation in ln(wet-out) of everything that scales it. */
  readonly sd: number;
  /** Standard deviation that the fibres' gains bring, and the factor that a dark cloth puts on epsilon. */
  readonly fibreSd: number;
  readonly widening: number;
  readonly finishSd: number;
}

/**
 * Sum of the squares of how much of d ln(wet-out) each fibre's own gain makes, one common gain of all fibres counting 1:
 * for a solid d_i g_i exp(g_i) over its sum, for a heather by finite differences of L*.
 */
function fibreSquares(room: Workspace, cloth: WettableGarment, ink: PrintableInk): number {
  const { film } = ink;
  let total = 0;
  let squares = 0;
  let centre = 0;
  if (cloth.dyedFibreKs !== null) {
    wetCloth(room, cloth, film);
    centre = lightnessOver(room, cloth, film);
  }
  for (let i = 0; i < cloth.gains.length; i++) {
    let weight: number;
    if (cloth.dyedFibreKs === null) {
      const gain = cloth.gains[i]! * film.wetOutStrength;
      weight = cloth.dyeShares[i]! * gain * Math.exp(gain);
    } else {
      wetCloth(room, cloth, film, 0, i, GAIN_STEP);
      weight = lightnessOver(room, cloth, film) - centre;
    }
    total += weight;
    squares += weight * weight;
  }
  return total === 0 ? 0 : squares / (total * total);
}

/** Variance of the five terms of epsilon. */
const EPSILON_VARIANCE =
  STYLE_SD ** 2 + MILL_SD ** 2 + COLOURWAY_SD ** 2 + LOT_SD ** 2 + BASE_ON_STYLE_SD ** 2;

/**
 * The spread of ln(wet-out) of `ink` on `cloth` under the prior of unknowns.ts; the deposit's part included. The sum is
 * taken as normal: of the style's Student-t it keeps the variance; its kurtosis, 6 (style sd / sd)^4 <= 0.2, would move the
 * 5 and 95 % points by 0.004 standard deviations at most (Cornish & Fisher 1937).
 */
export function wetOutSpread(room: Workspace, cloth: WettableGarment, ink: PrintableInk): WetOutSpread {
  const widening = darkWidening(cloth.darkShare);
  const fibreSd = FIBRE_GAIN_SD * Math.sqrt(fibreSquares(room, cloth, ink));
  const finishSd = cloth.garment.resistantFinish ? RESISTANT_FINISH_SD : 0;
  const depositSd = ink.reachSlope * ink.prior.lnDeposit;
  const variance =
    widening * widening * EPSILON_VARIANCE +
    finishSd * finishSd +
    fibreSd * fibreSd +
    ink.prior.lnBase * ink.prior.lnBase +
    depositSd * depositSd +
    DISCREPANCY_LN_WET_OUT * DISCREPANCY_LN_WET_OUT;
  return { sd: Math.sqrt(variance), fibreSd, widening, finishSd };
}
