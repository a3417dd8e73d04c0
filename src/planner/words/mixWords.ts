/** How a mix is named and how its recipe reads: "0.25 % black", "no tint". */
import { recipeItem } from "../../job/lookup.ts";
import type { Mix, MixComponent } from "../../job/mixDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { percentWords } from "./garmentWords.ts";

const NAME_LENGTH = 120;

interface NamedPart {
  readonly name: string;
  readonly massFraction: number;
  readonly isColourant: boolean;
  readonly isLargestBase: boolean;
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}

function namedParts(recipe: readonly MixComponent[], shelf: Shelf): NamedPart[] {
  const present = recipe.filter(({ massFraction }) => massFraction > 0);
  const bases = present.filter(({ itemId }) => recipeItem(shelf, itemId)?.kind === "base");
  const largest = bases.reduce<MixComponent | null>(
    (best, part) => (best === null || part.massFraction > best.massFraction ? part : best),
    null,
  );
  return present.map(({ itemId, massFraction }) => {
    const found = recipeItem(shelf, itemId);
    return {
      name: found?.item.name ?? "an ink no longer on the shelf",
      massFraction,
      isColourant: found?.kind === "colourant",
      isLargestBase: itemId === largest?.itemId,
    };
  });
}

function partsWords(parts: readonly NamedPart[]): string {
  return parts
    .map(({ name, massFraction }) => `${percentWords(massFraction)} ${lowerFirst(name)}`)
    .join(", ");
}

/** Everything but the base that carries the mix: "0.25 % black, 5 % curable reducer"; "no tint" where there is none. */
export function tintWords(recipe: readonly MixComponent[], shelf: Shelf): string {
  const parts = namedParts(recipe, shelf).filter(({ isLargestBase }) => !isLargestBase);
  return parts.length === 0 ? "no tint" : partsWords(parts);
}

/** What a mix is called as long as nobody names it: its base and what is in it. */
export function recipeName(recipe: readonly MixComponent[], shelf: Shelf): string {
  const parts = namedParts(recipe, shelf);
  const base = parts.find(({ isLargestBase }) => isLargestBase);
  const others = parts
    .filter(({ isLargestBase }) => !isLargestBase)
    .map(
      ({ name, massFraction }) => `${percentWords(massFraction).replace("\u00a0", " ")} ${lowerFirst(name)}`,
    );
  return [...(base === undefined ? [] : [base.name]), ...others].join(" + ").slice(0, NAME_LENGTH);
}

/** Whether the name only says what the recipe says; then it follows the recipe when that is changed. */
export function isNamedByRecipe(mix: Pick<Mix, "name" | "recipe">, shelf: Shelf): boolean {
  return mix.name.trim() === "" || mix.name === recipeName(mix.recipe, shelf);
}

/** The two lines that head a column: the base and what is in it, or the mix's own name and all of its recipe. */
export function mixHeading(mix: Mix, shelf: Shelf): { readonly title: string; readonly recipe: string } {
  const parts = namedParts(mix.recipe, shelf);
  const tint = tintWords(mix.recipe, shelf);
  if (!isNamedByRecipe(mix, shelf)) {
    return { title: mix.name, recipe: parts.length > 1 ? partsWords(parts) : tint };
  }
  const base = parts.find(({ isLargestBase }) => isLargestBase);
  return { title: base?.name ?? recipeName(mix.recipe, shelf), recipe: tint };
}

/** A mix in one line, wherever it is spoken of. */
export function mixName(mix: Mix, shelf: Shelf): string {
  return mix.name.trim() === "" ? recipeName(mix.recipe, shelf) : mix.name;
}
