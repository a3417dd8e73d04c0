/** Which spectra lie in the kernel's memory: each keeps its place while it is used and loses it to newer ones. */
import { BAND_COUNT, type Spectrum } from "../../spectrum/spectrum.ts";
import { bandKernel } from "./bandKernel.ts";

const NUMBER_BYTES = 8;
export const SPECTRUM_BYTES = BAND_COUNT * NUMBER_BYTES;

/**
 * Memory from the start: a list of films, the three sums of each colour, the wetted cloth, a surface with the points that it
 * is asked for and its values there, then places of three spectra each.
 */
export const LIST_AT = 0;
export const SUMS_AT = 64;
export const CLOTH_AT = 512;
export const SURFACE_AT = 1024;
export const POINTS_AT = 1280;
/** Points at most, and room for each of x, y and value. */
export const MOST_POINTS = 128;
const PLACES_AT = 5120;
const SPECTRA_PER_PLACE = 3;
const PLACE_BYTES = SPECTRA_PER_PLACE * SPECTRUM_BYTES;
const PLACE_COUNT =
  bandKernel === null ? 0 : Math.floor((bandKernel.memory.buffer.byteLength - PLACES_AT) / PLACE_BYTES);

/** Up to three spectra that are never changed once they are here, and where they lie. */
export interface ResidentBands {
  readonly spectra: readonly Spectrum[];
  place: number;
}

/** How often spectra were brought in. */
let broughtIn = 0;

const holders: (ResidentBands | null)[] = new Array<ResidentBands | null>(PLACE_COUNT).fill(null);
let nextPlace = 0;

/** Spectra that the kernel will be asked about; they move into its memory when first used. */
export function residentBands(...spectra: Spectrum[]): ResidentBands {
  return { spectra, place: -1 };
}

/** A count that changes whenever spectra are brought in: whoever gathers several addresses does so until it stays. */
export function residency(): number {
  return broughtIn;
}

/**
 * Byte address of `bands`, brought in where they are not there (any more). It holds until other spectra are brought in.
 */
export function addressOf(bands: ResidentBands): number {
  const { place } = bands;
  if (place < 0 || holders[place] !== bands) bringIn(bands);
  return PLACES_AT + bands.place * PLACE_BYTES;
}

function bringIn(bands: ResidentBands): void {
  broughtIn++;
  bands.place = nextPlace;
  holders[nextPlace] = bands;
  nextPlace = (nextPlace + 1) % PLACE_COUNT;
  let at = (PLACES_AT + bands.place * PLACE_BYTES) / NUMBER_BYTES;
  for (const spectrum of bands.spectra) {
    bandKernel!.numbers.set(spectrum, at);
    at += BAND_COUNT;
  }
}
