/** What the spread of a cell is made of: the standard deviation of delta-L* that each unknown brings at the centre. */
import type { CellBelief } from "./cellBelief.ts";
import { type CellResponse, lightnessAt, scatteredSdL } from "./cellResponse.ts";
import type { SpreadSource } from "./prediction.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { CellSpread } from "./spread.ts";
import {
  BASE_ON_STYLE_SD,
  COLOURWAY_SD,
  DISCREPANCY_LN_WET_OUT,
  LOT_SD,
  MILL_SD,
  STYLE_SD,
} from "./unknowns.ts";

const STEP = 0.1;
/** Sources that move L* by less than this are not worth a line. */
const SMALLEST_SD = 0.005;

/** Sources of a spread before any test print, largest first. */
export function spreadSources(
  ink: PrintableInk,
  response: CellResponse,
): readonly { readonly source: SpreadSource; readonly sdDeltaL: number }[] {
  const slope = (lnWetOut: number, lnTint: number): number =>
    (lightnessAt(response, lnWetOut, lnTint) - lightnessAt(response, -lnWetOut, -lnTint)) / (2 * STEP);
  const perWetOut = slope(STEP, 0);
  const perTint = ink.hasTint ? slope(0, STEP) : 0;
  const { prior } = response.doubt;
  if (prior === null) return [];
  const { widening, fibreSd, finishSd } = prior;
  const wet = (sd: number): number => Math.abs(perWetOut) * sd;
  const bySource: readonly (readonly [SpreadSource, number])[] = [
    ["style", wet(widening * STYLE_SD)],
    ["mill", wet(widening * MILL_SD)],
    ["colourway", wet(widening * COLOURWAY_SD)],
    ["lot", wet(widening * LOT_SD)],
    ["base-on-style", wet(widening * BASE_ON_STYLE_SD)],
    ["finish", wet(finishSd)],
    ["fibre-gain", wet(fibreSd)],
    ["base-strength", wet(ink.prior.lnBase)],
    ["haze", scatteredSdL(response, response.hazeLuminance, ink.prior.lnHaze)],
    ["closed-surface", Math.abs(response.closedSlope) * ink.prior.closedFraction],
    ["colourant-strength", Math.abs(perTint) * ink.prior.lnTint],
    ["black-scattering", scatteredSdL(response, response.blackLuminance, ink.prior.lnBlackScattering)],
    ["deposit", Math.abs(perWetOut * ink.reachSlope + perTint) * ink.prior.lnDeposit],
    ["model", Math.hypot(response.discrepancyL, wet(DISCREPANCY_LN_WET_OUT))],
  ];
  return bySource
    .filter(([, sdDeltaL]) => sdDeltaL >= SMALLEST_SD)
    .map(([source, sdDeltaL]) => ({ source, sdDeltaL }))
    .sort((one, other) => other.sdDeltaL - one.sdDeltaL);
}

/** Standard deviations between the 5 and the 95 % point of a normal. */
const BETWEEN_ENDS = 2 * 1.6448536269514722;

/** Sources of the spread that `belief` leaves, largest first: their shares of its variance, as standard deviations. */
export function believedSources(
  belief: CellBelief,
  { deltaL5, deltaL95 }: CellSpread,
): readonly { readonly source: SpreadSource; readonly sdDeltaL: number }[] {
  const sd = (deltaL95 - deltaL5) / BETWEEN_ENDS;
  return belief.bySource
    .map(({ source, share }) => ({ source, sdDeltaL: Math.sqrt(Math.max(0, share)) * sd }))
    .filter(({ sdDeltaL }) => sdDeltaL >= SMALLEST_SD)
    .sort((one, other) => other.sdDeltaL - one.sdDeltaL);
}
