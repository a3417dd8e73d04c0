/** What one step of a scale, and the rounding to it, make of the print on a given garment, in delta-L*. */
import type { Viewing } from "../../colorimetry/viewing.ts";
import type { Application, Garment, InkMix, MixPart } from "../../prediction/inputs.ts";
import { printedColour, workspaceFor } from "../../prediction/printedColour.ts";
import { printedFilm } from "../../prediction/printedFilm.ts";
import { wettableGarment } from "../../prediction/wettableGarment.ts";
import { type ItemFraction, recipeOfPot } from "./potRecipe.ts";
import type { WrittenWeighSheet } from "./weighSheet.ts";

/** The print on which a weighing error is looked at. */
export interface WeighedPrint {
  readonly garment: Garment;
  readonly application: Application;
  readonly viewing: Viewing;
  /** Part of the cloth a scattering film covers, 0..1; null: the default for its white content. */
  readonly clothCoverFraction: number | null;
  /** How the model sees each shelf item of the sheet, bases brought by masters included; its mass fraction is not read. */
  readonly parts: readonly { readonly itemId: string; readonly part: MixPart }[];
}

/** All changes of L* against the bare cloth are negative where the print is darker. */
export interface WeighingError {
  /** Change of L* printed with the recipe as wanted, and with the one of the rounded grams. */
  readonly wantedDeltaL: number;
  readonly weighedDeltaL: number;
  /** What rounding alone does: the second minus the first. */
  readonly roundingDeltaL: number;
  /** What one step more of each line would do, in weighing order. */
  readonly steps: readonly { readonly lineId: string; readonly deltaL: number }[];
  /** The largest of them by size: "one step of this scale". */
  readonly oneStepDeltaL: number;
}

/** The mix of the model for a recipe of shelf items. @throws RangeError for an item that `parts` does not have. */
export function inkMixOfRecipe(
  recipe: readonly ItemFraction[],
  parts: WeighedPrint["parts"],
  clothCoverFraction: number | null,
): InkMix {
  return {
    parts: recipe.map(({ itemId, massFraction }) => {
      const found = parts.find((entry) => entry.itemId === itemId);
      if (found === undefined)
        throw new RangeError(`parts must have every item of the recipe; missing ${itemId}`);
      return { ...found.part, massFraction };
    }),
    clothCoverFraction,
  };
}

/**
 * The error of weighing by `sheet`, in delta-L* of `print`, by predicting the print with the unrounded recipe, with the
 * rounded one and with one scale step more of each line (the expected colour of model.md §3 and §4; its spread is
 * another matter). @throws RangeError as `inkMixOfRecipe` and the prediction.
 */
export function weighingErrorOn(sheet: WrittenWeighSheet, print: WeighedPrint): WeighingError {
  const cloth = wettableGarment(print.garment, print.viewing);
  const room = workspaceFor(cloth);
  const deltaLWith = (grams: readonly number[]): number => {
    const recipe = recipeOfPot(sheet.lines.map(({ contents }, i) => ({ grams: grams[i]!, contents })));
    const mix = inkMixOfRecipe(recipe, print.parts, print.clothCoverFraction);
    return printedColour(room, cloth, printedFilm(mix, print.application)).L - cloth.bareLab.L;
  };
  const weighed = sheet.lines.map((line) => line.grams);
  const wantedDeltaL = deltaLWith(sheet.lines.map((line) => line.exactGrams));
  const weighedDeltaL = deltaLWith(weighed);
  const steps = sheet.lines.map((line, i) => ({
    lineId: line.id,
    deltaL:
      deltaLWith(weighed.map((grams, k) => (k === i ? grams + sheet.scaleStepGrams : grams))) - weighedDeltaL,
  }));
  const oneStepDeltaL = steps.reduce((most, { deltaL }) => Math.max(most, Math.abs(deltaL)), 0);
  return { wantedDeltaL, weighedDeltaL, roundingDeltaL: weighedDeltaL - wantedDeltaL, steps, oneStepDeltaL };
}
