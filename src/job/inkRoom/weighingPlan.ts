/** How a batch is weighed: which pots, which scale, and the sheet of one pot. */
import type { AvailableMaster, RecipeComponent } from "../../core/planning/ink/potRecipe.ts";
import { potsFor } from "../../core/planning/ink/pots.ts";
import { writeWeighSheet } from "../../core/planning/ink/weighSheet.ts";
import type { Shelf } from "../shelfDocument.ts";
import type { Scale } from "../shopDefaultsDocument.ts";
import type { BatchNotice, BatchSheet, InkBatch } from "./inkBatch.ts";
import type { BatchWishes, ShelfMaster } from "./inkRoom.ts";
import { sheetLineName } from "./masters.ts";

export type WeighingPlan = Pick<InkBatch, "pots" | "scale" | "sheet"> & {
  readonly notices: readonly BatchNotice[];
};

/** The finest scale that carries the pot; where none does, the one that carries most. Null without scales. */
function scaleFor(scales: readonly Scale[], potGrams: number, wanted: string | undefined): Scale | null {
  const asked = scales.find(({ id }) => id === wanted);
  if (asked !== undefined) return asked;
  const carries = (scale: Scale) => scale.maxGrams ?? Infinity;
  const finest = scales.toSorted((one, other) => one.stepGrams - other.stepGrams);
  const strongest = scales.toSorted((one, other) => carries(other) - carries(one));
  return finest.find((scale) => carries(scale) >= potGrams) ?? strongest[0] ?? null;
}

function planPots(
  shelf: Shelf,
  batchGrams: number,
  density: number,
  potSizeId: string | undefined,
): InkBatch["pots"] {
  const sizes = shelf.defaults.potSizes;
  const asked = sizes.filter(({ id }) => id === potSizeId);
  if (sizes.length === 0 || !(batchGrams > 0)) return null;
  const pots = potsFor(batchGrams, asked.length > 0 ? asked : sizes, density);
  return { ...pots, sizeName: sizes.find(({ id }) => id === pots.size.id)?.name ?? pots.size.id };
}

function sheetNotices(
  sheet: BatchSheet,
  potCount: number,
  recipe: readonly RecipeComponent[],
  masters: readonly ShelfMaster[],
): BatchNotice[] {
  const ofRecipe = masters.filter(({ master }) => recipe.some(({ itemId }) => itemId === master.colourantId));
  const expired = ofRecipe
    .filter(({ state }) => state === "expired")
    .map(({ master, name }): BatchNotice => ({ code: "master-expired", id: master.id, name, figures: {} }));
  const short = (sheet.ok ? sheet.lines : []).flatMap((line): BatchNotice[] => {
    const gramsLeft = masters.find(({ master }) => master.id === line.id)?.master.gramsLeft ?? null;
    const neededGrams = line.grams * potCount;
    if (gramsLeft === null || neededGrams <= gramsLeft) return [];
    return [{ code: "master-runs-out", id: line.id, name: line.name, figures: { neededGrams, gramsLeft } }];
  });
  return [...expired, ...short];
}

/**
 * Pots, scale and sheet for `batchGrams`. A low-cure mix takes no master in another base: a little of it undoes what it
 * is for.
 */
export function weighingPlan(
  shelf: Shelf,
  ink: {
    readonly recipe: readonly RecipeComponent[];
    readonly isLowCure: boolean;
    readonly densityGramsPerCm3: number;
    readonly batchGrams: number;
  },
  offered: { readonly masters: readonly ShelfMaster[]; readonly available: readonly AvailableMaster[] },
  wishes: BatchWishes,
): WeighingPlan {
  const pots = planPots(shelf, ink.batchGrams, ink.densityGramsPerCm3, wishes.potSizeId);
  const scale = scaleFor(shelf.defaults.scales, pots?.gramsPerPot ?? ink.batchGrams, wishes.scaleId);
  if (pots === null || scale === null) return { pots, scale, sheet: null, notices: [] };
  const written = writeWeighSheet({
    recipe: ink.recipe,
    masters: offered.available,
    otherBases: ink.isLowCure ? "refused" : "allowed",
    batchGrams: pots.gramsPerPot,
    scaleStepGrams: scale.stepGrams,
    weighAs: wishes.weighAs,
  });
  const sheet: BatchSheet = written.ok
    ? { ...written, lines: written.lines.map((line) => ({ ...line, name: sheetLineName(line.id, shelf) })) }
    : written;
  const notices = sheetNotices(sheet, pots.potCount, ink.recipe, offered.masters);
  const { maxGrams } = scale;
  if (maxGrams !== null && pots.gramsPerPot > maxGrams) {
    const figures = { potGrams: pots.gramsPerPot, maxGrams };
    notices.unshift({ code: "scale-overloaded", id: scale.id, name: scale.name, figures });
  }
  return { pots, scale, sheet, notices };
}
