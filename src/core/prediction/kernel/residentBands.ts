/** Which spectra lie in the kernel's memory: each keeps its place while it is used and loses it to newer ones. */
import type { Spectrum } from "../../spectrum/spectrum.ts";
import { BAND_COUNT } from "../../spectrum/spectrum.ts";
import { GROUP_COUNT } from "../bandGroups.ts";
import { bandKernel } from "./bandKernel.ts";

const NUMBER_BYTES = 8;
export const SPECTRUM_BYTES = BAND_COUNT * NUMBER_BYTES;
export const GROUPS_BYTES = GROUP_COUNT * NUMBER_BYTES;

/**
 * Memory from the start: three planes for the sums of up to MOST_SUMS colours, the factors that cloth is wetted by, the
 * wetted cloth band by band and group by group, a surface with the points that it is asked for and its values there, luminances
 * (as many), then places for spectra.
 */
export const SUMS_AT = 0;
export const MOST_SUMS = 32;
export const FACTORS_AT = 768;
export const CLOTH_AT = 1024;
export const COARSE_CLOTH_AT = 1536;
export const SURFACE_AT = 1792;
export const POINTS_AT = 2048;
/** Points at most, and room for each of x, y and value. */
export const MOST_POINTS = 64;
export const LUMINANCES_AT = 3584;
const PLACES_AT = 4096;
/** The most that lies at one place: eight films of twelve groups. */
const PLACE_NUMBERS = 192;
const PLACE_BYTES = PLACE_NUMBERS * NUMBER_BYTES;
const PLACE_COUNT =
  bandKernel === null ? 0 : Math.floor((bandKernel.memory.buffer.byteLength - PLACES_AT) / PLACE_BYTES);

/** Spectra that are never changed once they are here, so many of them `together`, and where they lie. */
export interface ResidentBands {
  readonly spectra: readonly Spectrum[];
  readonly together: number;
  place: number;
}

/** How often numbers were brought in. */
let broughtIn = 0;

const holders: (ResidentBands | null)[] = new Array<ResidentBands | null>(PLACE_COUNT).fill(null);
let nextPlace = 0;

/**
 * Up to PLACE_NUMBERS numbers that the kernel will be asked about; they move into its memory when first used. Each `together`
 * of `spectra` lie there pair of bands by pair of bands.
 */
export function residentBands(spectra: readonly Spectrum[], together = 1): ResidentBands {
  return { spectra, together, place: -1 };
}

/** A count that changes whenever numbers are brought in: whoever gathers several addresses does so until it stays. */
export function residency(): number {
  return broughtIn;
}

/**
 * Byte address of `bands`, brought in where they are not there (any more). It holds until others are brought in.
 */
export function addressOf(bands: ResidentBands): number {
  const { place } = bands;
  if (place < 0 || holders[place] !== bands) bringIn(bands);
  return PLACES_AT + bands.place * PLACE_BYTES;
}

function bringIn(bands: ResidentBands): void {
  const { spectra, together } = bands;
  const { numbers } = bandKernel!;
  broughtIn++;
  bands.place = nextPlace;
  holders[nextPlace] = bands;
  nextPlace = (nextPlace + 1) % PLACE_COUNT;
  let at = (PLACES_AT + bands.place * PLACE_BYTES) / NUMBER_BYTES;
  for (let first = 0; first < spectra.length; first += together) {
    const { length } = spectra[first]!;
    for (let i = 0; i < length; i += 2) {
      for (let s = first; s < first + together; s++) {
        numbers[at++] = spectra[s]![i]!;
        numbers[at++] = spectra[s]![i + 1]!;
      }
    }
  }
}
