/** delta-L* of one cell on the fixed grid, and how surely the hue holds on it. */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import { type CellResponse, lightnessAt, scatteredSdL } from "./cellResponse.ts";
import { normalCumulativeFast } from "./normalDistribution.ts";
import type { PrintableInk } from "./printableInk.ts";
import {
  cutAtTint,
  cutAtWetOut,
  polynomialValue,
  tintPosition,
  WET_NODE_COUNT,
  wetPosition,
} from "./responseSurface.ts";
import {
  CENTRE_ONLY,
  MAJOR_NODES,
  MINOR,
  MINOR_AND_SCATTERING,
  MINOR_LINE,
  SCATTERING_LINE,
  type SideRule,
} from "./spreadGrid.ts";
import type { SpreadRoom } from "./spreadRoom.ts";
import { heavyTailed } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Scattered light that moves L* by less than this, beside a tint or in a clear, counts as a plain error of L*. */
const SMALL_SCATTERING_TINTED_L = 0.2;
const SMALL_SCATTERING_CLEAR_L = 0.02;
/** So does the weaker of the two strong unknowns where it moves L* by less than this part of what scattered light does. */
const SMALL_MINOR_PART = 1 / 3;

/** The two strong unknowns as functions of independent standard normals, the one that moves L* more first. */
export interface StrongAxes {
  readonly wetOutIsMajor: boolean;
  readonly wetOutSd: number;
  readonly tintSd: number;
  /** Standard deviation in L*, at the centre, of the one that moves it less. */
  readonly minorSdL: number;
  /** Through the deposit: a thicker film wets out further and holds more tint. */
  readonly correlation: number;
}

export function strongAxes(ink: PrintableInk, response: CellResponse): StrongAxes {
  const wetOutSd = response.wetOut.sd;
  if (!ink.hasTint) return { wetOutIsMajor: true, wetOutSd, tintSd: 0, minorSdL: 0, correlation: 0 };
  const tintSd = Math.sqrt(ink.lnTintSd ** 2 + ink.lnDepositSd ** 2);
  const correlation = (ink.reachSlope * ink.lnDepositSd ** 2) / (wetOutSd * tintSd);
  const swing = (lnWetOut: number, lnTint: number): number =>
    Math.abs(lightnessAt(response, lnWetOut, lnTint) - lightnessAt(response, -lnWetOut, -lnTint));
  const wetOutSwing = swing(wetOutSd, 0);
  const tintSwing = swing(0, tintSd);
  const minorSdL = Math.min(wetOutSwing, tintSwing) / 2;
  return { wetOutIsMajor: wetOutSwing >= tintSwing, wetOutSd, tintSd, minorSdL, correlation };
}

export interface CellGrid {
  /** Side point p and major node k at [p * MAJOR_NODES.length + k]; what lies beyond `nodeCount` is old. */
  readonly deltaL: Float64Array;
  readonly nodeCount: number;
  readonly side: SideRule;
  /** How surely the hue holds at the same nodes; null: everywhere. */
  readonly hueHolds: Float64Array | null;
  /** Standard deviation in L* of what was too weak for points of its own. */
  readonly restSdL: number;
}

/** ln haze per standard deviation of each axis (further wet-out or more tint is likelier a thicker film), and the rest. */
function hazeOnAxes(ink: PrintableInk, axes: StrongAxes): { major: number; minor: number; restSd: number } {
  const variance = ink.lnDepositSd ** 2;
  const perWetOut = (ink.reachSlope * variance) / axes.wetOutSd;
  const perTint = ink.hasTint ? variance / axes.tintSd : 0;
  const major = axes.wetOutIsMajor ? perWetOut : perTint;
  const other = axes.wetOutIsMajor ? perTint : perWetOut;
  const minor = ink.hasTint ? (other - axes.correlation * major) / Math.sqrt(1 - axes.correlation ** 2) : 0;
  const depositLeft = Math.max(0, variance - major * major - minor * minor);
  return { major, minor, restSd: Math.sqrt(ink.lnHazeSd ** 2 + depositLeft) };
}

