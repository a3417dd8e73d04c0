/** The readings of a lot that stand beside its prediction: same base and set-up, one point for each amount of tint. */
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import { printedRecipe } from "../evidenceInputs.ts";
import type { Library } from "../libraryDocument.ts";
import { mainBaseId, type Recipe } from "../recipeParts.ts";
import type { TestPrint } from "../recordDocument.ts";
import { standing } from "../standing.ts";
import { printSeries } from "./printSeries.ts";

export interface LotReading {
  readonly record: TestPrint;
  /** Of the tint that the chart runs over. */
  readonly massFraction: number;
  readonly deltaL: number;
}

export interface LotReadings {
  readonly points: readonly LotReading[];
  /** Prints of the lot that are not drawn: another base, screen, light, or judged by eye. */
  readonly otherCount: number;
}

/** The latest unwashed reading of each print on the lot; only what compares with the curve is a point. */
export function lotReadings(
  library: Library,
  lotId: string,
  print: { readonly recipe: Recipe; readonly setUpId: string; readonly tintId: string | null },
  viewing: Viewing,
): LotReadings {
  const { shelf } = library;
  const baseId = mainBaseId(print.recipe, shelf);
  const onLot = standing(library.testPrints).filter(({ garmentLotId }) => garmentLotId === lotId);
  const own = printSeries(onLot, viewing);
  const points = own.flatMap(({ resting }) => {
    const last = resting.at(-1);
    if (last === undefined || last.deltaL === null || last.means === null) return [];
    const { record, means, deltaL } = last;
    const { illuminant, observer } = means.viewing;
    if (illuminant !== viewing.illuminant || observer !== viewing.observer) return [];
    const recipe = printedRecipe(record);
    if (record.setUpId !== print.setUpId || mainBaseId(recipe, shelf) !== baseId) return [];
    const colourants = recipe.filter(
      (part) => part.massFraction > 0 && shelf.colourants.some(({ id }) => id === part.itemId),
    );
    // A print with another tint is no point of this curve.
    if (colourants.some(({ itemId }) => itemId !== print.tintId)) return [];
    return [{ record, deltaL, massFraction: colourants[0]?.massFraction ?? 0 }];
  });
  return { points, otherCount: own.length - points.length };
}
