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
  conditionedCovariance,
  labSlopesOf,
  stepVariance,
  tristimulusSlopes,
} from "./spectrumWalk.ts";

/** Step in z for the derivative of each band. */
const Z_STEP = 0.01;

/** A cloth of which only the colour was read, and the same cloth one step of z further in every band. */
interface Doubt {
  readonly stepped: WettableGarment;
  readonly readSlopes: readonly Spectrum[];
  readonly bareLabSlopes: readonly Spectrum[];
  readonly step: number;
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
  return {
    stepped: wettableGarment({ ...garment, bare }, garment.readUnder),
    readSlopes: tristimulusSlopes(slopes, weightsFor(garment.readUnder)),
    bareLabSlopes: labSlopesOf(garment.bare, slopes, weights),
    step: stepVariance(garment.bare),
  };
}

function seenThrough(cloth: WettableGarment, film: PrintedFilm, gains: Float64Array): Spectrum {
  const seen = new Float64Array(BAND_COUNT);
  wetInto(seen, cloth, gains);
  layFilmOver(seen, seen, cloth, film);
  return seen;
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
  const { bare } = cloth.garment;
  const darkCount = bare.reduce((count, r) => count + (r < DARK_LIMIT_REFLECTANCE ? 1 : 0), 0);
  if (darkCount === 0 || darkCount === BAND_COUNT) return null;
  const seen = seenThrough(cloth, film, gains);
  const missed = seen.map((r, i) =>
    bare[i]! < DARK_LIMIT_REFLECTANCE ? r + DARK_BAND_MISS * (bare[i]! - r) : r,
  );
  const off = difference(labFromReflectance(missed, cloth.weights), labFromReflectance(seen, cloth.weights));
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
  const seen = seenThrough(cloth, film, gains);
  const further = seenThrough(doubt.stepped, film, gains);
  const slopes = further.map((r, i) => (r - seen[i]!) / Z_STEP);
  const ofPrint = labSlopesOf(seen, slopes, cloth.weights);
  const wanted = ofPrint.map((row, c) => row.map((value, i) => value - doubt.bareLabSlopes[c]![i]!));
  return conditionedCovariance(wanted, doubt.readSlopes, doubt.step);
}
