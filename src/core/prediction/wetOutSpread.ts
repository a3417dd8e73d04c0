/** How uncertain the wet-out of one cell is: the unknowns that scale it, added up in ln(wet-out). */
import type { PrintableInk } from "./printableInk.ts";
import { type Workspace, wetCloth } from "./printedColour.ts";
import { labOver } from "./printedLab.ts";
import {
  BASE_ON_STYLE_SD,
  COLOURWAY_SD,
  DARK_LIMIT_WIDENING,
  DISCREPANCY_LN_WET_OUT,
  FIBRE_GAIN_SD,
  LOT_SD,
  MILL_SD,
  RESISTANT_FINISH_SD,
  STYLE_SD,
} from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Excess kurtosis of Student's t with 5 degrees of freedom: 6 / (5 - 4). */
const STYLE_EXCESS_KURTOSIS = 6;
const GAIN_STEP = 0.2;

export interface WetOutSpread {
  /** Standard deviation in ln(wet-out) of everything that scales it. */
  readonly sd: number;
  /** Excess kurtosis of the sum: the style's heavy tails diluted by the normal rest. */
  readonly excessKurtosis: number;
  /** Standard deviation that the fibres' gains bring, and the factor that a dark cloth puts on epsilon. */
  readonly fibreSd: number;
  readonly widening: number;
  readonly finishSd: number;
}

/**
 * How much of d ln(wet-out) each fibre's own gain makes: for a solid d_i g_i exp(g_i) over its sum, for a heather by
 * finite differences of L*. One common gain of all fibres counts 1.
 */
function fibreWeights(room: Workspace, cloth: WettableGarment, ink: PrintableInk): Float64Array {
  const { film } = ink;
  const weights = cloth.gains.map((gamma, i) => {
    const gain = gamma * film.wetOutStrength;
    return cloth.dyeShares[i]! * gain * Math.exp(gain);
  });
  if (cloth.dyedFibreKs !== null) {
    wetCloth(room, cloth, film);
    const centre = labOver(room, cloth, film).L;
    for (let i = 0; i < weights.length; i++) {
      wetCloth(room, cloth, film, 0, i, GAIN_STEP);
      weights[i] = labOver(room, cloth, film).L - centre;
    }
  }
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return total === 0 ? weights.fill(0) : weights.map((weight) => weight / total);
}

/** The spread of ln(wet-out) of `ink` on `cloth` under the prior of unknowns.ts; the deposit's part included. */
export function wetOutSpread(room: Workspace, cloth: WettableGarment, ink: PrintableInk): WetOutSpread {
  const widening = cloth.isDark ? DARK_LIMIT_WIDENING : 1;
  let squares = 0;
  for (const weight of fibreWeights(room, cloth, ink)) squares += weight * weight;
  const fibreSd = FIBRE_GAIN_SD * Math.sqrt(squares);
  const finishSd = cloth.garment.resistantFinish ? RESISTANT_FINISH_SD : 0;
  const styleSd = widening * STYLE_SD;
  const sd = Math.hypot(
    styleSd,
    widening * MILL_SD,
    widening * COLOURWAY_SD,
    widening * LOT_SD,
    widening * BASE_ON_STYLE_SD,
    finishSd,
    fibreSd,
    ink.lnBaseSd,
    ink.reachSlope * ink.lnDepositSd,
    DISCREPANCY_LN_WET_OUT,
  );
  return { sd, excessKurtosis: STYLE_EXCESS_KURTOSIS * (styleSd / sd) ** 4, fibreSd, widening, finishSd };
}

/**
 * Standard quantile of the sum from the normal one, corrected for its excess kurtosis (Cornish & Fisher 1937):
 * z + (z^3 - 3 z) kurtosis / 24. Valid for the small kurtosis of a style's tail among the rest.
 */
export function heavyTailed(z: number, excessKurtosis: number): number {
  return z + ((z * z * z - 3 * z) * excessKurtosis) / 24;
}
