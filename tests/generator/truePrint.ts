/** The true spectrum of a print in a synthetic shop: its cloth wetted fibre by fibre under its true ink film. */
import { BAND_COUNT, type Spectrum } from "../../src/core/spectrum/spectrum.ts";
import { wettedCloth } from "./fibrePopulations.ts";
import type { ClothLot } from "./shopCloths.ts";
import type { ShopBase, ShopColourant, ShopSetUp } from "./shopShelf.ts";
import type { FibreName } from "./trueEffects.ts";
import { seenThroughFilm, wettingReach } from "./trueFilm.ts";

/** What goes onto the cloth: one base, with or without one colourant. */
export interface Recipe {
  readonly base: ShopBase;
  readonly colourant: ShopColourant | null;
  /** Mass fraction of the colourant as truly weighed in, 0 without one. */
  readonly fraction: number;
}

/** Hidden effects that belong to no single base, colourant, set-up or lot. */
export interface ShopEffects {
  readonly fibreGain: Readonly<Record<FibreName, number>>;
  /** ln(wet-out) of this base on this style. */
  readonly baseOnStyle: (styleKey: string, baseKey: string) => number;
}

/** What happens on one print only. */
export interface Chance {
  readonly lnDeposit: number;
  /** The piece's own reaction, in ln(wet-out). */
  readonly lnPiece: number;
}

export const AS_USUAL: Chance = { lnDeposit: 0, lnPiece: 0 };

/** Reflectance factor of the print, specular part excluded. A ready-made colourant counts as base of strength 1. */
export function truePrint(
  effects: ShopEffects,
  lot: ClothLot,
  { base, colourant, fraction }: Recipe,
  setUp: ShopSetUp,
  chance: Chance = AS_USUAL,
): Spectrum {
  const depositUm = setUp.trueDepositUm * Math.exp(chance.lnDeposit);
  const strength = (1 - fraction) * base.trueStrength + fraction;
  const lnReaction = lot.lnReaction + effects.baseOnStyle(lot.styleKey, base.key);
  const wetting = strength * wettingReach(depositUm) * Math.exp(lnReaction + chance.lnPiece);
  const cloth = wettedCloth(
    lot.populations,
    lot.blendConstant,
    (fibre) => effects.fibreGain[fibre] * wetting,
  );
  const opticalDepthPerUm = new Float64Array(BAND_COUNT);
  const backScatterPerUm = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    backScatterPerUm[i] = (1 - fraction) * base.trueHazePerUm;
    if (colourant === null) continue;
    opticalDepthPerUm[i] = fraction * colourant.trueDepthPerUm[i]!;
    backScatterPerUm[i]! += fraction * colourant.trueBackScatterPerUm[i]!;
  }
  const film = { opticalDepthPerUm, backScatterPerUm, depositUm, closedFraction: base.trueClosedFraction };
  return seenThroughFilm(cloth, film);
}
