/** What keeps a mix from being mixed or predicted, as codes. Cheap enough for every step of a drag. */
import { recipeItem } from "./lookup.ts";
import { MIX_SUM_TOLERANCE, type Mix } from "./mixDocument.ts";
import type { Problem } from "./problem.ts";
import type { Shelf } from "./shelfDocument.ts";

/** A limit is not overstepped by the rounding of a sum. */
const LIMIT_ROUNDING = 1e-9;

/**
 * Problems of a mix, with paths inside the mix:
 * - `component-missing`: the shelf has no such item (detail: its id)
 * - `above-data-sheet-limit`: values name, massFraction, largestFraction
 * - `mix-sum`: values sum
 * - `no-base`: nothing that wets the cloth; a ready-made ink counts as its own base
 */
export function mixProblems(mix: Pick<Mix, "recipe">, shelf: Shelf): Problem[] {
  const problems: Problem[] = [];
  let sum = 0;
  let hasBase = false;
  mix.recipe.forEach(({ itemId, massFraction }, index) => {
    sum += massFraction;
    const found = recipeItem(shelf, itemId);
    if (found === null) {
      problems.push({ code: "component-missing", where: `recipe[${index}].itemId`, detail: itemId });
      return;
    }
    const { name, largestFraction } = found.item;
    if (massFraction > largestFraction + LIMIT_ROUNDING) {
      problems.push({
        code: "above-data-sheet-limit",
        where: `recipe[${index}].massFraction`,
        detail: itemId,
        values: { name, massFraction, largestFraction },
      });
    }
    const isOwnBase = found.kind === "base" || found.item.strengthDefinition === "ready-made-ink";
    if (isOwnBase && massFraction > 0) hasBase = true;
  });
  if (!(Math.abs(sum - 1) <= MIX_SUM_TOLERANCE)) {
    problems.push({ code: "mix-sum", where: "recipe", values: { sum } });
  }
  if (!hasBase && !problems.some((problem) => problem.code === "component-missing")) {
    problems.push({ code: "no-base", where: "recipe" });
  }
  return problems;
}
