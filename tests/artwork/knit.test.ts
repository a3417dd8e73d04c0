/** The knit keeps the colour: in linear light its factors have mean 1, and so has the picture, whatever the colour. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { knitTile } from "../../src/artwork/knit.ts";
import { lightFromChannel, lightFromHex } from "../../src/artwork/linearLight.ts";
import { printedClothPixels } from "../../src/artwork/printedCloth.ts";

/** Rounding of 32-bit factors over some ten thousand pixels. */
const MEAN_ROUNDING = 1e-6;
/** The screen's own 8 bits: half a channel step, as light at the channel where a step is largest there. */
const HALF_STEP = 0.5;

const tile = knitTile(1);

function meanLight(pixels: Uint8ClampedArray, channel: number): number {
  let sum = 0;
  for (let at = channel; at < pixels.length; at += 4) sum += lightFromChannel(pixels[at]!);
  return sum / (pixels.length / 4);
}

/** How many channel steps two lights lie apart, at the lightness where they are. */
function channelSteps(light: number, hex: string, channel: number): number {
  const wanted = Number.parseInt(hex.slice(1 + 2 * channel, 3 + 2 * channel), 16);
  const exact = lightFromChannel(wanted);
  const step = lightFromChannel(Math.min(255, wanted + 1)) - lightFromChannel(Math.max(0, wanted - 1));
  const width = wanted === 0 || wanted === 255 ? step : step / 2;
  return Math.abs(light - exact) / width;
}

function bareCloth(hex: string): Uint8ClampedArray {
  const size = { widthPx: tile.widthPx, heightPx: tile.heightPx };
  return printedClothPixels({ ...size, pxPerUnit: 1, bareHex: hex, print: null }, tile);
}

describe("the knit tile", () => {
  it.each([1, 2])("has factors with a mean of 1 at %i pixels to a unit", (pxPerUnit) => {
    const { factors } = knitTile(pxPerUnit);
    const mean = factors.reduce((sum, factor) => sum + factor, 0) / factors.length;
    expect(Math.abs(mean - 1)).toBeLessThan(MEAN_ROUNDING);
  });

  it("is cloth, not a flat card: yarns and gaps differ by a tenth at least", () => {
    expect(Math.min(...tile.factors)).toBeLessThan(0.9);
    expect(Math.max(...tile.factors)).toBeGreaterThan(1.05);
    expect(Math.max(...tile.factors)).toBe(tile.largest);
  });

  it("meets itself without a seam: its ends differ no more than neighbours within", () => {
    const { factors, widthPx, heightPx } = tile;
    const at = (x: number, y: number) => factors[y * widthPx + x]!;
    const columnStep = (one: number, other: number) => {
      let sum = 0;
      for (let y = 0; y < heightPx; y++) sum += Math.abs(at(one, y) - at(other, y));
      return sum / heightPx;
    };
    const rowStep = (one: number, other: number) => {
      let sum = 0;
      for (let x = 0; x < widthPx; x++) sum += Math.abs(at(x, one) - at(x, other));
      return sum / widthPx;
    };
    const within = Math.max(...Array.from({ length: widthPx - 1 }, (_, x) => columnStep(x, x + 1)));
    const below = Math.max(...Array.from({ length: heightPx - 1 }, (_, y) => rowStep(y, y + 1)));
    expect(columnStep(widthPx - 1, 0)).toBeLessThanOrEqual(within);
    expect(rowStep(heightPx - 1, 0)).toBeLessThanOrEqual(below);
  });

  it("refuses a density that is no whole number of pixels", () => {
    expect(() => knitTile(1.5)).toThrow("pxPerUnit must be 1, 2, 3 or 4; got 1.5");
  });
});

