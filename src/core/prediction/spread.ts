/** How far a print may land from what is expected, and how likely it lands in the target band (model.md §5). */
import {
  addRamp,
  type BinnedDistribution,
  emptyDistribution,
  errorKernel,
  probabilityBelow,
  quantileFrom,
  readable,
} from "./binnedDistribution.ts";
import { type CellResponse, cellResponse, lightnessAt } from "./cellResponse.ts";
import type { TargetBand } from "./inputs.ts";
import { normalCumulativeFast } from "./normalDistribution.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import { surfaceValue, tintPosition, wetPosition } from "./responseSurface.ts";
import {
  BLACK_SCATTERING_WEIGHTS,
  MAJOR_MASSES,
  MAJOR_NODES,
  MINOR_NODES,
  MINOR_WEIGHTS,
} from "./spreadGrid.ts";
import { DISCREPANCY_AB } from "./unknowns.ts";
import { heavyTailed } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

const BIN_COUNT = 128;
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

/** The two strong unknowns as functions of independent standard normals, the one that moves L* more first. */
interface StrongAxes {
  readonly wetOutIsMajor: boolean;
  readonly wetOutSd: number;
  readonly tintSd: number;
  /** Through the deposit: a thicker film wets out further and holds more tint. */
  readonly correlation: number;
}

/** Slopes of L* at the centre of the surface, per standard deviation of each axis. */
export function strongAxes(ink: PrintableInk, response: CellResponse): StrongAxes {
  const wetOutSd = response.wetOut.sd;
  const tintSd = ink.hasTint ? Math.hypot(ink.lnTintSd, ink.lnDepositSd) : 0;
  const correlation = ink.hasTint ? (ink.reachSlope * ink.lnDepositSd ** 2) / (wetOutSd * tintSd) : 0;
  const swing = (lnWetOut: number, lnTint: number): number =>
    Math.abs(lightnessAt(response, lnWetOut, lnTint) - lightnessAt(response, -lnWetOut, -lnTint));
  return { wetOutIsMajor: swing(wetOutSd, 0) >= swing(0, tintSd), wetOutSd, tintSd, correlation };
}

/** What haze and closed surface add to L* at each of their points. */
function weakShifts(ink: PrintableInk, response: CellResponse): Float64Array {
  const { closedSlope, hazeSlope } = response;
  if (Math.abs(closedSlope) * ink.closedFractionSd + Math.abs(hazeSlope) < NEGLIGIBLE_L) {
    return new Float64Array(1);
  }
  return ink.closedFractionAt.map(
    (closed, k) =>
      closedSlope * (closed - ink.film.closedFraction) +
      (ink.haze === null ? 0 : hazeSlope * ink.haze.stepsAt[k]!),
  );
}

/** delta-L* on the grid, major node k of minor node m at [m * MAJOR_NODES.length + k]. */
interface Grid {
  readonly deltaL: Float64Array;
  /** What one step of the black's own scattering adds there; null where there is none. */
  readonly blackStep: Float64Array | null;
  /** How surely the hue holds there; null: everywhere. */
  readonly hueHolds: Float64Array | null;
}

