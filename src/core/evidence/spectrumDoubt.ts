/** How far a prediction may be off because the bare cloth's spectrum is known by its colour only. */
import { labFromReflectance } from "../colorimetry/cielab.ts";
import { weightsFor } from "../colorimetry/weights.ts";
import { DARK_LIMIT_REFLECTANCE } from "../optics/kubelkaMunk.ts";
import type { PrintedFilm } from "../prediction/printedFilm.ts";
import { layFilmOver } from "../prediction/printedReflectance.ts";
import { type WettableGarment, wetInto, wettableGarment } from "../prediction/wettableGarment.ts";
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";
import { difference } from "./clothUnderFilm.ts";
import {
  bandSlopes,
  type Conditioning,
  conditionedCovariance,
  conditioningOn,
  labSlopesInto,
  stepVariance,
  threeRows,
  tristimulusSlopes,
} from "./spectrumWalk.ts";

/** Step in z for the derivative of each band. */
const Z_STEP = 0.01;

/** A cloth of which only the colour was read, and the same cloth one step of z further in every band. */
interface Doubt {
  readonly stepped: WettableGarment;
  readonly read: Conditioning;
  readonly bareLabSlopes: readonly Spectrum[];
}

/** Made once per cloth: it depends on nothing else. */
const known = new WeakMap<WettableGarment, Doubt | null>();

function doubtOf(cloth: WettableGarment): Doubt | null {
  let doubt = known.get(cloth);
  if (doubt === undefined) {
    doubt = doubtFor(cloth);
    known.set(cloth, doubt);
  }
  return doubt;
}

function doubtFor(cloth: WettableGarment): Doubt | null {
  const { garment, weights } = cloth;
  if (garment.bareSource === "measured" || garment.readUnder === null) return null;
  const slopes = bandSlopes(garment.bare);
  const bare = garment.bare.map((r, i) => Math.max(0, r + Z_STEP * slopes[i]!));
  const bareLabSlopes = threeRows();
  labSlopesInto(bareLabSlopes, garment.bare, slopes, weights);
  return {
    stepped: wettableGarment({ ...garment, bare }, garment.readUnder),
    read: conditioningOn(
      tristimulusSlopes(slopes, weightsFor(garment.readUnder)),
      stepVariance(garment.bare),
    ),
    bareLabSlopes,
  };
}

/** Filled anew at each call. */
const seen: Spectrum = new Float64Array(BAND_COUNT);
const other: Spectrum = new Float64Array(BAND_COUNT);
const wanted = threeRows();

function seeThrough(out: Spectrum, cloth: WettableGarment, film: PrintedFilm, gains: Float64Array): void {
  wetInto(out, cloth, gains);
  layFilmOver(out, out, cloth, film);
}

/** Part of the change in bands under R = 0.05 by which Kubelka-Munk may be off there. Invented default. */
const DARK_BAND_MISS = 0.5;

/**
 * Change of colour (L*, a*, b*) were the bands under the dark limit to answer half as much, the others making up for it in
 * L*: what a weak Kubelka-Munk in some bands does to chroma and hue. That it does to L* is in the widening of epsilon. Null
 * where all bands or none are dark.
 */
export function darkBandMiss(
  cloth: WettableGarment,
  film: PrintedFilm,
  gains: Float64Array,
  wetOutSlope: readonly number[],
): number[] | null {
  if (!cloth.isDark) return null;
  const { bare } = cloth.garment;
  seeThrough(seen, cloth, film, gains);
  let darkCount = 0;
  for (let i = 0; i < BAND_COUNT; i++) {
    const isDark = bare[i]! < DARK_LIMIT_REFLECTANCE;
    if (isDark) darkCount++;
    other[i] = isDark ? seen[i]! + DARK_BAND_MISS * (bare[i]! - seen[i]!) : seen[i]!;
  }
  if (darkCount === BAND_COUNT) return null;
  const off = difference(labFromReflectance(other, cloth.weights), labFromReflectance(seen, cloth.weights));
  const share = Math.abs(wetOutSlope[0]!) < SMALLEST_SLOPE ? 0 : off.L / wetOutSlope[0]!;
  return [0, off.a - share * wetOutSlope[1]!, off.b - share * wetOutSlope[2]!];
}

const SMALLEST_SLOPE = 1e-3;

/**
 * Covariance (3 x 3) of the change of colour that comes from not knowing the bare spectrum: the bare colour is read, so only
 * what the print does to the spectrum's open part, and the bare colour does not show, counts. Null for a measured spectrum.
 * Every band of the model stands by itself, so one step in all bands at once gives each band's derivative.
 */
export function spectrumDoubt(
  cloth: WettableGarment,
  film: PrintedFilm,
  gains: Float64Array,
): Float64Array | null {
  const doubt = doubtOf(cloth);
  if (doubt === null) return null;
  seeThrough(seen, cloth, film, gains);
  seeThrough(other, doubt.stepped, film, gains);
  for (let i = 0; i < BAND_COUNT; i++) other[i] = (other[i]! - seen[i]!) / Z_STEP;
  labSlopesInto(wanted, seen, other, cloth.weights);
  for (let row = 0; row < 3; row++) {
    const bare = doubt.bareLabSlopes[row]!;
    const of = wanted[row]!;
    for (let i = 0; i < BAND_COUNT; i++) of[i] = of[i]! - bare[i]!;
  }
  return conditionedCovariance(wanted, doubt.read);
}