describe("the picture of bare cloth", () => {
  const channel = fc.integer({ min: 0, max: 255 }).map((value) => value.toString(16).padStart(2, "0"));
  const hexes = fc.tuple(channel, channel, channel).map((channels) => `#${channels.join("")}`);

  it("has the mean linear light of its colour within half a channel step, any colour", () => {
    fc.assert(
      fc.property(hexes, (hex) => {
        const pixels = bareCloth(hex);
        for (const index of [0, 1, 2]) {
          expect(channelSteps(meanLight(pixels, index), hex, index)).toBeLessThan(HALF_STEP);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("flattens the knit on white instead of clipping it", () => {
    const light = bareCloth("#f0f0f0");
    const channels = new Set(light.filter((_, at) => at % 4 !== 3));
    expect(channels.size).toBeGreaterThan(8);
    const white = bareCloth("#ffffff");
    expect(new Set(white)).toEqual(new Set([255]));
  });
});

describe("the picture of a print", () => {
  const size = { widthPx: 240, heightPx: 80, pxPerUnit: 1 };
  const print = { lightHex: "#8a8a8a", darkHex: "#3a3a3a", edge: "clean" as const };

  function columnLight(
    pixels: Uint8ClampedArray,
    fromX: number,
    toX: number,
    y0: number,
    y1: number,
  ): number {
    let sum = 0;
    let count = 0;
    for (let y = y0; y < y1; y++) {
      for (let x = fromX; x < toX; x++) {
        sum += lightFromChannel(pixels[4 * (y * size.widthPx + x)]!);
        count += 1;
      }
    }
    return sum / count;
  }

  it("runs from the light end on the left to the dark end on the right, between bare cloth above and below", () => {
    const pixels = printedClothPixels({ ...size, bareHex: "#c0c0c0", print }, tile);
    const left = columnLight(pixels, 0, 5, 30, 50);
    const middle = columnLight(pixels, 115, 125, 30, 50);
    const right = columnLight(pixels, 235, 240, 30, 50);
    const [light] = lightFromHex(print.lightHex);
    const [dark] = lightFromHex(print.darkHex);
    // A twentieth: five columns of the ramp and the variation of the few stitches in them.
    const slack = 0.05 * light;
    expect(Math.abs(left - light)).toBeLessThan(slack);
    expect(Math.abs(right - dark)).toBeLessThan(slack);
    expect(Math.abs(middle - (light + dark) / 2)).toBeLessThan(slack);
    const [bare] = lightFromHex("#c0c0c0");
    expect(Math.abs(columnLight(pixels, 0, 240, 0, 16) - bare)).toBeLessThan(0.05 * bare);
  });

  it("has an even band where both ends are one colour", () => {
    const even = { ...print, darkHex: print.lightHex };
    const pixels = printedClothPixels({ ...size, bareHex: "#c0c0c0", print: even }, tile);
    const left = columnLight(pixels, 0, 120, 30, 50);
    const right = columnLight(pixels, 120, 240, 30, 50);
    expect(Math.abs(left - right)).toBeLessThan(0.01 * left);
  });

  it("tells the three kinds of evidence apart by the edge alone: none, few or many gaps in it", () => {
    const gaps = (edge: "clean" | "long-dashed" | "dotted") => {
      const pixels = printedClothPixels(
        { ...size, bareHex: "#ffffff", print: { lightHex: "#202020", darkHex: "#202020", edge } },
        tile,
      );
      const row = Array.from({ length: size.widthPx }, (_, x) => pixels[4 * (20 * size.widthPx + x)]! > 200);
      return row.filter((isBare, x) => isBare && !row[x - 1]).length;
    };
    expect(gaps("clean")).toBe(0);
    expect(gaps("long-dashed")).toBeGreaterThanOrEqual(5);
    expect(gaps("dotted")).toBeGreaterThan(3 * gaps("long-dashed"));
  });

  it("refuses what is no screen colour", () => {
    expect(() => printedClothPixels({ ...size, bareHex: "red", print: null }, tile)).toThrow(
      "hex must be #rrggbb",
    );
  });
});