function gridOver(
  cloth: WettableGarment,
  ink: PrintableInk,
  response: CellResponse,
  axes: StrongAxes,
  hueLimit: number,
): Grid {
  const { range, tintCount, lightness, hueExcess, wetOut, blackSlope } = response;
  const majorCount = MAJOR_NODES.length;
  const minorCount = tintCount === 1 ? 1 : MINOR_NODES.length;
  const deltaL = new Float64Array(majorCount * minorCount);
  const blackStep = Math.abs(blackSlope) < NEGLIGIBLE_L ? null : new Float64Array(deltaL.length);
  const hueHolds = hueExcess === null ? null : new Float64Array(deltaL.length);
  const rest = Math.sqrt(1 - axes.correlation * axes.correlation);
  const wetAt = (z: number): number =>
    wetPosition(range, axes.wetOutSd * heavyTailed(z, wetOut.excessKurtosis) + ink.lnReachShift);
  const majorX = axes.wetOutIsMajor ? MAJOR_NODES.map(wetAt) : null;
  for (let m = 0; m < minorCount; m++) {
    const minor = minorCount === 1 ? 0 : MINOR_NODES[m]!;
    for (let k = 0; k < majorCount; k++) {
      const major = MAJOR_NODES[k]!;
      const other = axes.correlation * major + rest * minor;
      const lnTint = axes.tintSd * (majorX === null ? major : other);
      const x = majorX === null ? wetAt(other) : majorX[k]!;
      const y = tintPosition(range, lnTint);
      const at = m * majorCount + k;
      deltaL[at] = surfaceValue(lightness, tintCount, x, y) - cloth.bareLab.L;
      if (blackStep !== null) blackStep[at] = blackSlope * Math.exp(lnTint);
      if (hueHolds !== null) {
        const excess = surfaceValue(hueExcess!, tintCount, x, y);
        hueHolds[at] = normalCumulativeFast((hueLimit - excess) / DISCREPANCY_AB);
      }
    }
  }
  return { deltaL, blackStep, hueHolds };
}

/** The grid as a distribution of delta-L*; with `weights`, each step counts only by the mean weight at its ends. */
function fillFrom(
  into: BinnedDistribution,
  { deltaL, blackStep }: Grid,
  ink: PrintableInk,
  weights: Float64Array | null,
): BinnedDistribution {
  const majorCount = MAJOR_NODES.length;
  const minorCount = deltaL.length / majorCount;
  const blackSteps = ink.blackScattering?.stepsAt;
  for (let m = 0; m < minorCount; m++) {
    const minorWeight = minorCount === 1 ? 1 : MINOR_WEIGHTS[m]!;
    for (let k = 0; k + 1 < majorCount; k++) {
      const at = m * majorCount + k;
      const share = weights === null ? 1 : (weights[at]! + weights[at + 1]!) / 2;
      const probability = share * minorWeight * MAJOR_MASSES[k]!;
      if (blackStep === null || blackSteps === undefined) {
        addRamp(into, deltaL[at]!, deltaL[at + 1]!, probability);
        continue;
      }
      for (let s = 0; s < blackSteps.length; s++) {
        const steps = blackSteps[s]!;
        addRamp(
          into,
          deltaL[at]! + steps * blackStep[at]!,
          deltaL[at + 1]! + steps * blackStep[at + 1]!,
          probability * BLACK_SCATTERING_WEIGHTS[s]!,
        );
      }
    }
  }
  return into;
}

/**
 * Spread of `ink` on `cloth`. Without random sampling: a fixed grid over wet-out and tint, made a density by joining
 * its nodes, widened by the weak unknowns (haze, closed surface, the black's scattering) and by what the model misses.
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
  const grid = gridOver(cloth, ink, response, strongAxes(ink, response), band.hueLimit);
  const shifts = weakShifts(ink, response);
  const width = response.discrepancyL;
  let margin = 6 * width + shifts.reduce((most, shift) => Math.max(most, Math.abs(shift)), 0);
  if (grid.blackStep !== null) {
    for (const step of grid.blackStep) {
      margin = Math.max(margin, 6 * width + Math.abs(step) * ink.blackScattering!.stepsAt[2]!);
    }
  }
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of grid.deltaL) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const binCount = Math.min(BIN_COUNT, Math.ceil((high - low + 2 * margin) / (BIN_PER_WIDTH * width)));
  const empty = (): BinnedDistribution => emptyDistribution(low - margin, high + margin, binCount);
  const kernel = errorKernel((high - low + 2 * margin) / binCount, width, shifts);
  const all = readable(fillFrom(empty(), grid, ink, null), kernel);
  const inHue = grid.hueHolds === null ? all : readable(fillFrom(empty(), grid, ink, grid.hueHolds), kernel);
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
