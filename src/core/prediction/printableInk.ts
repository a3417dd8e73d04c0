/** A mix on its set-up made ready for a whole column of predictions: its film, and the films it may turn out as. */
import { depositReach } from "../optics/wetOut.ts";
import type { Application, InkMix, MixPart } from "./inputs.ts";
import { normalCumulative, normalDensity } from "./normalDistribution.ts";
import { type PrintedFilm, printedFilm } from "./printedFilm.ts";
import { TINT_NODES } from "./responseSurface.ts";
import {
  BASE_STRENGTH_SD,
  BLACK_SCATTERING_SD,
  CLOSED_FRACTION_SD,
  COLOURANT_STRENGTH_SD,
  DISCREPANCY_LN_TINT,
  HAZE_SD,
  lnDepositSd,
} from "./unknowns.ts";

/** Step in ln deposit for slope and curvature of the reach. */
const LN_STEP = 0.05;

export interface PrintableInk {
  readonly mix: InkMix;
  readonly application: Application;
  readonly film: PrintedFilm;
  /** Where it holds a tint, the film without its colourants and then the film at each tint node; else none. */
  readonly nodeFilms: readonly PrintedFilm[];
  /** The film without its colourants; the film itself for a clear. */
  readonly clearFilm: PrintedFilm;
  /** The film as if its bases had no haze, and as if its black did not scatter; null where they do not. */
  readonly hazelessFilm: PrintedFilm | null;
  readonly unscatteringFilm: PrintedFilm | null;
  readonly lnHazeSd: number;
  readonly lnBlackScatteringSd: number;
  readonly hasTint: boolean;
  readonly lnBaseSd: number;
  /** Of the colourants' strength and what the model misses of it; without the deposit. */
  readonly lnTintSd: number;
  readonly lnDepositSd: number;
  /** The two together: ln(tint factor) per standard deviation; 0 for a clear. */
  readonly tintSd: number;
  /** d ln F / d ln X at this deposit: how much of a thicker film goes into wet-out. */
  readonly reachSlope: number;
  /** Mean shift of ln F through its curvature: a thicker film adds less than a thinner one takes away. */
  readonly lnReachShift: number;
  readonly closedFractionSd: number;
  /** Mean and standard deviation of what the closed fraction, cut at 0, adds to the expected one. */
  readonly closedShift: { readonly mean: number; readonly sd: number };
}

const tintAmount = (part: MixPart): number =>
  part.kind === "base"
    ? 0
    : part.massFraction *
      (part.absorptionPerUm.reduce((sum, k) => sum + k, 0) +
        part.scatteringPerUm.reduce((sum, s) => sum + s, 0));

/** Spread of a weighted mean of independent unknowns of standard deviations `sds`. */
function weightedSd(weights: readonly number[], sds: readonly number[]): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  if (total === 0) return 0;
  return Math.sqrt(weights.reduce((sum, weight, i) => sum + ((weight / total) * sds[i]!) ** 2, 0));
}

/** The film with all scattering of the parts that `scatters` names taken away; null where it names none. */
function filmWithoutScattering(
  mix: InkMix,
  application: Application,
  scatters: (part: MixPart) => boolean,
): PrintedFilm | null {
  if (!mix.parts.some(scatters)) return null;
  const lnPartScattering = mix.parts.map((part) => (scatters(part) ? Number.NEGATIVE_INFINITY : 0));
  return printedFilm(mix, application, { lnPartScattering });
}

const isHazy = (part: MixPart): boolean => part.kind === "base" && part.massFraction * part.hazePerUm > 0;
const isBlack = (part: MixPart): boolean =>
  part.kind === "colourant" && part.family === "black" && part.massFraction > 0;

/**
 * Makes `mix` on `application` ready for predictions. Among several colourants each counts by what it absorbs and
 * scatters over all bands, among several bases by strength (ours).
 * @throws RangeError where the mix does not sum to 1 or a part is out of range.
 */
export function printableInk(mix: InkMix, application: Application): PrintableInk {
  const film = printedFilm(mix, application);
  const amounts = mix.parts.map(tintAmount);
  const hasTint = amounts.some((amount) => amount > 0);
  const depositSd = lnDepositSd(application.depositWeighed);
  const strengthSd = weightedSd(
    amounts,
    amounts.map(() => COLOURANT_STRENGTH_SD),
  );
  const lnTintSd = hasTint ? Math.hypot(strengthSd, DISCREPANCY_LN_TINT) : 0;
  const tintSd = hasTint ? Math.hypot(lnTintSd, depositSd) : 0;
  const bases = mix.parts.filter((part) => part.kind === "base");
  const closedFractionSd =
    weightedSd(
      bases.map((part) => part.massFraction),
      bases.map(() => CLOSED_FRACTION_SD),
    ) || CLOSED_FRACTION_SD;
  const clearFilm = hasTint ? printedFilm(mix, application, {}, 0) : film;
  return {
    mix,
    application,
    film,
    nodeFilms: hasTint
      ? [clearFilm, ...TINT_NODES.map((z) => printedFilm(mix, application, {}, Math.exp(tintSd * z)))]
      : [],
    clearFilm,
    hazelessFilm: filmWithoutScattering(mix, application, isHazy),
    unscatteringFilm: filmWithoutScattering(mix, application, isBlack),
    lnHazeSd: weightedSd(
      bases.map((part) => part.massFraction * part.hazePerUm),
      bases.map(() => HAZE_SD),
    ),
    lnBlackScatteringSd: weightedSd(
      mix.parts.map((part) => (isBlack(part) ? part.massFraction : 0)),
      mix.parts.map(() => BLACK_SCATTERING_SD),
    ),
    hasTint,
    lnBaseSd: weightedSd(
      bases.map((part) => part.massFraction * part.strength),
      bases.map((part) => (part.reference ? 0 : BASE_STRENGTH_SD)),
    ),
    lnTintSd,
    lnDepositSd: depositSd,
    tintSd,
    reachSlope: lnReach(application.depositUm, LN_STEP, -LN_STEP) / (2 * LN_STEP),
    lnReachShift:
      ((lnReach(application.depositUm, LN_STEP, 0) + lnReach(application.depositUm, -LN_STEP, 0)) /
        (2 * LN_STEP * LN_STEP)) *
      depositSd ** 2,
    closedFractionSd,
    closedShift: cutAtZero(film.closedFraction, closedFractionSd),
  };
}

/** What max(0, normal of `mean` and `sd`) adds to `mean`: its mean, and its standard deviation. */
function cutAtZero(mean: number, sd: number): { mean: number; sd: number } {
  const above = normalCumulative(mean / sd);
  const density = sd * normalDensity(mean / sd);
  const cut = mean * above + density;
  const square = (mean * mean + sd * sd) * above + mean * density;
  return { mean: cut - mean, sd: Math.sqrt(Math.max(0, square - cut * cut)) };
}

/** ln F at exp(`lnUpper`) times the deposit over F at exp(`lnLower`) times it; 0 without a deposit. */
function lnReach(depositUm: number, lnUpper: number, lnLower: number): number {
  if (depositUm === 0) return 0;
  return Math.log(depositReach(depositUm * Math.exp(lnUpper)) / depositReach(depositUm * Math.exp(lnLower)));
}
