/** What rounding and one step of the scale make of each garment that a batch is printed on, in delta-L*. */
import { type WeighingError, weighingErrorOn } from "../../core/planning/ink/tintError.ts";
import type { Documents } from "../documents.ts";
import { lotOfLine } from "../lookup.ts";
import { applicationFor, garmentFor, pouredInkFor } from "../predictionInputs.ts";
import type { InkBatch } from "./inkBatch.ts";

export interface GarmentWeighingError {
  readonly lineId: string;
  readonly placeId: string;
  readonly name: string;
  readonly error: WeighingError;
}

/**
 * The error of the batch's sheet on every garment that can be predicted, the most sensitive first; empty without a
 * sheet. A few exact colours for each garment and line of the sheet: worth an idle moment, not every keystroke.
 */
export function weighingErrorsOf(documents: Documents, batch: InkBatch): GarmentWeighingError[] {
  const { job, library } = documents;
  const { shelf } = library;
  const { sheet } = batch;
  if (sheet?.ok !== true) return [];
  const recipe = sheet.trueRecipe.map((part) => ({ ...part }));
  const clothCoverFraction = batch.white?.clothCoverFraction ?? null;
  const ink = pouredInkFor({ recipe, clothCoverFraction }, shelf);
  if (!ink.ok) return [];
  const parts = recipe.flatMap(({ itemId }, index) => {
    const part = ink.mix.parts[index];
    return part === undefined ? [] : [{ itemId, part }];
  });
  return batch.uses
    .flatMap((use) => {
      const place = job.places.find(({ id }) => id === use.placeId);
      const setUp = shelf.setUps.find(({ id }) => id === use.setUpId);
      if (place === undefined || setUp === undefined) return [];
      const application = applicationFor(setUp, place, shelf);
      return use.lines.flatMap(({ lineId, name }) => {
        const line = job.lines.find(({ id }) => id === lineId);
        const lot = line === undefined ? null : lotOfLine(documents, line);
        const garment = lot === null ? null : garmentFor(lot, shelf);
        if (garment?.ok !== true) return [];
        const print = {
          garment: garment.garment,
          application,
          viewing: job.viewing,
          clothCoverFraction,
          parts,
        };
        return [{ lineId, placeId: place.id, name, error: weighingErrorOn(sheet, print) }];
      });
    })
    .sort((one, other) => other.error.oneStepDeltaL - one.error.oneStepDeltaL);
}
