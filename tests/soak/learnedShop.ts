// What is said of a garment's prints once a shop's library is learned: the spread that the planner shows.
import { beliefFor } from "../../src/core/evidence/beliefFor.ts";
import type { Posterior } from "../../src/core/evidence/posterior.ts";
import { believedCell } from "../../src/core/prediction/believedCell.ts";
import { cellResponse } from "../../src/core/prediction/cellResponse.ts";
import { workspaceFor } from "../../src/core/prediction/printedColour.ts";
import { spreadOf } from "../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../src/core/prediction/wettableGarment.ts";
import { SHOP_VIEWING } from "../generator/shopReadings.ts";
import { ANY_BAND, type Forecaster } from "./shopForecast.ts";

/** What `posterior` says of a garment's prints. */
export function forecastFrom(posterior: Posterior): Forecaster {
  return ({ cells }) => {
    const cloth = wettableGarment(cells[0]!.print.garment.garment, SHOP_VIEWING);
    const room = workspaceFor(cloth);
    return cells.map(({ print }) => {
      const belief = beliefFor(posterior, print, SHOP_VIEWING);
      const cell = believedCell(cloth, print.mix, print.application, belief);
      const response = cellResponse(room, cell.cloth, cell.ink, ANY_BAND.hueLimit, cell.doubt);
      return spreadOf(room, cell.cloth, cell.ink, ANY_BAND, response);
    });
  };
}
