/** What a recipe is made of: its shelf items, its main base, and whether another one is the same. */
import { type RecipeItem, recipeItem } from "./lookup.ts";
import type { MixComponent } from "./mixDocument.ts";
import type { Shelf } from "./shelfDocument.ts";

export type Recipe = readonly MixComponent[];

/** Far below what anyone weighs. */
const SAME_FRACTION = 1e-6;

/** The shelf items of a recipe with their fractions; what the shelf has no more, or weighs nothing, is left out. */
export function partsOf(recipe: Recipe, shelf: Shelf): (RecipeItem & { readonly massFraction: number })[] {
  return recipe.flatMap(({ itemId, massFraction }) => {
    const found = recipeItem(shelf, itemId);
    return found === null || massFraction === 0 ? [] : [{ ...found, massFraction }];
  });
}

/** The id of what wets the cloth most: a base before additives and reducers, these before a ready-made ink. */
export function mainBaseId(recipe: Recipe, shelf: Shelf): string | null {
  const parts = partsOf(recipe, shelf).toSorted((one, other) => other.massFraction - one.massFraction);
  const found =
    parts.find((part) => part.kind === "base" && part.item.role === "base") ??
    parts.find((part) => part.kind === "base") ??
    parts[0];
  return found?.item.id ?? null;
}

/** Whether two recipes are one, the order and parts of nothing aside. */
export function isSameRecipe(one: Recipe, other: Recipe): boolean {
  const fraction = (recipe: Recipe, id: string) =>
    recipe.find((part) => part.itemId === id)?.massFraction ?? 0;
  const ids = new Set([...one, ...other].map((part) => part.itemId));
  return [...ids].every((id) => Math.abs(fraction(one, id) - fraction(other, id)) <= SAME_FRACTION);
}
