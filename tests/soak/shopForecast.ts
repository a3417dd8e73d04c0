// What is said of every target print of a synthetic shop, beside what it truly came to: out of the prior, or after learning.
import { printableInk } from "../../src/core/prediction/printableInk.ts";
import { workspaceFor } from "../../src/core/prediction/printedColour.ts";
import { spreadOf } from "../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../src/core/prediction/wettableGarment.ts";
import { SHOP_VIEWING } from "../generator/shopReadings.ts";
import type { TargetCell, TargetGarment } from "../generator/targetGarments.ts";

/** Change of L* as forecast: the ends of the 90 % interval and its middle. */
export interface Forecast {
  readonly deltaL5: number;
  readonly deltaL50: number;
  readonly deltaL95: number;
}

/** Forecasts of all cells of one garment. */
export type Forecaster = (target: TargetGarment) => readonly Forecast[];

/** A cell, its garment and its forecast. */
export interface ForecastCell {
  readonly target: TargetGarment;
  readonly cell: TargetCell;
  readonly forecast: Forecast;
}

/** Of no effect on the quantiles; a spread is not asked for without one. */
export const ANY_BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };

/** The spread as it is before any test print. */
export const forecastFromPrior: Forecaster = ({ cells }) => {
  const cloth = wettableGarment(cells[0]!.print.garment.garment, SHOP_VIEWING);
  const room = workspaceFor(cloth);
  return cells.map(({ print }) =>
    spreadOf(room, cloth, printableInk(print.mix, print.application), ANY_BAND),
  );
};

/** Every cell of `targets` as `forecaster` sees it. */
export function forecastCells(targets: readonly TargetGarment[], forecaster: Forecaster): ForecastCell[] {
  return targets.flatMap((target) =>
    forecaster(target).map((forecast, i) => ({ target, cell: target.cells[i]!, forecast })),
  );
}
