/** A synthetic shop's bases, colourants and set-ups: what the shop believes of each (typed into the planner) and what is true. */
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { nearestReflectanceFromLab } from "../../src/core/colorimetry/reconstruct.ts";
import type { Viewing } from "../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import type { Application, BasePart, ColourantPart } from "../../src/core/prediction/inputs.ts";
import { constantSpectrum, type Spectrum, spectrumFrom } from "../../src/core/spectrum/spectrum.ts";
import type { Draws } from "./draws.ts";
import { dyeAbsorption, heapReflectance, type Recipe } from "./dyeSpectra.ts";
import * as effects from "./trueEffects.ts";

/** A base as typed in, and as it is. */
export interface ShopBase {
  readonly key: string;
  readonly typed: Omit<BasePart, "massFraction">;
  readonly trueStrength: number;
  readonly trueHazePerUm: number;
  readonly trueClosedFraction: number;
}

/** A colourant as typed in, and as it is: depth of one straight crossing and backward scattering, per um and mass fraction. */
export interface ShopColourant {
  readonly key: string;
  readonly typed: Omit<ColourantPart, "massFraction">;
  readonly trueDepthPerUm: Spectrum;
  readonly trueBackScatterPerUm: Spectrum;
}

export interface ShopSetUp {
  readonly key: string;
  readonly typed: Application;
  readonly trueDepositUm: number;
}

/** The shelf of the demo's kind: strength, haze per um (model.md §3, invented). The first is the reference clear. */
const BASES = [
  ["gloss clear", 1, 0],
  ["curable clear", 0.85, 0],
  ["low-cure stretch clear", 0.9, 0.00003],
  ["extender base", 0.9, 0.0001],
  ["matt clear", 0.6, 0.0001],
  ["curable reducer", 0.6, 0],
] as const;
const BELIEVED_CLOSED_FRACTION = 0.02;

/** Black as the model's shelf has it: K at 560 nm, 1/um, falling as 1/wavelength, and its scattering against K. */
export const BLACK_NM = 560;
const BLACK_K_PER_UM = 1.1;
const BLACK_SCATTERING_SHARE = 0.025;

/** Coloured tints: what dyes them, and the K at the peak that the shop goes by, 1/um (invented). */
const TINTS: readonly (readonly [key: string, recipe: Recipe, peakPerUm: number])[] = [
  ["navy tint", { blue: 1, black: 0.35, violet: 0.2 }, 0.5],
  ["red tint", { red: 1, orange: 0.3 }, 0.35],
  ["forest tint", { turquoise: 0.8, yellow: 0.8, black: 0.2 }, 0.4],
];
/** Absorption over scattering of a masstone at its peak: deep, not black. Invented. */
const MASSTONE_PEAK = 9;
const MASSTONE_SURFACE = 0.008;

export function shopBases(draws: Draws): ShopBase[] {
  const others = draws.shuffled(BASES.slice(1)).slice(0, draws.integer(3, 5));
  return [BASES[0], ...others].map(([key, strength, hazePerUm], i) => ({
    key,
    typed: {
      kind: "base",
      strength,
      reference: i === 0,
      hazePerUm,
      closedFraction: BELIEVED_CLOSED_FRACTION,
    },
    trueStrength: i === 0 ? 1 : strength * Math.exp(draws.normal(effects.BASE_STRENGTH_SD)),
    trueHazePerUm: hazePerUm * Math.exp(draws.normal(effects.HAZE_SD)),
    trueClosedFraction: draws.between(...effects.CLOSED_FRACTION_RANGE),
  }));
}

function shopBlack(draws: Draws): ShopColourant {
  const strength = Math.exp(draws.normal(effects.COLOURANT_STRENGTH_SD));
  const scattering = BLACK_SCATTERING_SHARE * Math.exp(draws.normal(effects.BLACK_SCATTERING_SD));
  const slope = draws.between(...effects.BLACK_SLOPE_RANGE);
  const trueK = (nm: number): number => strength * BLACK_K_PER_UM * (BLACK_NM / nm) ** slope;
  const typedK = (nm: number): number => (BLACK_K_PER_UM * BLACK_NM) / nm;
  return {
    key: "black",
    typed: {
      kind: "colourant",
      absorptionPerUm: spectrumFrom(typedK),
      scatteringPerUm: spectrumFrom((nm) => BLACK_SCATTERING_SHARE * typedK(nm)),
      ownBaseStrength: 1,
      family: "black",
    },
    trueDepthPerUm: spectrumFrom((nm) => trueK(nm) / 2),
    trueBackScatterPerUm: spectrumFrom((nm) => scattering * trueK(nm)),
  };
}

const peakOf = (spectrum: Spectrum): number => spectrum.reduce((most, value) => Math.max(most, value), 0);

/** The shop reads the tint's masstone and gets the smoothest spectrum of that colour; the tint itself has its bands. */
function shopTint(
  draws: Draws,
  viewing: Viewing,
  [key, recipe, peakPerUm]: (typeof TINTS)[number],
): ShopColourant {
  const bands = dyeAbsorption(recipe, draws.normal(effects.UNION_BAND_SHIFT_SD_NM));
  const peak = peakOf(bands);
  const masstone = bands.map((value) => heapReflectance((MASSTONE_PEAK * value) / peak, MASSTONE_SURFACE));
  const read = nearestReflectanceFromLab(labFromReflectance(masstone, weightsFor(viewing)), viewing);
  const readRatio = read.spectrum.map((r) => (1 - r) ** 2 / (2 * r));
  const readPeak = peakOf(readRatio);
  const trueK = peakPerUm * Math.exp(draws.normal(effects.COLOURANT_STRENGTH_SD));
  return {
    key,
    typed: {
      kind: "colourant",
      absorptionPerUm: readRatio.map((value) => (peakPerUm * value) / readPeak),
      scatteringPerUm: constantSpectrum(0),
      ownBaseStrength: 1,
      family: "tint",
    },
    trueDepthPerUm: bands.map((value) => (trueK * value) / peak / 2),
    trueBackScatterPerUm: constantSpectrum(0),
  };
}

/** Black first, then two or three coloured tints. */
export function shopColourants(draws: Draws, viewing: Viewing): ShopColourant[] {
  const tints = draws.shuffled(TINTS).slice(0, draws.integer(2, 3));
  return [shopBlack(draws), ...tints.map((tint) => shopTint(draws, viewing, tint))];
}

/** The main set-up and two more; some deposits weighed, the rest estimated from the mesh. */
export function shopSetUps(draws: Draws): ShopSetUp[] {
  const usual: readonly (readonly [key: string, low: number, high: number, weighedChance: number])[] = [
    ["main", 16, 24, 0.7],
    ["fine", 9, 14, 0.5],
    ["coarse", 24, 34, 0.3],
  ];
  return usual.map(([key, low, high, weighedChance]) => {
    const depositUm = draws.between(low, high);
    const depositWeighed = draws.chance(weighedChance);
    const sd = depositWeighed ? effects.DEPOSIT_SD_WEIGHED : effects.DEPOSIT_SD_ESTIMATED;
    return {
      key,
      typed: { depositUm, depositWeighed, halftoneFraction: 1, smoothed: false },
      trueDepositUm: depositUm * Math.exp(draws.normal(sd)),
    };
  });
}
