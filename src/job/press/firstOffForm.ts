/** What a first-off's form begins with: the garment, mix and set-up that are chosen, so that nobody picks them at the press. */
import type { Documents } from "../documents.ts";
import { potsOfMix } from "../inkRoom/batchOf.ts";
import { pouredOf, recipeOfPots } from "../inkRoom/poured.ts";
import type { Line, Place } from "../jobDocument.ts";
import { chosenCandidate, mixOf } from "../lookup.ts";
import type { Mix } from "../mixDocument.ts";
import { isSameRecipe } from "../recipeParts.ts";
import type { BenchForm } from "../recordBook/benchForm.ts";
import type { TestPrint } from "../recordDocument.ts";
import { standing } from "../standing.ts";

/** A gram's hundredth is finer than any scale of an ink room. */
const GRAM_DECIMALS = 2;

/** What is in the complete pots of the mix as it is now, masters taken apart; null where none was weighed. */
export function gramsInPots(documents: Documents, mix: Mix): TestPrint["actualGrams"] {
  const pots = standing(potsOfMix(documents, mix.id))
    .filter((pot) => isSameRecipe(pot.recipe, mix.recipe))
    .map((pot) => pouredOf(pot, documents.library.potEntries));
  const recipe = recipeOfPots(pots);
  if (recipe === null) return null;
  const total = pots.reduce((sum, { state }) => sum + (state?.totalGrams ?? 0), 0);
  return recipe.map(({ itemId, massFraction }) => ({
    itemId,
    grams: Number((massFraction * total).toFixed(GRAM_DECIMALS)),
  }));
}

/** The printed part of the form; null where no mix is chosen for the line there. */
export function firstOffBegins(documents: Documents, line: Line, place: Place): Partial<BenchForm> | null {
  const { job } = documents;
  const candidate = chosenCandidate(job, line.id, place.id);
  const mix = candidate === null ? null : mixOf(job, candidate.mixId);
  if (candidate === null || mix === null) return null;
  const { halftoneFraction, smoothed } = place;
  return {
    garmentLotId: line.garmentLotId,
    recipe: mix.recipe,
    actualGrams: gramsInPots(documents, mix),
    setUpId: candidate.setUpId,
    halftoneFraction,
    smoothed,
  };
}
