/** What can be chosen on the bench form: garments of the job first, mixes of the job and recipes of the record book. */
import type { Documents } from "../../job/documents.ts";
import { lineName } from "../../job/lineName.ts";
import { isSameRecipe, type Recipe } from "../../job/recipeParts.ts";
import { mixName, recipeName } from "../words/mixWords.ts";

export interface LotOption {
  readonly value: string;
  readonly label: string;
}

export interface RecipeOption {
  readonly value: string;
  readonly label: string;
  readonly recipe: Recipe;
}

const lotLabel = (lot: Documents["library"]["garmentLots"][number]) =>
  `${lineName(lot)}${lot.lot === "" ? "" : `, lot ${lot.lot}`}`;

/** The lots of the job's lines in their order, then the library's others. */
export function lotOptions({ job, library }: Documents): LotOption[] {
  const ids = job.lines.map((line) => line.garmentLotId);
  const own = ids.flatMap((id) => library.garmentLots.filter((lot) => lot.id === id));
  const others = library.garmentLots.filter((lot) => !ids.includes(lot.id));
  return [
    ...own.map((lot) => ({ value: lot.id, label: lotLabel(lot) })),
    ...others.map((lot) => ({ value: lot.id, label: `${lotLabel(lot)} (not in this job)` })),
  ];
}

/** Every recipe that was or may be printed, each once; `present` is among them whatever it is. */
export function recipeOptions({ job, library }: Documents, present: Recipe | null): RecipeOption[] {
  const options: RecipeOption[] = job.mixes.map((mix) => ({
    value: mix.id,
    label: mixName(mix, library.shelf),
    recipe: mix.recipe,
  }));
  const recorded = [
    ...library.testPrints.map(({ recipe }) => recipe),
    ...(present === null ? [] : [present]),
  ];
  for (const recipe of recorded) {
    if (options.some((option) => isSameRecipe(option.recipe, recipe))) continue;
    const label = `${recipeName(recipe, library.shelf)} (from the record book)`;
    options.push({ value: `recorded ${options.length}`, label, recipe });
  }
  return options;
}

/** The option that a recipe is; null for none. */
export function chosenRecipe(options: readonly RecipeOption[], recipe: Recipe | null): RecipeOption | null {
  return recipe === null ? null : (options.find((option) => isSameRecipe(option.recipe, recipe)) ?? null);
}
