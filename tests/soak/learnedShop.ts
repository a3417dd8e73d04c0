// What is said of a garment's prints once a shop's library is learned.
import { beliefFor } from "../../src/core/evidence/beliefFor.ts";
import type { Posterior } from "../../src/core/evidence/posterior.ts";
import { deltaLQuantiles } from "../../src/core/evidence/quantiles.ts";
import { wettableGarment } from "../../src/core/prediction/wettableGarment.ts";
import { SHOP_VIEWING } from "../generator/shopReadings.ts";
import type { Forecaster } from "./shopForecast.ts";

/** What `posterior` says of a garment's prints. */
export function forecastFrom(posterior: Posterior): Forecaster {
  return ({ cells }) => {
    const cloth = wettableGarment(cells[0]!.print.garment.garment, SHOP_VIEWING);
    return cells.map(({ print }) => {
      const { p5, p50, p95 } = deltaLQuantiles(beliefFor(posterior, print, SHOP_VIEWING), print, cloth);
      return { deltaL5: p5, deltaL50: p50, deltaL95: p95 };
    });
  };
}
