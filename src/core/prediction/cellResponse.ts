/** How L* and hue of one cell answer to the unknowns: the exact model at a few nodes, a surface through them. */
import {
  labFromReflectance,
  lightnessFromLuminanceRatio,
  luminanceRatioFromLightness,
} from "../colorimetry/cielab.ts";
import { deltaHueAb } from "../colorimetry/difference.ts";
import { type PrintableInk, SURFACE_REACH_SD } from "./printableInk.ts";
import { colourOver, type Workspace, wetCloth } from "./printedColour.ts";
import type { PrintedFilm } from "./printedFilm.ts";
import { layFilmOver } from "./printedReflectance.ts";
import {
  fitSurface,
  lnWetOutAtNode,
  type SurfaceRange,
  surfaceValue,
  tintPosition,
  WET_NODE_COUNT,
  wetPosition,
} from "./responseSurface.ts";
import { SCATTERING_POINTS } from "./spreadGrid.ts";
import { DISCREPANCY_AB, DISCREPANCY_DELTA_L } from "./unknowns.ts";
import { type WetOutSpread, wetOutSpread } from "./wetOutSpread.ts";
import { type WettableGarment, wetSolidInto } from "./wettableGarment.ts";

/** Hue shifts this many discrepancy widths inside the limit cannot break it. */
const HUE_REACH = 4;
const CLOSED_STEP = 0.02;

/** How L* of one cell answers to the unknowns: a surface for the two strong ones, a slope for each weak one. */
export interface CellResponse {
  readonly wetOut: WetOutSpread;
  readonly range: SurfaceRange;
  readonly tintCount: number;
  readonly lightness: Float64Array;
  /** |hue shift| beyond that of the clear alone; null where it cannot break the limit. */
  readonly hueExcess: Float64Array | null;
  /** dL* per unit of closed fraction. */
  readonly closedSlope: number;
  /** What haze, and the black's own scattering, add to Y/Yn at each scattering point; empty where there is none. */
  readonly hazeLuminance: Float64Array;
  readonly blackLuminance: Float64Array;
  /** What the expected haze itself adds to Y/Yn. */
  readonly expectedHazeLuminance: number;
  /** Width of what the model itself misses, in L*. */
  readonly discrepancyL: number;
}

/** L* of the other of a heather's two models, the dye share alone; half their gap is model spread (model.md §3). */
function heatherGapL(room: Workspace, cloth: WettableGarment, ink: PrintableInk, centreL: number): number {
  if (cloth.dyedFibreKs === null) return 0;
  wetSolidInto(room.wetted, cloth, room.gains);
  layFilmOver(room.printed, room.wetted, cloth, ink.film);
  return labFromReflectance(room.printed, cloth.weights).L - centreL;
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
  const hueExcess = new Float64Array(WET_NODE_COUNT * tintCount);
  let mostExcess = 0;
  for (let i = 0; i < WET_NODE_COUNT; i++) {
    wetCloth(room, cloth, ink.film, lnWetOutAtNode(range, i));
    const clearHue = ink.hasTint
      ? Math.abs(deltaHueAb(cloth.bareLab, colourOver(room, cloth, ink.clearFilm)))
      : 0;
    for (let j = 0; j < tintCount; j++) {
      const lab = colourOver(room, cloth, ink.tintFilms[j]!);
      lightness[i * tintCount + j] = lab.L;
      if (!ink.hasTint) continue;
      const excess = Math.abs(deltaHueAb(cloth.bareLab, lab)) - clearHue;
      hueExcess[i * tintCount + j] = excess;
      mostExcess = Math.max(mostExcess, excess);
    }
  }
  wetCloth(room, cloth, ink.film);
  const centreL = colourOver(room, cloth, ink.film).L;
  const closedSlope =
    (colourOver(room, cloth, ink.film, ink.film.closedFraction + CLOSED_STEP).L - centreL) / CLOSED_STEP;
  const centreLuminance = luminanceRatioFromLightness(centreL);
  const addedBy = (films: readonly PrintedFilm[]): Float64Array =>
    Float64Array.from(
      films,
      (film) => luminanceRatioFromLightness(colourOver(room, cloth, film).L) - centreLuminance,
    );
  const hazeLuminance = addedBy(ink.hazeFilms);
  const blackLuminance = addedBy(ink.blackFilms);
  const expectedHazeLuminance =
    ink.hazelessFilm === null
      ? 0
      : centreLuminance - luminanceRatioFromLightness(colourOver(room, cloth, ink.hazelessFilm).L);
  const discrepancyL = Math.hypot(DISCREPANCY_DELTA_L, heatherGapL(room, cloth, ink, centreL) / 2);
  fitSurface(lightness, tintCount);
  const hueMatters = mostExcess > hueLimit - HUE_REACH * DISCREPANCY_AB;
  if (hueMatters) fitSurface(hueExcess, tintCount);
  return {
    wetOut,
    range,
    tintCount,
    lightness,
    hueExcess: hueMatters ? hueExcess : null,
    closedSlope,
    hazeLuminance,
    blackLuminance,
    expectedHazeLuminance,
    discrepancyL,
  };
}

/** L* on the surface at `lnWetOut` and `lnTint` away from what is expected. */
export function lightnessAt(response: CellResponse, lnWetOut: number, lnTint: number): number {
  const { range, tintCount, lightness } = response;
  return surfaceValue(lightness, tintCount, wetPosition(range, lnWetOut), tintPosition(range, lnTint));
}

/** Standard deviation in L*, at the centre, of light `added` to Y/Yn at the scattering points; 0 where there is none. */
export function scatteredSdL(response: CellResponse, added: Float64Array): number {
  if (added.length === 0) return 0;
  const luminance = luminanceRatioFromLightness(lightnessAt(response, 0, 0));
  const last = added.length - 1;
  const rise = lightnessFromLuminanceRatio(luminance + added[last]!) - lightnessFromLuminanceRatio(luminance);
  return rise / SCATTERING_POINTS[last]!;
}
