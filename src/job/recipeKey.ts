/** A recipe as canonical text: equal for equal recipes, so that a rule, a search or a signature can name one. */
import type { Recipe } from "./recipeParts.ts";

/** Far below what anyone weighs, far above the rounding of a tint dragged away and back. */
const FRACTION_DIGITS = 9;

/** The parts that weigh something, in the order of their text. Signatures are compared by it: it must never change. */
export function recipeKey(recipe: Recipe): string {
  return recipe
    .map(({ itemId, massFraction }) => ({ itemId, text: massFraction.toFixed(FRACTION_DIGITS) }))
    .filter(({ text }) => Number(text) !== 0)
    .map(({ itemId, text }) => `${itemId}=${text}`)
    .sort()
    .join("+");
}

/** The recipe that a key was made of, parts of nothing aside; what may follow it after a blank is no part of the recipe. */
export function recipeOfKey(key: string): Recipe {
  const [recipe = ""] = key.split(" ", 1);
  return recipe
    .split("+")
    .map((part) => part.split("="))
    .flatMap(([itemId = "", fraction = ""]) => {
      const massFraction = Number(fraction);
      return itemId !== "" && massFraction > 0 ? [{ itemId, massFraction }] : [];
    });
}
