/** Room that a spread is computed in, kept from cell to cell: arrays this size cost more to make than to fill. */
import { type BinRoom, binRoom } from "./binnedDistribution.ts";
import { MAJOR_NODES, MINOR_AND_SCATTERING } from "./spreadGrid.ts";

/** Bins of a spread at most. */
export const BIN_COUNT = 128;

const LARGEST_GRID = MAJOR_NODES.length * MINOR_AND_SCATTERING.weights.length;

export interface SpreadRoom {
  readonly deltaL: Float64Array;
  readonly hueHolds: Float64Array;
  /** For all prints, and for those whose hue holds. */
  readonly all: BinRoom;
  readonly inHue: BinRoom;
}

export function spreadRoom(): SpreadRoom {
  return {
    deltaL: new Float64Array(LARGEST_GRID),
    hueHolds: new Float64Array(LARGEST_GRID),
    all: binRoom(BIN_COUNT),
    inHue: binRoom(BIN_COUNT),
  };
}
