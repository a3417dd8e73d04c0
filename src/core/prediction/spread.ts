/** How far a print may land from what is expected, and how likely it lands in the target band (model.md §5). */
import {
  addCurve,
  type BinnedDistribution,
  type BinRoom,
  emptyDistribution,
  errorKernel,
  probabilityBelow,
  quantileFrom,
  readable,
} from "./binnedDistribution.ts";
import { type CellGrid, cellGrid, strongAxes } from "./cellGrid.ts";
import { type CellResponse, cellResponse } from "./cellResponse.ts";
import type { TargetBand } from "./inputs.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import { MAJOR_MASSES, MAJOR_NODES } from "./spreadGrid.ts";
import { BIN_COUNT } from "./spreadRoom.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Bins need not be narrower than this part of what the model misses. */
const BIN_PER_WIDTH = 1 / 3;
/** A weak unknown that moves L* by less than this is left out. */
const NEGLIGIBLE_L = 1e-3;

/** The spread of one cell in delta-L*, and how L* answers to what it is made of. */
export interface CellSpread {
  readonly chanceInBand: number;
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
  readonly response: CellResponse;
}

/** What the closed surface adds to L* at each of its points. */
function closedShifts(ink: PrintableInk, { closedSlope }: CellResponse): Float64Array {
  if (Math.abs(closedSlope) * ink.closedFractionSd < NEGLIGIBLE_L) return new Float64Array(1);
  return ink.closedFractionAt.map((closed) => closedSlope * (closed - ink.film.closedFraction));
}

/** The grid as a distribution of delta-L*; with `holds`, each step counts only by the mean of it at its ends. */
function fillFrom(into: BinnedDistribution, grid: CellGrid, holds: Float64Array | null): BinnedDistribution {
  const { weights } = grid.side;
  for (let p = 0; p < weights.length; p++) {
    addCurve(into, grid.deltaL, p * MAJOR_NODES.length, MAJOR_MASSES, weights[p]!, holds);
  }
  return into;
}

/**
 * Spread of `ink` on `cloth`. Without random sampling: a fixed grid over wet-out and tint, made a density by joining
 * its nodes; light that haze or the black scatters is added in luminance, the closed surface and what the model misses
 * as an error in L*.
 * Where the hue shift exceeds that of the clear alone by more than the limit a print does not count as in band; like L*,
 * the hue carries the model's own discrepancy, so that the chance does not jump while a tint is dragged.
 */
export function spreadOf(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  band: TargetBand,
): CellSpread {
  const response = cellResponse(room, cloth, ink, band.hueLimit);
  const grid = cellGrid(room.spread, cloth, ink, response, strongAxes(ink, response));
  const shifts = closedShifts(ink, response);
  const width = Math.hypot(response.discrepancyL, grid.restSdL);
  const margin = 6 * width + shifts.reduce((most, shift) => Math.max(most, Math.abs(shift)), 0);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < grid.nodeCount; i++) {
    const value = grid.deltaL[i]!;
    if (value < low) low = value;
    if (value > high) high = value;
  }
  const binCount = Math.min(BIN_COUNT, Math.ceil((high - low + 2 * margin) / (BIN_PER_WIDTH * width)));
  const empty = (bins: BinRoom): BinnedDistribution =>
    emptyDistribution(low - margin, high + margin, binCount, bins);
  const kernel = errorKernel((high - low + 2 * margin) / binCount, width, shifts);
  const all = readable(fillFrom(empty(room.spread.all), grid, null), kernel);
  const inHue =
    grid.hueHolds === null ? all : readable(fillFrom(empty(room.spread.inHue), grid, grid.hueHolds), kernel);
  return {
    chanceInBand:
      probabilityBelow(inHue, band.deltaL + band.tolerance) -
      probabilityBelow(inHue, band.deltaL - band.tolerance),
    deltaL5: quantileFrom(all, 0.05),
    deltaL50: quantileFrom(all, 0.5),
    deltaL95: quantileFrom(all, 0.95),
    response,
  };
}
