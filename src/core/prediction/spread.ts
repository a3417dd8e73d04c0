/** How far a print may land from what is expected, and how likely it lands in the target band (model.md §5). */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import {
  addRamp,
  type BinnedDistribution,
  emptyDistribution,
  errorKernel,
  probabilityBelow,
  quantileFrom,
  readable,
} from "./binnedDistribution.ts";
import { type CellResponse, cellResponse, lightnessAt, scatteredSdL } from "./cellResponse.ts";
import type { TargetBand } from "./inputs.ts";
import { normalCumulativeFast } from "./normalDistribution.ts";
import type { PrintableInk } from "./printableInk.ts";
import type { Workspace } from "./printedColour.ts";
import { surfaceValue, tintPosition, wetPosition } from "./responseSurface.ts";
import {
  MAJOR_MASSES,
  MAJOR_NODES,
  MINOR_NODES,
  MINOR_WEIGHTS,
  SCATTERING_POINTS,
  SCATTERING_WEIGHTS,
} from "./spreadGrid.ts";
import { DISCREPANCY_AB } from "./unknowns.ts";
import { heavyTailed } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

const BIN_COUNT = 128;
/** Bins need not be narrower than this part of what the model misses. */
const BIN_PER_WIDTH = 1 / 3;
/** Scattered light that moves L* by less than this counts as a plain error of L*, without its own points. */
const SMALL_SCATTERING_L = 0.2;
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

/** What the closed surface adds to L* at each of its points. */
function closedShifts(ink: PrintableInk, { closedSlope }: CellResponse): Float64Array {
  if (Math.abs(closedSlope) * ink.closedFractionSd < NEGLIGIBLE_L) return new Float64Array(1);
  return ink.closedFractionAt.map((closed) => closedSlope * (closed - ink.film.closedFraction));
}

/** delta-L* on the grid: scattering point s, minor node m, major node k at [(s * minors + m) * majors + k]. */
interface Grid {
  readonly deltaL: Float64Array;
  readonly minorCount: number;
  /** 1 where nothing scatters, else that of SCATTERING_POINTS. */
  readonly scatteringCount: number;
  /** How surely the hue holds at a minor and major node; null: everywhere. */
  readonly hueHolds: Float64Array | null;
}

/**
 * Y/Yn that scattering point `s` adds where haze and tint are `hazeFactor` and `tintFactor` times what was mixed: haze and
 * black are independent, so their sizes add in squares.
 */
function addedLuminance(response: CellResponse, s: number, hazeFactor: number, tintFactor: number): number {
  const { hazeLuminance, expectedHazeLuminance, blackLuminance } = response;
  const haze = hazeLuminance.length === 0 ? 0 : hazeLuminance[s]! * hazeFactor;
  const black = blackLuminance.length === 0 ? 0 : blackLuminance[s]! * tintFactor;
  return (
    expectedHazeLuminance * (hazeFactor - 1) + Math.sign(SCATTERING_POINTS[s]!) * Math.hypot(haze, black)
  );
}

/** Standard deviation in L* of the light that haze and black scatter, at the centre. */
function scatteringSdL(response: CellResponse): number {
  return Math.hypot(
    scatteredSdL(response, response.hazeLuminance),
    scatteredSdL(response, response.blackLuminance),
  );
}

function gridOver(
  cloth: WettableGarment,
  ink: PrintableInk,
  response: CellResponse,
  axes: StrongAxes,
  hueLimit: number,
): Grid {
  const { range, tintCount, lightness, hueExcess, wetOut } = response;
  const majorCount = MAJOR_NODES.length;
  const minorCount = tintCount === 1 ? 1 : MINOR_NODES.length;
  const scatters = scatteringSdL(response) >= SMALL_SCATTERING_L;
  const scatteringCount = scatters ? SCATTERING_POINTS.length : 1;
  const nodeCount = majorCount * minorCount;
  const deltaL = new Float64Array(nodeCount * scatteringCount);
  const hueHolds = hueExcess === null ? null : new Float64Array(nodeCount);
  const rest = Math.sqrt(1 - axes.correlation * axes.correlation);
  const wetAt = (z: number): number =>
    wetPosition(range, axes.wetOutSd * heavyTailed(z, wetOut.excessKurtosis) + ink.lnReachShift);
  // A film that wets out further is likelier a thicker one, and a thicker one is hazier.
  const hazePerWetSd = (ink.reachSlope * ink.lnDepositSd ** 2) / axes.wetOutSd;
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
      const printedL = surfaceValue(lightness, tintCount, x, y);
      if (scatters) {
        const luminance = luminanceRatioFromLightness(printedL);
        const tintFactor = Math.exp(lnTint);
        const hazeFactor = Math.exp(hazePerWetSd * (majorX === null ? other : major));
        for (let s = 0; s < scatteringCount; s++) {
          const scattered = Math.max(0, luminance + addedLuminance(response, s, hazeFactor, tintFactor));
          deltaL[s * nodeCount + at] = lightnessFromLuminanceRatio(scattered) - cloth.bareLab.L;
        }
      } else deltaL[at] = printedL - cloth.bareLab.L;
      if (hueHolds !== null) {
        const excess = surfaceValue(hueExcess!, tintCount, x, y);
        hueHolds[at] = normalCumulativeFast((hueLimit - excess) / DISCREPANCY_AB);
      }
    }
  }
  return { deltaL, minorCount, scatteringCount, hueHolds };
}

/** The grid as a distribution of delta-L*; with `holds`, each step counts only by the mean of it at its ends. */
function fillFrom(into: BinnedDistribution, grid: Grid, holds: Float64Array | null): BinnedDistribution {
  const { deltaL, minorCount, scatteringCount } = grid;
  const majorCount = MAJOR_NODES.length;
  for (let s = 0; s < scatteringCount; s++) {
    const scatteringWeight = scatteringCount === 1 ? 1 : SCATTERING_WEIGHTS[s]!;
    for (let m = 0; m < minorCount; m++) {
      const weight = scatteringWeight * (minorCount === 1 ? 1 : MINOR_WEIGHTS[m]!);
      for (let k = 0; k + 1 < majorCount; k++) {
        const node = m * majorCount + k;
        const at = s * minorCount * majorCount + node;
        const share = holds === null ? 1 : (holds[node]! + holds[node + 1]!) / 2;
        addRamp(into, deltaL[at]!, deltaL[at + 1]!, share * weight * MAJOR_MASSES[k]!);
      }
    }
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
  const grid = gridOver(cloth, ink, response, strongAxes(ink, response), band.hueLimit);
  const shifts = closedShifts(ink, response);
  const scatteredL = grid.scatteringCount === 1 ? scatteringSdL(response) : 0;
  const width = Math.hypot(response.discrepancyL, scatteredL);
  const margin = 6 * width + shifts.reduce((most, shift) => Math.max(most, Math.abs(shift)), 0);
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const value of grid.deltaL) {
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  const binCount = Math.min(BIN_COUNT, Math.ceil((high - low + 2 * margin) / (BIN_PER_WIDTH * width)));
  const empty = (): BinnedDistribution => emptyDistribution(low - margin, high + margin, binCount);
  const kernel = errorKernel((high - low + 2 * margin) / binCount, width, shifts);
  const all = readable(fillFrom(empty(), grid, null), kernel);
  const inHue = grid.hueHolds === null ? all : readable(fillFrom(empty(), grid, grid.hueHolds), kernel);
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
