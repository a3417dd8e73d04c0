/** A recipe in one line, every tint with what its percentage is a percentage of. */
import type { RecipeLine } from "../../job/inkRoom/inkBatch.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import { strengthDefinitionWords } from "../words/shelfWords.ts";

/** "99.5 % Curable clear, 0.5 % Black (of ready-made ink)". */
export function recipeWords(recipe: readonly RecipeLine[], shelf: Shelf): string {
  return recipe
    .map(({ itemId, name, massFraction }) => {
      const colourant = shelf.colourants.find(({ id }) => id === itemId);
      const what =
        colourant === undefined ? "" : ` (of ${strengthDefinitionWords(colourant.strengthDefinition)})`;
      return `${percentWords(massFraction)} ${name}${what}`;
    })
    .join(", ");
}

export function RecipeWords(props: { readonly recipe: readonly RecipeLine[]; readonly shelf: Shelf }) {
  return <p className="quiet">{recipeWords(props.recipe, props.shelf)}</p>;
}
