/** A mix on its set-up made ready for a whole column of predictions: its film, and the films it may turn out as. */
import { depositReach } from "../optics/wetOut.ts";
import { type FilmRow, filmRow } from "./filmRow.ts";
import type { Application, InkMix, MixPart } from "./inputs.ts";
import { type CutNormal, cutAtZero } from "./normalDistribution.ts";
import { type PrintedFilm, printedFilm } from "./printedFilm.ts";
import { type FactorAxis, lnTintAtNode, TINT_NODE_COUNT, tintAxis } from "./responseSurface.ts";
import {
  BASE_STRENGTH_SD,
  BLACK_SCATTERING_SD,
  CLOSED_FRACTION_SD,
  COLOURANT_STRENGTH_SD,
  DISCREPANCY_LN_TINT,
  HAZE_SD,
  lnDepositSd,
  type Surprise,
} from "./unknowns.ts";

/** Step in ln deposit for slope and curvature of the reach. */
const LN_STEP = 0.05;

/** Standard deviations of what an ink does, before any test print; in natural logarithms but the closed fraction's. */
export interface InkPrior {
  readonly lnBase: number;
  /** Of the colourants' strength and what the model misses of it; without the deposit. */
  readonly lnTint: number;
  readonly lnDeposit: number;
  readonly lnHaze: number;
  readonly lnBlackScattering: number;
  readonly closedFraction: number;
  /** What the closed fraction, cut at 0, adds to the expected one: its mean and standard deviation. */
  readonly closedShift: CutNormal;
}

/** What test prints have taught of an ink: deviations from the expected, and how uncertain ln(tint) is with the deposit. */
export interface InkLesson {
  readonly mean: Surprise;
  readonly tintSd: number;
}

export interface PrintableInk {
  readonly mix: InkMix;
  readonly application: Application;
  /** How it deviates from the expected, as test prints have taught. */
  readonly surprise: Surprise;
  readonly film: PrintedFilm;
  /** The film without its colourants; the film itself for a clear. */
  readonly clearFilm: PrintedFilm;
  /**
   * The film; as if its bases had no haze; as if its black did not scatter, the latter two where they do; then, where it holds
   * a tint, the film without its colourants and at each tint node.
   */
  readonly row: FilmRow;
  /** Where in the row they are, 0 standing for none. */
  readonly hazelessAt: number;
  readonly unscatteringAt: number;
  readonly nodesAt: number;
  readonly hasTint: boolean;
  /** ln(tint factor) per standard deviation, the deposit's part included: what its nodes are spaced by; 0 for a clear. */
  readonly tintSd: number;
  readonly tintAxis: FactorAxis;
  /** d ln F / d ln X at this deposit: how much of a thicker film goes into wet-out. */
  readonly reachSlope: number;
  /** Half the second derivative: a thicker film adds less than a thinner one takes away. */
  readonly reachCurvature: number;
  /** Standard deviations before any test print. */
  readonly prior: InkPrior;
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
  surprise: Surprise,
  scatters: (part: MixPart) => boolean,
): PrintedFilm | null {
  if (!mix.parts.some(scatters)) return null;
  const expected = surprise.lnPartScattering;
  const lnPartScattering = mix.parts.map((part, i) =>
    scatters(part) ? Number.NEGATIVE_INFINITY : (expected?.[i] ?? 0),
  );
  return printedFilm(mix, application, { ...surprise, lnPartScattering });
}

const isHazy = (part: MixPart): boolean => part.kind === "base" && part.massFraction * part.hazePerUm > 0;
const isBlack = (part: MixPart): boolean =>
  part.kind === "colourant" && part.family === "black" && part.massFraction > 0;

