/** What the spread of a cell is made of: the standard deviation of delta-L* that each unknown brings at the centre. */
import { type CellResponse, lightnessAt, scatteredSdL } from "./cellResponse.ts";
import type { SpreadSource } from "./prediction.ts";
import type { PrintableInk } from "./printableInk.ts";
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

/** Sources of the spread, largest first. */
export function spreadSources(
  ink: PrintableInk,
  response: CellResponse,
): readonly { readonly source: SpreadSource; readonly sdDeltaL: number }[] {
  const slope = (lnWetOut: number, lnTint: number): number =>
    (lightnessAt(response, lnWetOut, lnTint) - lightnessAt(response, -lnWetOut, -lnTint)) / (2 * STEP);
  const perWetOut = slope(STEP, 0);
  const perTint = ink.hasTint ? slope(0, STEP) : 0;
  const { widening, fibreSd, finishSd } = response.wetOut;
  const wet = (sd: number): number => Math.abs(perWetOut) * sd;
  const bySource: readonly (readonly [SpreadSource, number])[] = [
    ["style", wet(widening * STYLE_SD)],
    ["mill", wet(widening * MILL_SD)],
    ["colourway", wet(widening * COLOURWAY_SD)],
    ["lot", wet(widening * LOT_SD)],
    ["base-on-style", wet(widening * BASE_ON_STYLE_SD)],
    ["finish", wet(finishSd)],
    ["fibre-gain", wet(fibreSd)],
    ["base-strength", wet(ink.lnBaseSd)],
    ["haze", scatteredSdL(response, response.hazeLuminance, ink.lnHazeSd)],
    ["closed-surface", Math.abs(response.closedSlope) * ink.closedFractionSd],
    ["colourant-strength", Math.abs(perTint) * ink.lnTintSd],
    ["black-scattering", scatteredSdL(response, response.blackLuminance, ink.lnBlackScatteringSd)],
    ["deposit", Math.abs(perWetOut * ink.reachSlope + perTint) * ink.lnDepositSd],
    ["model", Math.hypot(response.discrepancyL, wet(DISCREPANCY_LN_WET_OUT))],
  ];
  return bySource
    .filter(([, sdDeltaL]) => sdDeltaL >= SMALLEST_SD)
    .map(([source, sdDeltaL]) => ({ source, sdDeltaL }))
    .sort((one, other) => other.sdDeltaL - one.sdDeltaL);
}