function sideRule(ink: PrintableInk, scatteringSdL: number, minorSdL: number): SideRule {
  if (!ink.hasTint) return scatteringSdL >= SMALL_SCATTERING_CLEAR_L ? SCATTERING_LINE : CENTRE_ONLY;
  if (scatteringSdL < SMALL_SCATTERING_TINTED_L) return MINOR_LINE;
  return minorSdL < SMALL_MINOR_PART * scatteringSdL ? SCATTERING_LINE : MINOR_AND_SCATTERING;
}

/** A surface cut along the major axis; room for both, filled anew at each major node. */
const lightnessCut = new Float64Array(WET_NODE_COUNT);
const hueCut = new Float64Array(WET_NODE_COUNT);
/** What the side points make of haze, tint and scattered light; room for the largest rule. */
const LARGEST_RULE = MINOR_AND_SCATTERING.weights.length;
const hazeOnMinor = new Float64Array(LARGEST_RULE);
const tintOnMinor = new Float64Array(LARGEST_RULE);
const lightRatio = new Float64Array(LARGEST_RULE);

/** The light that haze and the black scatter together, Y/Yn. */
interface ScatteredLight {
  /** Mean of what the haze, and of what the black, scatters where film and tint are as meant. */
  readonly meanHaze: number;
  readonly meanBlack: number;
  /** Standard deviation of ln of the sum. */
  readonly lnSd: number;
}

/**
 * Haze and the black's scattering are log-normal and independent; their sum is taken as the log-normal of its mean and
 * variance (Fenton 1960), which is exact where only one of them is there.
 */
function scatteredLight(ink: PrintableInk, response: CellResponse, lnHazeSd: number): ScatteredLight {
  const lnBlackSd = ink.lnBlackScatteringSd;
  const meanHaze = response.hazeLuminance * Math.exp((lnHazeSd * lnHazeSd) / 2);
  const meanBlack = response.blackLuminance * Math.exp((lnBlackSd * lnBlackSd) / 2);
  const mean = meanHaze + meanBlack;
  const variance =
    meanHaze * meanHaze * Math.expm1(lnHazeSd * lnHazeSd) +
    meanBlack * meanBlack * Math.expm1(lnBlackSd * lnBlackSd);
  const lnSd = Math.sqrt(Math.log1p(variance / (mean * mean)));
  // On light cloth the two may pull against each other; a sum is never less certain than its less certain part.
  return { meanHaze, meanBlack, lnSd: Math.min(lnSd, Math.max(lnHazeSd, lnBlackSd)) };
}

/** How far L* lies, on average over the minor unknown, from L* at its centre. */
function minorShiftL(ink: PrintableInk, response: CellResponse, axes: StrongAxes): number {
  const { points, weights } = MINOR;
  let mean = 0;
  for (let m = 0; m < points.length; m++) {
    const z = points[m]!;
    const lnWetOut = axes.wetOutSd * heavyTailed(z, response.wetOut.excessKurtosis) + ink.lnReachShift;
    mean +=
      weights[m]! *
      (axes.wetOutIsMajor ? lightnessAt(response, 0, axes.tintSd * z) : lightnessAt(response, lnWetOut, 0));
  }
  const centre = axes.wetOutIsMajor
    ? lightnessAt(response, 0, 0)
    : lightnessAt(response, ink.lnReachShift, 0);
  return mean - centre;
}

