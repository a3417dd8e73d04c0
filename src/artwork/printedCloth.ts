/** The picture of a print on its cloth: knit in the garment's colour, crossed by the print from its light to its dark end. */
import type { KnitTile } from "./knit.ts";
import { channelFromLight, lightFromHex } from "./linearLight.ts";

/** How the edges of the band are drawn; each kind of evidence has its own, so that it is seen without colour. */
export type EdgeForm = "clean" | "long-dashed" | "dotted";

export interface PrintedClothPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Device pixels to a CSS pixel, as the tile's. */
  readonly pxPerUnit: number;
  readonly bareHex: string;
  /** The print, or null for bare cloth. The colour runs evenly in linear light from the left end to the right. */
  readonly print: { readonly lightHex: string; readonly darkHex: string; readonly edge: EdgeForm } | null;
}

/** The band takes this part of the height, in the middle. Invented. */
const BAND_FRACTION = 0.5;
/** The forms of an edge in CSS pixels: length of a tooth, of the gap behind it, and its depth. */
const TEETH: Readonly<Record<EdgeForm, { tooth: number; gap: number; depth: number }>> = {
  clean: { tooth: 1, gap: 0, depth: 0 },
  "long-dashed": { tooth: 18, gap: 8, depth: 3 },
  dotted: { tooth: 3, gap: 3, depth: 3 },
};

/**
 * Red, green, blue, alpha of each pixel. In linear light the mean over a whole number of stitches is that of the colour,
 * to within the rounding of 8 bits: where a highlight of the knit would leave the screen's range, all of the knit is
 * made flatter, never clipped.
 */
export function printedClothPixels(picture: PrintedClothPicture, tile: KnitTile): Uint8ClampedArray {
  const { widthPx, heightPx, pxPerUnit, bareHex, print } = picture;
  const bare = lightFromHex(bareHex);
  const left = print === null ? bare : lightFromHex(print.lightHex);
  const right = print === null ? bare : lightFromHex(print.darkHex);
  const strength = knitStrength([bare, left, right], tile.largest);
  const form = print?.edge ?? "clean";
  const bareRow = ramp(bare, bare, widthPx);
  const printRow = ramp(left, right, widthPx);
  const edgeRow = toothed(printRow, bareRow, form, pxPerUnit);
  const bandTop = Math.round(heightPx * (0.5 - BAND_FRACTION / 2));
  const bandBottom = heightPx - bandTop;
  const edgeDepth = TEETH[form].depth * pxPerUnit;
  const pixels = new Uint8ClampedArray(widthPx * heightPx * 4);
  let at = 0;
  for (let y = 0; y < heightPx; y++) {
    const tileRow = (y % tile.heightPx) * tile.widthPx;
    const fromEdge = Math.min(y - bandTop, bandBottom - 1 - y);
    const light = print === null || fromEdge < 0 ? bareRow : fromEdge < edgeDepth ? edgeRow : printRow;
    for (let x = 0; x < widthPx; x++) {
      const factor = 1 + strength * (tile.factors[tileRow + (x % tile.widthPx)]! - 1);
      pixels[at++] = channelFromLight(light[3 * x]! * factor);
      pixels[at++] = channelFromLight(light[3 * x + 1]! * factor);
      pixels[at++] = channelFromLight(light[3 * x + 2]! * factor);
      pixels[at++] = 255;
    }
  }
  return pixels;
}

type Light = readonly [number, number, number];

/** How much of the knit's contrast the lightest of the colours leaves room for, 0..1. */
function knitStrength(colours: readonly Light[], largestFactor: number): number {
  const lightest = Math.max(...colours.flat());
  return lightest * largestFactor <= 1 ? 1 : Math.max(0, (1 / lightest - 1) / (largestFactor - 1));
}

/** Linear light of each pixel of a row, from `left` to `right`. */
function ramp(left: Light, right: Light, widthPx: number): Float64Array {
  const row = new Float64Array(widthPx * 3);
  for (let x = 0; x < widthPx; x++) {
    const share = widthPx === 1 ? 0.5 : x / (widthPx - 1);
    for (let channel = 0; channel < 3; channel++) {
      row[3 * x + channel] = left[channel]! + share * (right[channel]! - left[channel]!);
    }
  }
  return row;
}

/** The row of a band's edge: the print, with bare cloth where the form has its gaps. */
function toothed(print: Float64Array, bare: Float64Array, form: EdgeForm, pxPerUnit: number): Float64Array {
  const { tooth, gap } = TEETH[form];
  return print.map((light, index) => {
    const along = (Math.floor(index / 3) / pxPerUnit) % (tooth + gap);
    return along < tooth ? light : bare[index]!;
  });
}
