// How well forecasts of synthetic shops did: coverage of the 90 % intervals and errors of the middle, as issue 3 asks.
import { type Figure, figureText, quantileOver, rateOver, rateText } from "../generator/clusteredFigures.ts";
import { CLOTH_CLASSES, TARGET_GROUPS } from "../generator/targetGarments.ts";
import type { ForecastCell } from "./shopForecast.ts";

/** A figure with the range that issue 3 promises for it. */
export interface Score {
  readonly name: string;
  readonly figure: Figure;
  readonly low: number;
  readonly high: number;
  readonly text: string;
}

const GROUP_RANGE = [0.87, 0.93] as const;
const CLASS_RANGE = [0.8, 0.97] as const;

/** How many standard errors a score lies outside its range; 0 inside, NaN where nothing was scored. */
export function standardErrorsOutside({ figure, low, high }: Score): number {
  const outside = Math.max(0, low - figure.value, figure.value - high);
  return outside === 0 ? 0 : outside / figure.standardError;
}

const isInside = ({ cell, forecast }: ForecastCell): boolean =>
  forecast.deltaL5 <= cell.deltaLPrinted && cell.deltaLPrinted <= forecast.deltaL95;

type Choice = (one: ForecastCell) => boolean;

/** Coverage of a print by its 90 % interval, per group and per class of cloth. */
export function coverageScores(shops: readonly (readonly ForecastCell[])[]): Score[] {
  const score = (name: string, [low, high]: readonly [number, number], chosen: Choice): Score => {
    const figure = rateOver(shops.map((cells) => cells.filter(chosen).map(isInside)));
    return {
      name,
      figure,
      low,
      high,
      text: `90 % intervals hold, ${name}: ${rateText(figure)} (asked ${100 * low} to ${100 * high})`,
    };
  };
  return [
    ...TARGET_GROUPS.map((group) => score(group, GROUP_RANGE, ({ target }) => target.group === group)),
    ...CLOTH_CLASSES.map((name) => score(name, CLASS_RANGE, ({ target }) => target.classes.includes(name))),
  ];
}

const isDyedPolyester: Choice = ({ target }) => target.classes.includes("dyed polyester");
const isSameBase: Choice = ({ target, cell }) => target.basesOnLot.includes(cell.baseKey);
const afterOnePrint: Choice = (one) => isDyedPolyester(one) && one.target.lotRecordCount === 1;

const ERRORS: readonly (readonly [name: string, share: number, most: number, chosen: Choice])[] = [
  ["one print on the lot, same base", 0.5, 0.3, (one) => afterOnePrint(one) && isSameBase(one)],
  ["one print on the lot, same base", 0.9, 0.9, (one) => afterOnePrint(one) && isSameBase(one)],
  ["one print on the lot, another base", 0.5, 0.45, (one) => afterOnePrint(one) && !isSameBase(one)],
  [
    "none on the lot, three on the style",
    0.5,
    0.5,
    (one) => isDyedPolyester(one) && one.target.group === "related" && one.target.styleRecordCount === 3,
  ],
  ["untested, all garments", 0.5, 0.55, ({ target }) => target.group === "untested"],
];

/**
 * |error| of the forecast's middle against what the set-up's own deposit gives; its text adds the same against a print
 * with its chance deposit, which no forecast can know.
 */
export function errorScores(shops: readonly (readonly ForecastCell[])[], seed: number): Score[] {
  return ERRORS.map(([name, share, high, chosen]): Score => {
    const quantile = (truth: "deltaLUsual" | "deltaLPrinted"): Figure =>
      quantileOver(
        shops.map((cells) =>
          cells.filter(chosen).map(({ cell, forecast }) => Math.abs(forecast.deltaL50 - cell[truth])),
        ),
        share,
        seed,
      );
    const figure = quantile("deltaLUsual");
    const which = share === 0.5 ? "median" : `${100 * share}th percentile of`;
    const single = quantile("deltaLPrinted").value.toFixed(3);
    return {
      name: `${which} error, ${name}`,
      figure,
      low: 0,
      high,
      text: `${which} |error| of delta-L*, ${name}: ${figureText(figure)} (asked at most ${high}; of a single print ${single})`,
    };
  });
}
