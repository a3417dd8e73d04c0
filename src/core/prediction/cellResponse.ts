/** How L* and hue of one cell answer to the unknowns: the exact model at a few nodes, one step along each weak unknown. */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import { chroma } from "../colorimetry/difference.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { type CellDoubt, priorDoubt } from "./cellDoubt.ts";
import type { PrintableInk } from "./printableInk.ts";
import { type Workspace, wetAsSolid, wetCloth, wetClothBy } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { labsOver, lightnessOver } from "./printedLab.ts";
import {
  axisPosition,
  type FactorAxis,
  fitSurface,
  surfaceValue,
  TINT_NODE_COUNT,
  tintAxis,
  WET_NODE_COUNT,
  wetAxis,
  wetOutAtNode,
} from "./responseSurface.ts";
import { DISCREPANCY_AB, DISCREPANCY_DELTA_L } from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Hue shifts this many discrepancy widths inside the limit cannot break it. */
const HUE_REACH = 4;
const CLOSED_STEP = 0.02;
/** On grey cloth no hue shifts and on a grey print any error turns it: the width of the step is held within these. */
const SMALLEST_HUE_RATIO = 0.1;
const LARGEST_HUE_RATIO = 3;

/** How L* of one cell answers to the unknowns: a surface for the two strong ones, a slope for each weak one. */
export interface CellResponse {
  readonly doubt: CellDoubt;
  readonly wetAxis: FactorAxis;
  readonly tintAxis: FactorAxis;
  readonly tintCount: number;
  /** Fitted surface of L*. */
  readonly lightness: Float64Array;
  /** Fitted surface of how far the hue shift lies inside its limit, in widths of what the model itself misses; null where it cannot break it. */
  readonly hueMargin: Float64Array | null;
  /** dL* per unit of closed fraction. */
  readonly closedSlope: number;
  /** What the expected haze, and the expected scattering of the black, add to Y/Yn; 0 where there is none. */
  readonly hazeLuminance: number;
  readonly blackLuminance: number;
  /** L* of the expected print. */
  readonly centreL: number;
  /** Width of what the model itself misses, in L*. */
  readonly discrepancyL: number;
}

/**
 * |dH*ab| from `bare`, of chroma `bareChroma`, to a print of `printChroma`, without an angle: sqrt(2 (C1 C2 - a1 a2 -
 * b1 b2)), the product form of the same difference.
 */
function hueShift(bare: Lab, bareChroma: number, a: number, b: number, printChroma: number): number {
  return Math.sqrt(Math.max(0, 2 * (bareChroma * printChroma - bare.a * a - bare.b * b)));
}

/**
 * What the model misses of a* and b*, seen as a hue difference: an error across the hue of the print turns it by
 * error / C2, and dH*ab = 2 sqrt(C1 C2) sin(dh / 2), so it counts sqrt(C1 / C2).
 */
function hueDiscrepancy(bareChroma: number, printChroma: number): number {
  const ratio = printChroma === 0 ? 1 : Math.sqrt(bareChroma / printChroma);
  return DISCREPANCY_AB * Math.min(LARGEST_HUE_RATIO, Math.max(SMALLEST_HUE_RATIO, ratio));
}

/** L* of the other of a heather's two models, the dye share alone; half their gap is model spread (model.md §3). */
function heatherGapL(room: Workspace, cloth: WettableGarment, ink: PrintableInk, centreL: number): number {
  if (cloth.dyedFibreKs === null) return 0;
  wetAsSolid(room);
  return lightnessOver(room, cloth, ink.film) - centreL;
}

/** The exact L* of a clear at the nodes. */
function clearNodes(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  axis: FactorAxis,
): Float64Array {
  const lightness = new Float64Array(WET_NODE_COUNT);
  for (let i = 0; i < WET_NODE_COUNT; i++) {
    wetClothBy(room, cloth, ink.film.wetOutStrength * wetOutAtNode(axis, i));
    lightness[i] = lightnessOver(room, cloth, ink.film);
  }
  return lightness;
}