/** Reads the grid of `ink` on `cloth` off its response surface into `room`; the light that haze and black scatter is added in Y/Yn. */
export function cellGrid(
  room: SpreadRoom,
  cloth: WettableGarment,
  ink: PrintableInk,
  response: CellResponse,
  axes: StrongAxes,
): CellGrid {
  const { range, tintCount, lightness, hueMargin, wetOut, hazeLuminance, blackLuminance } = response;
  const { wetOutIsMajor, wetOutSd, tintSd, correlation } = axes;
  const hazeSdL = scatteredSdL(response, hazeLuminance, Math.hypot(ink.lnHazeSd, ink.lnDepositSd));
  const blackSdL = scatteredSdL(response, blackLuminance, ink.lnBlackScatteringSd);
  const scatteringSdL = Math.sqrt(hazeSdL * hazeSdL + blackSdL * blackSdL);
  const side = sideRule(ink, scatteringSdL, axes.minorSdL);
  const scatters = side === SCATTERING_LINE || side === MINOR_AND_SCATTERING;
  const ln = hazeOnAxes(ink, axes);
  const light = scatteredLight(ink, response, ln.restSd);
  const sideCount = side.weights.length;
  const majorCount = MAJOR_NODES.length;
  const { deltaL } = room;
  const hueHolds = hueMargin === null ? null : room.hueHolds;
  const cutLength = wetOutIsMajor ? tintCount : WET_NODE_COUNT;
  const rest = Math.sqrt(1 - correlation * correlation);
  const minorLeftOut = ink.hasTint && side === SCATTERING_LINE;
  const zeroL = cloth.bareLab.L - (minorLeftOut ? minorShiftL(ink, response, axes) : 0);
  const lnTint = wetOutIsMajor
    ? { major: tintSd * correlation, minor: tintSd * rest }
    : { major: tintSd, minor: 0 };
  if (scatters) {
    for (let p = 0; p < sideCount; p++) {
      hazeOnMinor[p] = Math.exp(ln.minor * side.minor[p]!);
      tintOnMinor[p] = Math.exp(lnTint.minor * side.minor[p]!);
      lightRatio[p] = Math.exp(light.lnSd * (side.scattering[p]! - light.lnSd / 2));
    }
  }
  for (let k = 0; k < majorCount; k++) {
    const major = MAJOR_NODES[k]!;
    if (wetOutIsMajor) {
      const x = wetPosition(range, wetOutSd * heavyTailed(major, wetOut.excessKurtosis) + ink.lnReachShift);
      cutAtWetOut(lightnessCut, lightness, tintCount, x);
      if (hueMargin !== null) cutAtWetOut(hueCut, hueMargin, tintCount, x);
    } else {
      const y = tintPosition(range, tintSd * major);
      cutAtTint(lightnessCut, lightness, tintCount, y);
      if (hueMargin !== null) cutAtTint(hueCut, hueMargin, tintCount, y);
    }
    const hazeOnMajor = scatters ? Math.exp(ln.major * major) : 1;
    const tintOnMajor = scatters ? Math.exp(lnTint.major * major) : 1;
    for (let p = 0; p < sideCount; p++) {
      const minor = side.minor[p]!;
      const other = correlation * major + rest * minor;
      const position = wetOutIsMajor
        ? tintPosition(range, tintSd * other)
        : wetPosition(range, wetOutSd * heavyTailed(other, wetOut.excessKurtosis) + ink.lnReachShift);
      let printedL = polynomialValue(lightnessCut, cutLength, position);
      if (scatters) {
        const hazeFactor = hazeOnMajor * hazeOnMinor[p]!;
        const tintFactor = tintOnMajor * tintOnMinor[p]!;
        const mean = light.meanHaze * hazeFactor + light.meanBlack * tintFactor;
        const added = mean * lightRatio[p]! - hazeLuminance - blackLuminance * tintFactor;
        printedL = lightnessFromLuminanceRatio(Math.max(0, luminanceRatioFromLightness(printedL) + added));
      }
      const at = p * majorCount + k;
      deltaL[at] = printedL - zeroL;
      if (hueHolds !== null) {
        hueHolds[at] = normalCumulativeFast(polynomialValue(hueCut, cutLength, position));
      }
    }
  }
  const restSdL = scatters ? (minorLeftOut ? axes.minorSdL : 0) : scatteringSdL;
  return { deltaL, nodeCount: majorCount * sideCount, side, hueHolds, restSdL };
}
