/** Deliveries of the inks in a batch, and what each part brings into it by its data sheet. */
import type { RestrictedPart } from "../../core/planning/ink/mixRestrictions.ts";
import type { ItemFraction } from "../../core/planning/ink/potRecipe.ts";
import type { WeighSheetLine } from "../../core/planning/ink/weighSheet.ts";
import { recipeItem } from "../lookup.ts";
import type { InkLot, Shelf } from "../shelfDocument.ts";
import type { PartLots } from "./inkBatch.ts";

/** Last of all days, for a lot of which nobody wrote when it came. */
const UNKNOWN_DAY = "9999-12-31";

const received = ({ receivedOn }: InkLot) => receivedOn ?? UNKNOWN_DAY;

/** The lots of the items, in the order given; a lot may be used on its last day. */
export function partLots(itemIds: readonly string[], shelf: Shelf, today: string): PartLots[] {
  return itemIds.flatMap((itemId) => {
    const item = recipeItem(shelf, itemId)?.item;
    if (item === undefined) return [];
    const isUsable = ({ expiresOn }: InkLot) => expiresOn === null || today <= expiresOn;
    const usable = item.lots
      .filter(isUsable)
      .toSorted((one, other) =>
        received(one) < received(other) ? -1 : received(one) > received(other) ? 1 : 0,
      );
    const expired = item.lots.filter((lot) => !isUsable(lot));
    return [{ itemId, name: item.name, usable, expired, chosen: usable[0] ?? null }];
  });
}

const earliest = (days: readonly (string | null)[]): string | null =>
  days.filter((day) => day !== null).toSorted()[0] ?? null;

/**
 * The parts of a recipe with what the shop entered of them. A part's day is the earliest of the lot it is taken from
 * and of the masters that bring some of it. @throws RangeError for an item that the shelf has not.
 */
export function restrictedParts(
  recipe: readonly ItemFraction[],
  lines: readonly WeighSheetLine[],
  lots: readonly PartLots[],
  shelf: Shelf,
): RestrictedPart[] {
  return recipe.map(({ itemId, massFraction }) => {
    const item = recipeItem(shelf, itemId)?.item;
    if (item === undefined)
      throw new RangeError(`the shelf must have every item of the recipe; missing ${itemId}`);
    const ofMasters = lines
      .filter((line) => line.role === "master" && line.contents.some((part) => part.itemId === itemId))
      .map((line) => shelf.masters.find((master) => master.id === line.id)?.expiresOn ?? null);
    const ofLot = lots.find((part) => part.itemId === itemId)?.chosen?.expiresOn ?? null;
    return {
      itemId,
      massFraction,
      cureCelsius: item.cure.filmCelsius,
      cureSeconds: item.cure.seconds,
      highestCelsius: item.highestCelsius,
      lowCure: item.lowCure,
      hazards: item.hazards,
      largestFraction: item.largestFraction,
      expiresOn: earliest([ofLot, ...ofMasters]),
    };
  });
}
