/** The batches as runs on press, in the order with the fewest wash-ups. */

import { RELATIVE_STRENGTH } from "../../core/optics/colourant.ts";
import { type PressRun, planRunOrder } from "../../core/planning/ink/runOrder.ts";
import { recipeItem } from "../lookup.ts";
import type { Recipe } from "../recipeParts.ts";
import { mainBaseId } from "../recipeParts.ts";
import type { Shelf } from "../shelfDocument.ts";
import type { InkBatch, InkUse } from "./inkBatch.ts";
import type { InkRoom, InkRun } from "./inkRoom.ts";

/** How dark an ink is on press: its tints counted as ready-made ink, white below nothing, so that white comes first. */
export function inkDarkness(recipe: Recipe, shelf: Shelf): number {
  return recipe.reduce((sum, { itemId, massFraction }) => {
    const found = recipeItem(shelf, itemId);
    if (found?.kind !== "colourant") return sum;
    const { optics, strengthDefinition } = found.item;
    return (
      sum + (optics.kind === "white" ? -massFraction : massFraction * RELATIVE_STRENGTH[strengthDefinition])
    );
  }, 0);
}

/**
 * The base that makes up most of the mix. White inks are a family of their own: what is left of one in a clear veils
 * dark cloth (trade: white in a clear turns it milky), so no wiping goes from one to the other.
 */
function familyOf(batch: InkBatch, shelf: Shelf): string {
  const baseId = mainBaseId(batch.recipe, shelf) ?? "";
  return batch.kind === "white" ? `white in ${baseId}` : baseId;
}

function pressRun(batch: InkBatch, use: InkUse, shelf: Shelf): PressRun {
  return {
    id: `${batch.mixId} ${use.id}`,
    mixId: batch.mixId,
    // A place has its own artwork and a set-up its own mesh, so both together are a screen.
    screenId: use.id,
    baseFamilyId: familyOf(batch, shelf),
    lowCure: batch.restrictions.lowCure !== "none",
    darkness: inkDarkness(batch.recipe, shelf),
    garmentIds: use.lines.map(({ lineId }) => lineId),
  };
}

/** The runs of all batches in order, with what each change takes. */
export function pressRuns(batches: readonly InkBatch[], shelf: Shelf): InkRoom["runs"] {
  const shown = new Map<string, InkRun>();
  const runs: PressRun[] = [];
  for (const batch of batches) {
    for (const use of batch.uses) {
      const run = pressRun(batch, use, shelf);
      runs.push(run);
      const { placeName, setUpName, pieceCount } = use;
      const { mixId, mixName } = batch;
      shown.set(run.id, { useId: use.id, mixId, mixName, placeName, setUpName, pieceCount, change: null });
    }
  }
  const { runIds, changes, ...totals } = planRunOrder(runs, shelf.defaults.changeMinutes);
  const inOrder = runIds.flatMap((id, index) => {
    const run = shown.get(id);
    return run === undefined ? [] : [{ ...run, change: index === 0 ? null : (changes[index - 1] ?? null) }];
  });
  const { minutes, washUpCount, screenChangeCount, proven } = totals;
  return { inOrder, minutes, washUpCount, screenChangeCount, proven };
}
