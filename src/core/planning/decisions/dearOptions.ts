/** Options that no best plan takes, left out before solving: the program shrinks to a part, the best plan stays. */
import { type AllowedSearch, optionCost } from "./mixSearch.ts";

/**
 * `search` without the options that cost more than serving their garment alone would: opening the cheapest mix and set-up
 * for it besides all that is open. A plan that takes such an option is made cheaper by that exchange. Not with a limit on
 * the number of mixes, which may forbid the exchange: there only what is dearer than leaving the garment out goes.
 */
export function withoutDearOptions(search: AllowedSearch): AllowedSearch {
  const { garments, mixes, setUps, options, keptMixIds, atMostMixes } = search;
  const openingOf = new Map(mixes.map(({ id, openingCost }) => [id, keptMixIds.has(id) ? 0 : openingCost]));
  const setUpOpening = new Map(setUps.map(({ id, openingCost }) => [id, openingCost]));
  const dearest = new Map(garments.map(({ id, unservedCost }) => [id, unservedCost ?? Infinity]));
  if (atMostMixes === null) {
    for (const option of options) {
      const { garmentId, mixId, setUpId } = option;
      const alone = optionCost(option) + openingOf.get(mixId)! + setUpOpening.get(setUpId)!;
      if (alone < (dearest.get(garmentId) ?? Infinity)) dearest.set(garmentId, alone);
    }
  }
  return {
    ...search,
    options: options.filter((option) => optionCost(option) <= dearest.get(option.garmentId)!),
  };
}
