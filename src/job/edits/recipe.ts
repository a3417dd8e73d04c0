/** Arithmetic of recipes: mass fractions that sum to 1 whatever is changed. */
import type { Mix, MixComponent } from "../mixDocument.ts";
import type { Shelf } from "../shelfDocument.ts";

const sumOf = (parts: readonly MixComponent[]): number =>
  parts.reduce((sum, part) => sum + part.massFraction, 0);

/** The room that a colourant could take up at most: 1 less the other colourants. */
export function tintRoomFraction(mix: Pick<Mix, "recipe">, shelf: Shelf, colourantId: string): number {
  const others = mix.recipe.filter(
    (part) => part.itemId !== colourantId && shelf.colourants.some((item) => item.id === part.itemId),
  );
  return Math.max(0, 1 - sumOf(others));
}

/**
 * The recipe with `colourantId` at `massFraction` and everything but colourants scaled to fill the rest.
 * @throws RangeError outside 0..room; where there is no base; or where several bases would vanish together, since
 * their proportions could not come back.
 */
export function recipeWithTint(
  recipe: readonly MixComponent[],
  shelf: Shelf,
  colourantId: string,
  massFraction: number,
): MixComponent[] {
  const colourantIds = new Set(shelf.colourants.map((item) => item.id));
  const bases = recipe.filter((part) => !colourantIds.has(part.itemId));
  const others = recipe.filter((part) => colourantIds.has(part.itemId) && part.itemId !== colourantId);
  const rest = 1 - sumOf(others) - massFraction;
  if (!(massFraction >= 0 && rest >= 0)) {
    throw new RangeError(`massFraction must be in 0..${1 - sumOf(others)}; got ${massFraction}`);
  }
  const baseSum = sumOf(bases);
  const isInRecipe = recipe.some((part) => part.itemId === colourantId);
  if (bases.length === 0 && rest > 0) throw new RangeError("a tint needs a base in the mix; got none");
  if (bases.length > 1 && !(rest > 0 && baseSum > 0)) {
    throw new RangeError(`massFraction must leave room for the bases; got ${massFraction}`);
  }
  const scaled = recipe.map((part) => {
    if (part.itemId === colourantId) return { ...part, massFraction };
    if (colourantIds.has(part.itemId)) return part;
    return { ...part, massFraction: bases.length === 1 ? rest : (part.massFraction * rest) / baseSum };
  });
  return isInRecipe ? scaled : [...scaled, { itemId: colourantId, massFraction }];
}

/** The recipe without an item. */
export function recipeWithoutItem(recipe: readonly MixComponent[], itemId: string): MixComponent[] {
  return recipe.filter((part) => part.itemId !== itemId);
}
