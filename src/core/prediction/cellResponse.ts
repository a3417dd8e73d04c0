/** How L* and hue of one cell answer to the unknowns: the exact model at a few nodes, a surface through them. */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import { chroma } from "../colorimetry/difference.ts";
import type { Lab } from "../colorimetry/viewing.ts";
import { type PrintableInk, SURFACE_REACH_SD } from "./printableInk.ts";
import { type Workspace, wetAsSolid, wetCloth } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { labOver, lightnessOver } from "./printedLab.ts";
import {
  fitSurface,
  lnWetOutAtNode,
  type SurfaceRange,
  surfaceValue,
  tintPosition,
  WET_NODE_COUNT,
  wetPosition,
} from "./responseSurface.ts";
import { DISCREPANCY_AB, DISCREPANCY_DELTA_L } from "./unknowns.ts";
import { type WetOutSpread, wetOutSpread } from "./wetOutSpread.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Hue shifts this many discrepancy widths inside the limit cannot break it. */
const HUE_REACH = 4;
const CLOSED_STEP = 0.02;
/** On grey cloth no hue shifts and on a grey print any error turns it: the width of the step is held within these. */
const SMALLEST_HUE_RATIO = 0.1;
const LARGEST_HUE_RATIO = 3;

/** How L* of one cell answers to the unknowns: a surface for the two strong ones, a slope for each weak one. */
export interface CellResponse {
  readonly wetOut: WetOutSpread;
  readonly range: SurfaceRange;
  readonly tintCount: number;
  readonly lightness: Float64Array;
  /** How far the hue shift lies inside its limit, in widths of what the model itself misses; null where it cannot break it. */
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

/** |dH*ab| without an angle: sqrt(2 (C1 C2 - a1 a2 - b1 b2)), the product form of the same difference. */
function hueShift(from: Lab, to: Lab): number {
  const product = Math.sqrt((from.a * from.a + from.b * from.b) * (to.a * to.a + to.b * to.b));
  return Math.sqrt(Math.max(0, 2 * (product - from.a * to.a - from.b * to.b)));
}

/**
 * What the model misses of a* and b*, seen as a hue difference: an error across the hue of the print turns it by
 * error / C2, and dH*ab = 2 sqrt(C1 C2) sin(dh / 2), so it counts sqrt(C1 / C2).
 */
function hueDiscrepancy(bare: Lab, print: Lab): number {
  const printChroma = chroma(print);
  const ratio = printChroma === 0 ? 1 : Math.sqrt(chroma(bare) / printChroma);
  return DISCREPANCY_AB * Math.min(LARGEST_HUE_RATIO, Math.max(SMALLEST_HUE_RATIO, ratio));
}

/** L* of the other of a heather's two models, the dye share alone; half their gap is model spread (model.md §3). */
function heatherGapL(room: Workspace, cloth: WettableGarment, ink: PrintableInk, centreL: number): number {
  if (cloth.dyedFibreKs === null) return 0;
  wetAsSolid(room);
  return lightnessOver(room, cloth, ink.film) - centreL;
}

/** Evaluates the exact model at the nodes of the surface and one step along each weak unknown. */
export function cellResponse(
  room: Workspace,
  cloth: WettableGarment,
  ink: PrintableInk,
  hueLimit: number,
): CellResponse {
  const wetOut = wetOutSpread(room, cloth, ink);
  const range: SurfaceRange = { lnWetOut: SURFACE_REACH_SD * wetOut.sd, lnTint: ink.lnTintRange };
  const tintCount = ink.tintFilms.length;
  const lightness = new Float64Array(WET_NODE_COUNT * tintCount);
  const hueMargin = new Float64Array(WET_NODE_COUNT * tintCount);
  let leastMargin = Number.POSITIVE_INFINITY;
  for (let i = 0; i < WET_NODE_COUNT; i++) {
    wetCloth(room, cloth, ink.film, lnWetOutAtNode(range, i));
    const clearHue = ink.hasTint ? hueShift(cloth.bareLab, labOver(room, cloth, ink.clearFilm)) : 0;
    for (let j = 0; j < tintCount; j++) {
      const lab = labOver(room, cloth, ink.tintFilms[j]!);
      lightness[i * tintCount + j] = lab.L;
      if (!ink.hasTint) continue;
      const excess = hueShift(cloth.bareLab, lab) - clearHue;
      const margin = (hueLimit - excess) / hueDiscrepancy(cloth.bareLab, lab);
      hueMargin[i * tintCount + j] = margin;
      leastMargin = Math.min(leastMargin, margin);
    }
  }
  wetCloth(room, cloth, ink.film);
  const centreL = lightnessOver(room, cloth, ink.film);
  const closedSlope =
    (lightnessOver(room, cloth, ink.film, ink.film.closedFraction + CLOSED_STEP) - centreL) / CLOSED_STEP;
  const centreLuminance = luminanceRatioFromLightness(centreL);
  const addedAgainst = (film: PrintedFilm | null): number =>
    film === null ? 0 : centreLuminance - luminanceRatioFromLightness(lightnessOver(room, cloth, film));
  const hazeLuminance = addedAgainst(ink.hazelessFilm);
  const blackLuminance = addedAgainst(ink.unscatteringFilm);
  const discrepancyL = Math.hypot(DISCREPANCY_DELTA_L, heatherGapL(room, cloth, ink, centreL) / 2);
  fitSurface(lightness, tintCount);
  const hueMatters = leastMargin < HUE_REACH;
  if (hueMatters) fitSurface(hueMargin, tintCount);
  return {
    wetOut,
    range,
    tintCount,
    lightness,
    hueMargin: hueMatters ? hueMargin : null,
    closedSlope,
    hazeLuminance,
    blackLuminance,
    centreL,
    discrepancyL,
  };
}

/** L* on the surface at `lnWetOut` and `lnTint` away from what is expected. */
export function lightnessAt(response: CellResponse, lnWetOut: number, lnTint: number): number {
  const { range, tintCount, lightness } = response;
  return surfaceValue(lightness, tintCount, wetPosition(range, lnWetOut), tintPosition(range, lnTint));
}

/** Change of L* at the centre where scattered light of `luminance` (Y/Yn) is exp(`lnSd`) times as much as expected. */
export function scatteredSdL({ centreL }: CellResponse, luminance: number, lnSd: number): number {
  if (luminance === 0) return 0;
  const more = luminanceRatioFromLightness(centreL) + luminance * Math.expm1(lnSd);
  return Math.abs(lightnessFromLuminanceRatio(Math.max(0, more)) - centreL);
}
