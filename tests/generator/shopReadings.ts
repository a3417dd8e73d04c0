/** How a synthetic shop reads cloth and prints: noise of instrument and texture, several pairs on several pieces. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { nearestReflectanceFromLab } from "../../src/core/colorimetry/reconstruct.ts";
import type { Lab, Viewing } from "../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import type { EvidenceGarment, PairReading } from "../../src/core/evidence/record.ts";
import type { Spectrum } from "../../src/core/spectrum/spectrum.ts";
import type { Draws } from "./draws.ts";
import type { ClothLot } from "./shopCloths.ts";
import type { ShopSetUp } from "./shopShelf.ts";
import * as effects from "./trueEffects.ts";
import { type Recipe, type ShopEffects, truePrint } from "./truePrint.ts";

/** D65/10 degrees, usual for cloth. */
export const SHOP_VIEWING: Viewing = { illuminant: "D65", observer: "10deg" };
/** Standard deviation of one pair's difference in L*: smooth filament, other solids, heathers (trade.md §2). */
export const PAIR_SD = { filament: 0.2, solid: 0.4, heather: 0.8 } as const;
/** Noise in a* and b* against that in L*. Invented. */
const AB_NOISE_SHARE = 0.5;
/** Shade of the pieces read against the lot's: moves bare and print alike. Invented. */
const PIECE_SHADE_SD = 0.15;

/** A pair reading and what it truly came from, so that it can be read anew under another light. */
export interface TrueReading {
  readonly bare: Spectrum;
  readonly printed: Spectrum;
  readonly bareNoise: Lab;
  readonly printedNoise: Lab;
  readonly pairCount: number;
  readonly pieceCount: number;
  readonly sdPairDeltaL: number;
}

export function pairSdOf(lot: ClothLot): number {
  if (lot.kind === "heather") return PAIR_SD.heather;
  return lot.fibres.every(({ fibre }) => fibre === "polyester-filament") ? PAIR_SD.filament : PAIR_SD.solid;
}

function labNoise(draws: Draws, sd: number): Lab {
  return {
    L: draws.normal(sd),
    a: draws.normal(AB_NOISE_SHARE * sd),
    b: draws.normal(AB_NOISE_SHARE * sd),
  };
}

const sumOf = (one: Lab, other: Lab): Lab => ({
  L: one.L + other.L,
  a: one.a + other.a,
  b: one.b + other.b,
});

/** `spectrum` as an instrument reads it under `viewing`, `noise` off. */
export function readLab(spectrum: Spectrum, noise: Lab, viewing: Viewing): Lab {
  return sumOf(labFromReflectance(spectrum, weightsFor(viewing)), noise);
}

/** Prints `recipe` once and reads it: 4 pairs on solids, 10 on heathers, on one to three pieces. */
export function readPrint(
  draws: Draws,
  shop: ShopEffects,
  lot: ClothLot,
  recipe: Recipe,
  setUp: ShopSetUp,
): TrueReading {
  const pairCount = lot.kind === "heather" ? 10 : 4;
  const pieceCount = draws.integer(1, 3);
  const sd = pairSdOf(lot);
  const lnDeposit = draws.normal(effects.DEPOSIT_SD_PRINT_TO_PRINT);
  const printed = new Float64Array(lot.bare.length);
  for (let piece = 0; piece < pieceCount; piece++) {
    const chance = { lnDeposit, lnPiece: draws.normal(effects.PIECE_SD) };
    const one = truePrint(shop, lot, recipe, setUp, chance);
    for (let i = 0; i < printed.length; i++) printed[i]! += one[i]! / pieceCount;
  }
  // The difference of two readings has twice the variance of one.
  const readingSd = sd / Math.sqrt(2 * pairCount);
  const shade = labNoise(draws, PIECE_SHADE_SD / Math.sqrt(pieceCount));
  return {
    bare: lot.bare,
    printed,
    bareNoise: sumOf(shade, labNoise(draws, readingSd)),
    printedNoise: sumOf(shade, labNoise(draws, readingSd)),
    pairCount,
    pieceCount,
    sdPairDeltaL: draws.sampleSd(sd, pairCount),
  };
}

/** The record's reading of it under the lights it was read with (the shop's, unless somebody slipped). */
export function pairReading(
  reading: TrueReading,
  bareViewing: Viewing = SHOP_VIEWING,
  printedViewing: Viewing = SHOP_VIEWING,
): PairReading {
  const { pairCount, pieceCount, sdPairDeltaL } = reading;
  return {
    kind: "pair",
    bare: readLab(reading.bare, reading.bareNoise, bareViewing),
    printed: readLab(reading.printed, reading.printedNoise, printedViewing),
    pairCount,
    pieceCount,
    sdPairDeltaL,
  };
}

const BARE_READING_COUNT = 4;

/** The lot as the planner knows it: the smoothest spectrum of its noisy bare reading, never its true one. */
export function garmentAsRead(draws: Draws, lot: ClothLot): EvidenceGarment {
  const { lotKey, millKey, colourwayKey, styleKey, fibres } = lot;
  const noise = sumOf(
    labNoise(draws, PIECE_SHADE_SD),
    labNoise(draws, pairSdOf(lot) / Math.sqrt(2 * BARE_READING_COUNT)),
  );
  const read = nearestReflectanceFromLab(readLab(lot.bare, noise, SHOP_VIEWING), SHOP_VIEWING);
  return {
    lotKey,
    millKey,
    colourwayKey,
    styleKey,
    garment: {
      bare: read.spectrum,
      bareSource: "reconstructed",
      readUnder: SHOP_VIEWING,
      fibres,
      resistantFinish: false,
      geometry: "specular-excluded",
    },
  };
}
