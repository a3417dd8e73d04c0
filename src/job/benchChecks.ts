/** Looks at a test print while it is being typed: what a bench form says at once, as codes with figures. It blocks nothing. */
import type { Viewing } from "../core/colorimetry/viewing.ts";
import { benchReadingChecks } from "./benchReadingChecks.ts";
import { printedRecipe } from "./evidenceInputs.ts";
import type { Library } from "./libraryDocument.ts";
import type { Problem } from "./problem.ts";
import { partsOf, type Recipe } from "./recipeParts.ts";
import type { TestPrint } from "./recordDocument.ts";
import { standing } from "./standing.ts";

type Typed = Pick<
  TestPrint,
  "garmentLotId" | "recipe" | "actualGrams" | "printedAt" | "readAt" | "washCount" | "readings"
>;

/** What is typed so far; null where it is not typed yet. A check runs once all that it needs is there. */
export type BenchDraft = { readonly [Field in keyof Typed]: Typed[Field] | null };

/** What the draft is held against. */
export interface BenchContext {
  readonly library: Pick<Library, "shelf" | "garmentLots" | "testPrints">;
  /** Light and observer that spectra are looked at under. */
  readonly viewing: Viewing;
  /** The record that the draft corrects: it is no witness against its own correction. */
  readonly supersedesId: string | null;
  /** Recipes of the mixes at hand, besides those in the record book. */
  readonly otherRecipes: readonly Recipe[];
}

/** A print read within this many minutes is still warm, and its colour moves. Common practice, no source. */
export const REST_MINUTES = 60;
/** A tint this many times the others, or so small a part of them, is worth a look. Invented: a slip of the point is 10. */
export const ODD_TINT_FACTOR = 5;
/** One other print with the colourant says little about what is usual (invented). */
const FEWEST_OTHER_TINTS = 2;
/** What was weighed may differ from the recipe by this factor before anyone is asked (invented). */
const ODD_GRAMS_FACTOR = 1.5;

const MS_PER_MINUTE = 60_000;

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2;
}

/** Read before it was printed, or before it had cooled. */
function timeChecks({ printedAt, readAt, washCount }: BenchDraft): Problem[] {
  if (printedAt === null || readAt === null) return [];
  const minutes = (Date.parse(readAt) - Date.parse(printedAt)) / MS_PER_MINUTE;
  if (!Number.isFinite(minutes)) return [];
  if (minutes < 0) return [{ code: "bench-read-before-printed", where: "readAt", values: { minutes } }];
  if (minutes >= REST_MINUTES || (washCount ?? 0) > 0) return [];
  return [{ code: "bench-read-hot", where: "readAt", values: { minutes, restMinutes: REST_MINUTES } }];
}

/** The part that a colourant has in each recipe that holds it. */
function fractionsOf(itemId: string, recipes: readonly Recipe[]): number[] {
  return recipes.flatMap((recipe) => {
    const part = recipe.find((component) => component.itemId === itemId);
    return part === undefined || part.massFraction === 0 ? [] : [part.massFraction];
  });
}

/** A tint far from all others of that colourant, and a pot that was weighed to another tint than its recipe's. */
function tintChecks(draft: BenchDraft, { library, supersedesId, otherRecipes }: BenchContext): Problem[] {
  const { recipe, actualGrams } = draft;
  if (recipe === null) return [];
  const others = standing(library.testPrints).filter((print) => print.id !== supersedesId);
  const recipes = [...others.map(printedRecipe), ...otherRecipes];
  const printed = printedRecipe({ recipe, actualGrams });
  const found: Problem[] = [];
  for (const part of partsOf(printed, library.shelf)) {
    if (part.kind !== "colourant") continue;
    const { massFraction } = part;
    const { id, name } = part.item;
    const usual = fractionsOf(id, recipes);
    const [smallest, largest] = [Math.min(...usual), Math.max(...usual)];
    const isOdd = massFraction >= ODD_TINT_FACTOR * largest || massFraction <= smallest / ODD_TINT_FACTOR;
    if (usual.length >= FEWEST_OTHER_TINTS && isOdd) {
      const values = { name, massFraction, smallest, largest, usual: median(usual), count: usual.length };
      found.push({ code: "bench-tint-unlike-others", where: "recipe", values });
    }
    const wanted = recipe.find((component) => component.itemId === id)?.massFraction ?? 0;
    const ratio = massFraction / wanted;
    if (actualGrams !== null && !(ratio <= ODD_GRAMS_FACTOR && ratio >= 1 / ODD_GRAMS_FACTOR)) {
      const values = { name, massFraction, wanted };
      found.push({ code: "bench-grams-unlike-recipe", where: "actualGrams", values });
    }
  }
  return found;
}

/**
 * All that looks odd in the draft, in the order of the form. Nothing here is an error: a soft white is meant to be
 * lighter, and a shop may try 5 % of black. The form says it and goes on.
 */
export function benchChecks(draft: BenchDraft, context: BenchContext): Problem[] {
  return [...tintChecks(draft, context), ...timeChecks(draft), ...benchReadingChecks(draft, context)];
}
