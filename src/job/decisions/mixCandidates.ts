/** Every mix that the search may propose for a place: the job's own, and the shop's bases up its ladder of tints. */
import type { InkMix } from "../../core/prediction/inputs.ts";
import type { Documents } from "../documents.ts";
import { recipeWithTint } from "../edits/recipe.ts";
import type { Place } from "../jobDocument.ts";
import type { Mix } from "../mixDocument.ts";
import { inkMixFor } from "../predictionInputs.ts";
import { recipeKey } from "../recipeKey.ts";
import { partsOf, type Recipe } from "../recipeParts.ts";
import type { Base, Colourant, Shelf } from "../shelfDocument.ts";

export interface MixCandidate {
  /** `mixKey`. */
  readonly key: string;
  readonly recipe: Recipe;
  readonly ink: InkMix;
  /** The job's mix of this recipe; null where it would be a new one. */
  readonly mixId: string | null;
  readonly inStock: boolean;
  /** Of low-cure bases alone. */
  readonly lowCure: boolean;
}

/** Parts of white in a base for a print that lightens. Invented default. */
const WHITE_STEPS: readonly number[] = [0.05, 0.1, 0.2, 0.35, 0.5];

/** The shop's clears and other bases that carry a mix by themselves. */
export function carryingBases({ bases }: Shelf): readonly Base[] {
  return bases.filter(({ role }) => role === "base");
}

/** The colourants that are put up the ladder here: every black, and every tint that a mix of the place has already. */
export function laddered({ job, library: { shelf } }: Documents, place: Place): readonly Colourant[] {
  const used = new Set(
    place.candidates.flatMap(
      ({ mixId }) => job.mixes.find(({ id }) => id === mixId)?.recipe.map(({ itemId }) => itemId) ?? [],
    ),
  );
  return shelf.colourants.filter(
    ({ id, optics }) => optics.kind === "black" || (optics.kind === "masstone" && used.has(id)),
  );
}

/** `base` alone, and with each step of each colourant. */
function ladderOf(base: Base, documents: Documents, place: Place): Recipe[] {
  const { shelf } = documents.library;
  const clear = [{ itemId: base.id, massFraction: 1 }];
  const tinted = (colourants: readonly Colourant[], steps: readonly number[]) =>
    colourants.flatMap(({ id }) =>
      steps.filter((step) => step > 0 && step < 1).map((step) => recipeWithTint(clear, shelf, id, step)),
    );
  if (place.band.deltaL > 0) {
    return tinted(
      shelf.colourants.filter(({ optics }) => optics.kind === "white"),
      WHITE_STEPS,
    );
  }
  return [clear, ...tinted(laddered(documents, place), shelf.defaults.tintLadder)];
}

/** What a candidate is named by: its recipe, and the covered part of the cloth where a mix sets one. */
export function mixKey({ recipe, clothCoverFraction }: Pick<Mix, "recipe" | "clothCoverFraction">): string {
  return recipeKey(recipe) + (clothCoverFraction === null ? "" : ` covering ${clothCoverFraction}`);
}

/** The candidate of a recipe; null where the shelf or a data sheet refuses it. */
export function candidateOf(
  recipe: Recipe,
  shelf: Shelf,
  own: { readonly mixId: string; readonly clothCoverFraction: number | null } | null = null,
): MixCandidate | null {
  const clothCoverFraction = own?.clothCoverFraction ?? null;
  const found = inkMixFor({ id: "", name: "", recipe: [...recipe], clothCoverFraction }, shelf);
  if (!found.ok) return null;
  const parts = partsOf(recipe, shelf);
  const bases = parts.filter(({ kind }) => kind === "base");
  return {
    key: mixKey({ recipe: [...recipe], clothCoverFraction }),
    recipe,
    ink: found.mix,
    mixId: own?.mixId ?? null,
    inStock: parts.every(({ item }) => item.inStock),
    lowCure: bases.length > 0 && bases.every(({ item }) => item.lowCure),
  };
}

/** Each recipe once, the job's own first; what a data sheet refuses is left out. */
export function mixCandidates(documents: Documents, place: Place): MixCandidate[] {
  const { job, library } = documents;
  const { shelf } = library;
  const here = new Set(place.candidates.map(({ mixId }) => mixId));
  const own = job.mixes
    .filter(({ id }) => here.has(id))
    .map(({ id, recipe, clothCoverFraction }) =>
      candidateOf(recipe, shelf, { mixId: id, clothCoverFraction }),
    );
  const ladder = carryingBases(shelf)
    .flatMap((base) => ladderOf(base, documents, place))
    .map((recipe) => candidateOf(recipe, shelf));
  const byKey = new Map<string, MixCandidate>();
  for (const candidate of [...own, ...ladder]) {
    if (candidate !== null && !byKey.has(candidate.key)) byKey.set(candidate.key, candidate);
  }
  return [...byKey.values()];
}
