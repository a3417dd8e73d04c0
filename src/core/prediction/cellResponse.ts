/** How L* and hue of one cell answer to the unknowns: the exact model at a few nodes, one step along each weak unknown. */
import { lightnessFromLuminanceRatio, luminanceRatioFromLightness } from "../colorimetry/cielab.ts";
import { chroma } from "../colorimetry/difference.ts";
import { type CellDoubt, priorDoubt } from "./cellDoubt.ts";
import { compressSums, hueShifts } from "./colourPlanes.ts";
import { mirroredBeside, sumRow, tieSums } from "./colourSums.ts";
import type { PrintableInk } from "./printableInk.ts";
import { type Workspace, wetAsSolid, wetCloth } from "./printedColour.ts";
import { lightnessOver, tristimulusOver } from "./printedLab.ts";
import {
  axisPosition,
  type FactorAxis,
  fitSurface,
  surfaceValue,
  TINT_NODE_COUNT,
  WET_NODE_COUNT,
  wetAxis,
  wetOutAtNode,
} from "./responseSurface.ts";
import type { SpreadRoom } from "./spreadRoom.ts";
import { DISCREPANCY_DELTA_L } from "./unknowns.ts";
import type { WettableGarment } from "./wettableGarment.ts";

/** Hue shifts this many discrepancy widths inside the limit cannot break it. */
const HUE_REACH = 4;
const CLOSED_STEP = 0.02;
/** The film without its tint and at each tint node; at each wetting. */
const FILM_COUNT = TINT_NODE_COUNT + 1;
const SUM_COUNT = WET_NODE_COUNT * FILM_COUNT;
/** How L* of one cell answers to the unknowns: a surface for the two strong ones, a slope for each weak one. */
export interface CellResponse {
  readonly doubt: CellDoubt;
  readonly wetAxis: FactorAxis;
  readonly tintAxis: FactorAxis;
  readonly tintCount: number;
  /** Fitted surface of L*. */
  readonly lightness: readonly number[];
  /** Fitted surface of how far the hue shift lies inside its limit, in widths of what the model itself misses; null where it cannot break it. */
  readonly hueMargin: readonly number[] | null;
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

/** L* of the other of a heather's two models, the dye share alone; half their gap is model spread (model.md §3). */
function heatherGapL(room: Workspace, cloth: WettableGarment, ink: PrintableInk, centreL: number): number {
  if (cloth.dyedFibreKs === null) return 0;
  wetAsSolid(room);
  return lightnessOver(room, cloth, ink.film) - centreL;
}

/** The first `count` of `values` in an array of its own; a plain one, since making a typed one costs more than filling it. */
function kept(values: Float64Array, count: number): number[] {
  const copy: number[] = [];
  for (let i = 0; i < count; i++) copy.push(values[i]!);
  return copy;
}

/** Fitted surface of a clear's L*. */
function clearSurface(room: Workspace, cloth: WettableGarment, ink: PrintableInk): readonly number[] {
  const { colours, strengths, surface } = room.spread;
  const { y } = colours;
  sumRow(room, cloth, ink.row, 0, 1, strengths, ink.film.closedFraction);
  compressSums(y, WET_NODE_COUNT);
  for (let i = 0; i < WET_NODE_COUNT; i++) surface[i] = 116 * y.sums[i]! - 16;
  fitSurface(surface, 1);
  return kept(surface, WET_NODE_COUNT);
}

/** Sums up, by CIELAB's f, the film without its tint and at each tint node at every wetting. */
function sumTints(room: Workspace, cloth: WettableGarment, ink: PrintableInk): void {
  const { colours, strengths } = room.spread;
  const { x, y, z } = colours;
  sumRow(room, cloth, ink.row, ink.nodesAt, FILM_COUNT, strengths, ink.film.closedFraction);
  compressSums(x, SUM_COUNT);
  compressSums(y, SUM_COUNT);
  compressSums(z, SUM_COUNT);
}

/** Fitted surface of the L* of a tinted mix, of which `sumTints` was called. */
function tintedSurface({ colours, surface }: SpreadRoom): readonly number[] {
  const { sums } = colours.y;
  let at = 0;
  for (let i = 0; i < SUM_COUNT; i += FILM_COUNT) {
    for (let j = 1; j < FILM_COUNT; j++) surface[at++] = 116 * sums[i + j]! - 16;
  }
  fitSurface(surface, TINT_NODE_COUNT);
  return kept(surface, at);
}

/** Likewise of how far its hue lies inside the limit; null where it cannot break it. */
function hueSurface(
  { colours, surface }: SpreadRoom,
  cloth: WettableGarment,
  hueLimit: number,
): readonly number[] | null {
  const { x, y, z } = colours;
  for (let i = 0; i < SUM_COUNT; i += FILM_COUNT) {
    x.sums[i] = x.sums[i]! * x.untied;
    y.sums[i] = y.sums[i]! * y.untied;
    z.sums[i] = z.sums[i]! * z.untied;
  }
  hueShifts(colours, SUM_COUNT, cloth.bareLab, chroma(cloth.bareLab));
  let leastMargin = Number.POSITIVE_INFINITY;
  let at = 0;
  for (let i = 0; i < SUM_COUNT; i += FILM_COUNT) {
    const most = hueLimit + x.sums[i]!;
    for (let j = 1; j < FILM_COUNT; j++) {
      const margin = (most - x.sums[i + j]!) * z.sums[i + j]!;
      surface[at++] = margin;
      if (margin < leastMargin) leastMargin = margin;
    }
  }
  if (!(leastMargin < HUE_REACH)) return null;
  fitSurface(surface, TINT_NODE_COUNT);
  return kept(surface, at);
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
  const { film, row, hazelessAt, unscatteringAt } = ink;
  const { colours, strengths, centreStrength } = room.spread;
  const { closedFraction } = film;
  wetCloth(room, cloth, film);
  const centre = tristimulusOver(room, cloth, film);
  const white = cloth.weights.white.Y;
  const centreRatio = centre.Y / white;
  const centreL = lightnessFromLuminanceRatio(centreRatio);
  centreStrength[0] = film.wetOutStrength;
  const weakCount = 1 + Math.max(hazelessAt, unscatteringAt);
  sumRow(room, cloth, row, 0, weakCount, centreStrength, closedFraction);
  tieSums(colours, cloth, film, centre);
  const { y } = colours;
  const ratioAt = (f: number): number => y.scale * y.sums[f]! + y.offset;
  const hazeLuminance = hazelessAt === 0 ? 0 : centreRatio - ratioAt(hazelessAt);
  const blackLuminance = unscatteringAt === 0 ? 0 : centreRatio - ratioAt(unscatteringAt);
  sumRow(room, cloth, row, 0, 1, centreStrength, closedFraction + CLOSED_STEP);
  const mirrored = mirroredBeside(cloth, film, CLOSED_STEP);
  const closedLuminance = (ratioAt(0) + mirrored - centreRatio) / CLOSED_STEP;
  for (let i = 0; i < WET_NODE_COUNT; i++) strengths[i] = film.wetOutStrength * wetOutAtNode(axis, i);
  const tintCount = ink.hasTint ? TINT_NODE_COUNT : 1;
  if (ink.hasTint) sumTints(room, cloth, ink);
  const lightness = ink.hasTint ? tintedSurface(room.spread) : clearSurface(room, cloth, ink);
  const hueMargin = ink.hasTint ? hueSurface(room.spread, cloth, hueLimit) : null;
  wetCloth(room, cloth, film);
  const gap = heatherGapL(room, cloth, ink, centreL) / 2;
  return {
    doubt,
    wetAxis: axis,
    tintAxis: ink.tintAxis,
    tintCount,
    lightness,
    hueMargin,
    closedSlope: lightnessPerLuminance(centreL) * closedLuminance,
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

/** The slope of the straight part of L* over Y/Yn near black, 116 / 3 (29 / 6)^2 (ISO/CIE 11664-4). */
const STEEPEST = (116 / 3) * (29 / 6) ** 2;

/** d L* / d (Y/Yn) where L* is `lightness`: 116 / 3 (Y/Yn)^(-2/3). */
export function lightnessPerLuminance(lightness: number): number {
  const root = (lightness + 16) / 116;
  return Math.min(STEEPEST, 116 / (3 * root * root));
}

/** Change of L* at the centre where scattered light of `luminance` (Y/Yn) is exp(`lnSd`) times as much as expected. */
export function scatteredSdL({ centreL }: CellResponse, luminance: number, lnSd: number): number {
  if (luminance === 0) return 0;
  const more = luminanceRatioFromLightness(centreL) + luminance * Math.expm1(lnSd);
  return Math.abs(lightnessFromLuminanceRatio(Math.max(0, more)) - centreL);
}