/** Prior of `mix` on `application`: among several colourants each counts by what it absorbs, among several bases by strength. */
function inkPrior(
  mix: InkMix,
  application: Application,
  amounts: readonly number[],
  film: PrintedFilm,
): InkPrior {
  const hasTint = amounts.some((amount) => amount > 0);
  const bases = mix.parts.filter((part) => part.kind === "base");
  const strength = weightedSd(
    amounts,
    amounts.map(() => COLOURANT_STRENGTH_SD),
  );
  const closedFraction =
    weightedSd(
      bases.map((part) => part.massFraction),
      bases.map(() => CLOSED_FRACTION_SD),
    ) || CLOSED_FRACTION_SD;
  return {
    lnBase: weightedSd(
      bases.map((part) => part.massFraction * part.strength),
      bases.map((part) => (part.reference ? 0 : BASE_STRENGTH_SD)),
    ),
    lnTint: hasTint ? Math.hypot(strength, DISCREPANCY_LN_TINT) : 0,
    lnDeposit: lnDepositSd(application.depositWeighed),
    lnHaze: weightedSd(
      bases.map((part) => part.massFraction * part.hazePerUm),
      bases.map(() => HAZE_SD),
    ),
    lnBlackScattering: weightedSd(
      mix.parts.map((part) => (isBlack(part) ? part.massFraction : 0)),
      mix.parts.map(() => BLACK_SCATTERING_SD),
    ),
    closedFraction,
    closedShift: cutAtZero(film.closedFraction, closedFraction),
  };
}

/**
 * Makes `mix` on `application` ready for predictions, as expected or as `lesson` has it.
 * @throws RangeError where the mix does not sum to 1 or a part is out of range.
 */
export function printableInk(
  mix: InkMix,
  application: Application,
  lesson: InkLesson | null = null,
): PrintableInk {
  const surprise = lesson?.mean ?? {};
  const filmOf = (tintFactor: number): PrintedFilm => printedFilm(mix, application, surprise, tintFactor);
  const film = filmOf(1);
  const amounts = mix.parts.map(tintAmount);
  const hasTint = amounts.some((amount) => amount > 0);
  const prior = inkPrior(mix, application, amounts, film);
  const tintSd = hasTint ? (lesson?.tintSd ?? Math.hypot(prior.lnTint, prior.lnDeposit)) : 0;
  const clearFilm = hasTint ? filmOf(0) : film;
  const axis = tintAxis(tintSd);
  const tintNodeFilms = Array.from({ length: hasTint ? TINT_NODE_COUNT : 0 }, (_, k) =>
    filmOf(Math.exp(lnTintAtNode(axis, k))),
  );
  const hazeless = filmWithoutScattering(mix, application, surprise, isHazy);
  const unscattering = filmWithoutScattering(mix, application, surprise, isBlack);
  const films = [film];
  const placeOf = (...more: (PrintedFilm | null)[]): number => {
    const at = films.length;
    for (const one of more) if (one !== null) films.push(one);
    return films.length > at ? at : 0;
  };
  const hazelessAt = placeOf(hazeless);
  const unscatteringAt = placeOf(unscattering);
  const nodesAt = hasTint ? placeOf(clearFilm, ...tintNodeFilms) : 0;
  const depositUm = application.depositUm * Math.exp(surprise.lnDeposit ?? 0);
  return {
    mix,
    application,
    surprise,
    film,
    clearFilm,
    row: filmRow(films),
    hazelessAt,
    unscatteringAt,
    nodesAt,
    hasTint,
    tintSd,
    tintAxis: axis,
    reachSlope: lnReach(depositUm, LN_STEP, -LN_STEP) / (2 * LN_STEP),
    reachCurvature:
      (lnReach(depositUm, LN_STEP, 0) + lnReach(depositUm, -LN_STEP, 0)) / (2 * LN_STEP * LN_STEP),
    prior,
  };
}

/** ln F at exp(`lnUpper`) times the deposit over F at exp(`lnLower`) times it; 0 without a deposit. */
function lnReach(depositUm: number, lnUpper: number, lnLower: number): number {
  if (depositUm === 0) return 0;
  return Math.log(depositReach(depositUm * Math.exp(lnUpper)) / depositReach(depositUm * Math.exp(lnLower)));
}