/** The exact L* of a tinted mix at the nodes, and how far its hue lies inside the limit where it may break it. */
function tintedNodes(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  axis: FactorAxis,
  hueLimit: number,
): { lightness: Float64Array; hueMargin: Float64Array | null } {
  const { bareLab } = cloth;
  const bareChroma = chroma(bareLab);
  const { labs } = room.spread;
  const tintCount = TINT_NODE_COUNT;
  const lightness = new Float64Array(WET_NODE_COUNT * tintCount);
  const hueMargin = new Float64Array(WET_NODE_COUNT * tintCount);
  let leastMargin = Number.POSITIVE_INFINITY;
  for (let i = 0; i < WET_NODE_COUNT; i++) {
    wetClothBy(room, cloth, ink.film.wetOutStrength * wetOutAtNode(axis, i));
    labsOver(labs, room, cloth, ink.nodeFilms);
    let clearHue = 0;
    for (let j = 0; j <= tintCount; j++) {
      const a = labs[3 * j + 1]!;
      const b = labs[3 * j + 2]!;
      const printChroma = Math.sqrt(a * a + b * b);
      const shift = hueShift(bareLab, bareChroma, a, b, printChroma);
      if (j === 0) {
        clearHue = shift;
        continue;
      }
      const at = i * tintCount + j - 1;
      lightness[at] = labs[3 * j]!;
      const margin = (hueLimit - shift + clearHue) / hueDiscrepancy(bareChroma, printChroma);
      hueMargin[at] = margin;
      if (margin < leastMargin) leastMargin = margin;
    }
  }
  return { lightness, hueMargin: leastMargin < HUE_REACH ? hueMargin : null };
}

/** The response of `ink` on `cloth`, as uncertain as `doubt` says: before any test print, or as they have taught. */
export function cellResponse(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  hueLimit: number,
  doubt: CellDoubt = priorDoubt(room, cloth, ink),
): CellResponse {
  const axis = wetAxis(doubt.wetOutSd);
  const tintCount = ink.hasTint ? TINT_NODE_COUNT : 1;
  const { lightness, hueMargin } = ink.hasTint
    ? tintedNodes(room, cloth, ink, axis, hueLimit)
    : { lightness: clearNodes(room, cloth, ink, axis), hueMargin: null };
  fitSurface(lightness, tintCount);
  if (hueMargin !== null) fitSurface(hueMargin, tintCount);
  wetCloth(room, cloth, ink.film);
  const centreL = lightnessOver(room, cloth, ink.film);
  const closedSlope =
    (lightnessOver(room, cloth, ink.film, ink.film.closedFraction + CLOSED_STEP) - centreL) / CLOSED_STEP;
  const centreLuminance = luminanceRatioFromLightness(centreL);
  const addedAgainst = (film: PrintedFilm | null): number =>
    film === null ? 0 : centreLuminance - luminanceRatioFromLightness(lightnessOver(room, cloth, film));
  const hazeLuminance = addedAgainst(ink.hazelessFilm);
  const blackLuminance = addedAgainst(ink.unscatteringFilm);
  const gap = heatherGapL(room, cloth, ink, centreL) / 2;
  return {
    doubt,
    wetAxis: axis,
    tintAxis: tintAxis(doubt.tintSd),
    tintCount,
    lightness,
    hueMargin,
    closedSlope,
    hazeLuminance,
    blackLuminance,
    centreL,
    discrepancyL: Math.sqrt(DISCREPANCY_DELTA_L * DISCREPANCY_DELTA_L + gap * gap),
  };
}

/** L* on the surface at `lnWetOut` and `lnTint` away from what is expected. */
export function lightnessAt(response: CellResponse, lnWetOut: number, lnTint: number): number {
  const x = axisPosition(response.wetAxis, lnWetOut);
  const y = axisPosition(response.tintAxis, lnTint);
  return surfaceValue(response.lightness, response.tintCount, x, y);
}

/** Change of L* at the centre where scattered light of `luminance` (Y/Yn) is exp(`lnSd`) times as much as expected. */
export function scatteredSdL({ centreL }: CellResponse, luminance: number, lnSd: number): number {
  if (luminance === 0) return 0;
  const more = luminanceRatioFromLightness(centreL) + luminance * Math.expm1(lnSd);
  return Math.abs(lightnessFromLuminanceRatio(Math.max(0, more)) - centreL);
}
