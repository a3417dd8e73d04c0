/** How far a reading may be off from what the model expects of the very same cell: instrument, cloth, and the model itself. */

import {
  DEPOSIT_SD_PRINT_TO_PRINT,
  DEPOSIT_SD_WEIGHED,
  DISCREPANCY_AB,
  DISCREPANCY_DELTA_L,
  DISCREPANCY_LN_TINT,
  DISCREPANCY_LN_WET_OUT,
} from "../prediction/unknowns.ts";
import { type Cell, NONE } from "./cell.ts";
import type { CellSlopes } from "./cellSlopes.ts";
import type { PairReading } from "./record.ts";
import { smallArray, smallCopy } from "./smallArrays.ts";

/** Piece-to-piece standard deviation in epsilon (model.md §6; invented default). */
export const PIECE_TO_PIECE_SD = 0.05;
/**
 * Standard deviation of one pair difference in L* where nobody has said it: solid cloth, and heathers. Common practice,
 * no source: 0.2 to 0.4 and 0.8 (design notes, trade.md §2).
 */
export const PAIR_SD_SOLID_L = 0.3;
export const PAIR_SD_HEATHER_L = 0.8;
/** What is believed beforehand counts as this many readings when a standard deviation is typed. Invented default. */
const PRIOR_PAIR_DEGREES_OF_FREEDOM = 4;
/** A pair difference in a* or b* is off by this part of what it is off in L*. Invented default. */
export const AB_PER_L = 0.6;

/** Whether the cloth is mixed of dyed and undyed fibres. */
function isHeather(cell: Cell): boolean {
  return cell.cloth.dyed.some((dyed) => !dyed);
}

/**
 * Standard deviation of one pair difference in L*: the typed one, drawn towards what is usual as a scaled inverse
 * chi-square prior draws it (Gelman et al., Bayesian Data Analysis, 3rd ed., §2.6; from memory), for few pairs say little.
 */
export function pairSdL(cell: Cell, reading: PairReading): number {
  const usual = isHeather(cell) ? PAIR_SD_HEATHER_L : PAIR_SD_SOLID_L;
  const { sdPairDeltaL, pairCount } = reading;
  if (sdPairDeltaL === null || pairCount < 2) return usual;
  const freedom = pairCount - 1;
  return Math.sqrt(
    (PRIOR_PAIR_DEGREES_OF_FREEDOM * usual ** 2 + freedom * sdPairDeltaL ** 2) /
      (PRIOR_PAIR_DEGREES_OF_FREEDOM + freedom),
  );
}

function addOuter(into: Float64Array, column: readonly number[], variance: number): void {
  for (let i = 0; i < 3; i++) {
    for (let j = 0; j < 3; j++) into[i * 3 + j]! += variance * column[i]! * column[j]!;
  }
}

/** Covariance (3 x 3) of what separates one print of a cell from the model at its unknowns, before anyone reads it. */
export function printNoise(cell: Cell, slopes: CellSlopes, pieceCount: number): Float64Array {
  const doubt = slopes.doubt();
  const noise = doubt === null ? smallArray(9) : smallCopy(doubt);
  noise[0]! += DISCREPANCY_DELTA_L ** 2;
  noise[4]! += DISCREPANCY_AB ** 2;
  noise[8]! += DISCREPANCY_AB ** 2;
  // Half the gap between a heather's two models is model spread (model.md §3), in hue as in lightness.
  addOuter(noise, slopes.heatherGap, 1 / 4);
  const darkMiss = slopes.darkMiss();
  if (darkMiss !== null) addOuter(noise, darkMiss, 1);
  addOuter(noise, slopes.wetOut, DISCREPANCY_LN_WET_OUT ** 2 + PIECE_TO_PIECE_SD ** 2 / pieceCount);
  addOuter(noise, slopes.tint, DISCREPANCY_LN_TINT ** 2);
  const ownDeposit = cell.depositAt === NONE ? DEPOSIT_SD_WEIGHED : DEPOSIT_SD_PRINT_TO_PRINT;
  addOuter(noise, slopes.deposit, ownDeposit ** 2);
  return noise;
}

/** `printNoise` and the reading's own, for the change of L*, a* and b*. */
export function pairNoise(cell: Cell, slopes: CellSlopes, reading: PairReading): Float64Array {
  const noise = printNoise(cell, slopes, reading.pieceCount);
  const variance = pairSdL(cell, reading) ** 2 / reading.pairCount;
  noise[0]! += variance;
  noise[4]! += AB_PER_L ** 2 * variance;
  noise[8]! += AB_PER_L ** 2 * variance;
  return noise;
}
