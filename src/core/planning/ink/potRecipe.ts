/** What goes into a pot and what is then in it: shelf items, the masters that carry some of them, and their fractions. */
import { MASS_FRACTION_TOLERANCE } from "../../optics/mix.ts";

export type ComponentRole = "base" | "additive" | "reducer" | "colourant";

/** One part of a recipe; mass fractions of a recipe sum to 1. */
export interface RecipeComponent {
  readonly itemId: string;
  readonly role: ComponentRole;
  readonly massFraction: number;
}

/** A colourant dispersed beforehand in a base. */
export interface AvailableMaster {
  readonly id: string;
  readonly colourantId: string;
  readonly baseId: string;
  /** Part of the master that is colourant, above 0 and below 1. */
  readonly massFraction: number;
}

/** A shelf item and its mass fraction. */
export interface ItemFraction {
  readonly itemId: string;
  readonly massFraction: number;
}

/** Something that is weighed into a pot: its grams, and what a gram of it holds (fractions that sum to 1). */
export interface PotPart {
  readonly grams: number;
  readonly contents: readonly ItemFraction[];
}

/** What a gram of a master holds. */
export function masterContents(master: AvailableMaster): readonly ItemFraction[] {
  return [
    { itemId: master.colourantId, massFraction: master.massFraction },
    { itemId: master.baseId, massFraction: 1 - master.massFraction },
  ];
}

/**
 * Mass fractions of the shelf items in a pot, masters taken apart, in the order in which the items first occur; they
 * sum to 1. Items of no grams are left out.
 * @throws RangeError for negative or infinite grams, or a pot that holds nothing.
 */
export function recipeOfPot(parts: readonly PotPart[]): ItemFraction[] {
  const gramsByItem = new Map<string, number>();
  let total = 0;
  for (const { grams, contents } of parts) {
    if (!(grams >= 0 && grams < Infinity))
      throw new RangeError(`grams must be >= 0 and finite; got ${grams}`);
    total += grams;
    for (const { itemId, massFraction } of contents) {
      gramsByItem.set(itemId, (gramsByItem.get(itemId) ?? 0) + grams * massFraction);
    }
  }
  if (total === 0) throw new RangeError("a pot must hold something; got 0 g");
  return [...gramsByItem]
    .filter(([, grams]) => grams > 0)
    .map(([itemId, grams]) => ({ itemId, massFraction: grams / total }));
}

/**
 * Asks that a recipe names each item once and that its mass fractions are in 0..1 and sum to 1 (within the rounding of
 * a typed percentage). @throws RangeError otherwise.
 */
export function requireRecipe(recipe: readonly RecipeComponent[]): void {
  let sum = 0;
  for (const { massFraction } of recipe) {
    if (!(massFraction >= 0 && massFraction <= 1)) {
      throw new RangeError(`massFraction must be in 0..1; got ${massFraction}`);
    }
    sum += massFraction;
  }
  if (!(Math.abs(sum - 1) <= MASS_FRACTION_TOLERANCE)) {
    throw new RangeError(`mass fractions of a recipe must sum to 1; got ${sum}`);
  }
  const ids = new Set(recipe.map((component) => component.itemId));
  if (ids.size !== recipe.length) throw new RangeError("a recipe must name each item once");
}

/** Asks for a master that is a dilution. @throws RangeError for a fraction not between 0 and 1. */
export function requireMaster(master: AvailableMaster): void {
  if (!(master.massFraction > 0 && master.massFraction < 1)) {
    throw new RangeError(`massFraction of a master must be between 0 and 1; got ${master.massFraction}`);
  }
}
