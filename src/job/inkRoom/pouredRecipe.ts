/** What is in the pots of a mix, where they were weighed: what its prints are predicted with from then on. */
import type { Documents } from "../documents.ts";
import type { Mix } from "../mixDocument.ts";
import { isSameRecipe, type Recipe } from "../recipeParts.ts";
import { standing } from "../standing.ts";
import { potsOfMix } from "./batchOf.ts";
import { pouredOf, recipeOfPots } from "./poured.ts";

/** Recipe of all complete pots of the mix as it is now, by what is in them; null where none is complete. */
export function pouredRecipe(documents: Documents, mix: Mix): Recipe | null {
  const pots = standing(potsOfMix(documents, mix.id)).filter((pot) => isSameRecipe(pot.recipe, mix.recipe));
  return recipeOfPots(pots.map((pot) => pouredOf(pot, documents.library.potEntries)));
}
