/** Which spectra lie in the kernel's memory: each keeps its place while it is used and loses it to newer ones. */
import { BAND_COUNT, type Spectrum } from "../../spectrum/spectrum.ts";
import { bandKernel } from "./bandKernel.ts";

const NUMBER_BYTES = 8;
export const SPECTRUM_BYTES = BAND_COUNT * NUMBER_BYTES;

/** Memory from the start: the three sums of a colour, the wetted cloth, then places of three spectra each. */
export const SUMS_AT = 0;
export const CLOTH_AT = 512;
const PLACES_AT = 1024;
const SPECTRA_PER_PLACE = 3;
const PLACE_BYTES = SPECTRA_PER_PLACE * SPECTRUM_BYTES;
const PLACE_COUNT =
  bandKernel === null ? 0 : Math.floor((bandKernel.memory.buffer.byteLength - PLACES_AT) / PLACE_BYTES);

/** Up to three spectra that are never changed once they are here, and where they lie. */
export interface ResidentBands {
  readonly spectra: readonly Spectrum[];
  place: number;
}

const holders: (ResidentBands | null)[] = new Array<ResidentBands | null>(PLACE_COUNT).fill(null);
let nextPlace = 0;

/** Spectra that the kernel will be asked about; they move into its memory when first used. */
export function residentBands(...spectra: Spectrum[]): ResidentBands {
  return { spectra, place: -1 };
}

/** Byte address of `bands`, brought in where they are not there (any more). */
export function addressOf(bands: ResidentBands): number {
  const { place } = bands;
  if (place < 0 || holders[place] !== bands) bringIn(bands);
  return PLACES_AT + bands.place * PLACE_BYTES;
}

function bringIn(bands: ResidentBands): void {
  bands.place = nextPlace;
  holders[nextPlace] = bands;
  nextPlace = (nextPlace + 1) % PLACE_COUNT;
  let at = (PLACES_AT + bands.place * PLACE_BYTES) / NUMBER_BYTES;
  for (const spectrum of bands.spectra) {
    bandKernel!.numbers.set(spectrum, at);
    at += BAND_COUNT;
  }
}
