/** Puts one batch together: amounts, weighing, what it inherits, and what was poured of it so far. */
import { batchSize } from "../../core/planning/ink/batchSize.ts";
import { mixDensityGramsPerCm3 } from "../../core/planning/ink/inkQuantity.ts";
import { mixRestrictions } from "../../core/planning/ink/mixRestrictions.ts";
import type { Documents } from "../documents.ts";
import { type RecipeItem, recipeItem } from "../lookup.ts";
import type { Mix, MixComponent } from "../mixDocument.ts";
import type { Pot } from "../potDocument.ts";
import type { Problem } from "../problem.ts";
import { isSameRecipe, partsOf } from "../recipeParts.ts";
import { standing } from "../standing.ts";
import type { BatchNotice, InkBatch, RecipeLine, RecordedPot } from "./inkBatch.ts";
import type { BatchWishes, ShelfMaster } from "./inkRoom.ts";
import { inkUses } from "./inkUses.ts";
import { availableMasters } from "./masters.ts";
import { partLots, restrictedParts } from "./partLots.ts";
import { pouredOf, recipeOfPots } from "./poured.ts";
import { type WeighingPlan, weighingPlan } from "./weighingPlan.ts";

type RecipePart = RecipeItem & { readonly massFraction: number };

function recipeLines(parts: readonly RecipePart[]): RecipeLine[] {
  return parts.map((part) => ({
    itemId: part.item.id,
    massFraction: part.massFraction,
    name: part.item.name,
    role: part.kind === "base" ? part.item.role : "colourant",
  }));
}

function whiteOf(parts: readonly RecipePart[], { clothCoverFraction }: Mix): InkBatch["white"] {
  const whites = parts.filter((part) => part.kind === "colourant" && part.item.optics.kind === "white");
  const massFraction = whites.reduce((sum, part) => sum + part.massFraction, 0);
  return massFraction > 0 ? { massFraction, clothCoverFraction } : null;
}

/** Which of the recipes mixed under this mix, in the order of the ledger, `recipe` is; a new one gets the next number. */
export function recipeVersionOf(pots: readonly Pot[], recipe: readonly MixComponent[]): number {
  const known: (readonly MixComponent[])[] = [];
  for (const pot of pots) {
    if (!known.some((one) => isSameRecipe(one, pot.recipe))) known.push(pot.recipe);
  }
  const at = known.findIndex((one) => isSameRecipe(one, recipe));
  return at < 0 ? known.length + 1 : at + 1;
}

/** Pots of the job's mix on record, those corrected included, in the order of the ledger. */
export function potsOfMix({ job, library }: Documents, mixId: string): Pot[] {
  return library.pots.filter((pot) => pot.jobId === job.id && pot.mixId === mixId);
}

function trueRecipeOf(
  mix: Mix,
  recorded: readonly RecordedPot[],
  { sheet }: WeighingPlan,
): InkBatch["trueRecipe"] {
  const current = recorded.filter(({ pot }) => isSameRecipe(pot.recipe, mix.recipe));
  const poured = recipeOfPots(current.map((one) => one.poured));
  if (poured !== null) return { source: "poured", recipe: poured };
  if (sheet?.ok === true) return { source: "sheet", recipe: sheet.trueRecipe };
  return { source: "wanted", recipe: mix.recipe.filter((part) => part.massFraction > 0) };
}

function changedNotices(mix: Mix, recorded: readonly RecordedPot[]): BatchNotice[] {
  const changed = recorded.filter(({ pot }) => !isSameRecipe(pot.recipe, mix.recipe));
  if (changed.length === 0) return [];
  return [{ code: "recipe-changed", id: mix.id, name: mix.name, figures: { potCount: changed.length } }];
}

/** Inks of a mix that the shelf has no more. */
function missingParts(mix: Mix, where: string, documents: Documents): Problem[] {
  return mix.recipe.flatMap(({ itemId }, index) =>
    recipeItem(documents.library.shelf, itemId) === null
      ? [{ code: "component-missing", where: `${where}.recipe[${index}].itemId`, detail: itemId }]
      : [],
  );
}

export interface BatchContext {
  readonly today: string;
  readonly wishes: BatchWishes;
  readonly masters: readonly ShelfMaster[];
}

/** The batch of one mix of the job, or why there is none. */
export function batchOf(
  documents: Documents,
  mix: Mix,
  { today, wishes, masters }: BatchContext,
): InkBatch | { readonly refused: readonly Problem[] } {
  const { job, library } = documents;
  const { shelf } = library;
  const missing = missingParts(mix, `job.mixes[${job.mixes.indexOf(mix)}]`, documents);
  if (missing.length > 0) return { refused: missing };
  const parts = partsOf(mix.recipe, shelf);
  const recipe = recipeLines(parts);
  const white = whiteOf(parts, mix);
  const densityGramsPerCm3 = mixDensityGramsPerCm3(
    parts.map(({ item, massFraction }) => ({ massFraction, densityGramsPerCm3: item.densityGramsPerCm3 })),
  );
  const ink = { whiteFraction: white?.massFraction ?? 0, densityGramsPerCm3 };
  const { uses, problems } = inkUses(documents, mix, ink);
  const size = batchSize(
    uses.map(({ pieceCount, spoilageFraction, mixedGramsPerPrint, expectedGramsPerPrint }) => ({
      printCount: pieceCount,
      spoilageFraction,
      mixedGramsPerPrint,
      expectedGramsPerPrint,
    })),
    uses.length,
    shelf.defaults.screenWetGrams,
  );
  const batchGrams = wishes.batchGrams ?? size.batchGrams;
  const isLowCure = parts.some(({ item }) => item.lowCure);
  const plan = weighingPlan(
    shelf,
    { recipe, isLowCure, densityGramsPerCm3, batchGrams },
    { masters, available: availableMasters(masters) },
    wishes,
  );
  const lines = plan.sheet?.ok === true ? plan.sheet.lines : [];
  const weighed = plan.sheet?.ok === true ? plan.sheet.trueRecipe : recipe;
  const neatIds = lines.length === 0 ? recipe.map(({ itemId }) => itemId) : neatOf(lines);
  const lots = partLots(neatIds, shelf, today);
  const pots = potsOfMix(documents, mix.id);
  const recorded = standing(pots).map((pot) => ({ pot, poured: pouredOf(pot, library.potEntries) }));
  return {
    mixId: mix.id,
    mixName: mix.name,
    recipe,
    kind: white !== null ? "white" : parts.some(({ kind }) => kind === "colourant") ? "tinted" : "clear",
    white,
    densityGramsPerCm3,
    uses,
    size,
    batchGrams,
    pots: plan.pots,
    scale: plan.scale,
    sheet: plan.sheet,
    recipeVersion: recipeVersionOf(pots, mix.recipe),
    restrictions: mixRestrictions(restrictedParts(weighed, lines, lots, shelf)),
    lots,
    recorded,
    trueRecipe: trueRecipeOf(mix, recorded, plan),
    notices: [...plan.notices, ...changedNotices(mix, recorded)],
    problems,
  };
}

const neatOf = (lines: readonly { readonly id: string; readonly role: string }[]) =>
  lines.filter((line) => line.role !== "master").map((line) => line.id);
