/** A recipe while it is being written: one base takes what the other parts leave. */
import type { MixComponent } from "../../job/mixDocument.ts";
import { mixProblems } from "../../job/mixProblems.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { percentWords } from "../words/garmentWords.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";

export interface DraftPart {
  /** Stays the same while the part's ink is changed. */
  readonly key: number;
  readonly itemId: string;
  readonly massFraction: number;
}

export interface RecipeDraft {
  /** Takes the rest. */
  readonly baseId: string;
  readonly parts: readonly DraftPart[];
}

const sumOf = (parts: readonly { readonly massFraction: number }[]) =>
  parts.reduce((sum, part) => sum + part.massFraction, 0);

/** What is left for the base; rounded so that 1 - 0.9 - 0.1 is nothing. */
export function restFraction(draft: RecipeDraft): number {
  return Number((1 - sumOf(draft.parts)).toFixed(9));
}

export function draftFromRecipe(recipe: readonly MixComponent[], shelf: Shelf): RecipeDraft {
  const isBase = ({ itemId }: MixComponent) => shelf.bases.some(({ id }) => id === itemId);
  const most = (parts: readonly MixComponent[]) =>
    parts.reduce<MixComponent | undefined>(
      (best, part) => (best === undefined || part.massFraction > best.massFraction ? part : best),
      undefined,
    );
  const base = most(recipe.filter(isBase)) ?? most(recipe);
  return {
    baseId: base?.itemId ?? "",
    parts: recipe
      .filter(({ itemId }) => itemId !== base?.itemId)
      .map(({ itemId, massFraction }, key) => ({ key, itemId, massFraction })),
  };
}

export function recipeFromDraft(draft: RecipeDraft): MixComponent[] {
  const rest = restFraction(draft);
  return [
    ...(rest === 0 && draft.parts.length > 0 ? [] : [{ itemId: draft.baseId, massFraction: rest }]),
    ...draft.parts.map(({ itemId, massFraction }) => ({ itemId, massFraction })),
  ];
}

/** Why the draft cannot be mixed, one sentence each; empty where it can. */
export function draftSentences(draft: RecipeDraft, shelf: Shelf): string[] {
  if (draft.baseId === "") return ["Choose a base: something has to carry the mix."];
  const rest = restFraction(draft);
  if (rest < 0) {
    return [`The parts come to ${percentWords(1 - rest)}: nothing is left for the base.`];
  }
  const itemIds = [draft.baseId, ...draft.parts.map(({ itemId }) => itemId)];
  if (new Set(itemIds).size < itemIds.length) return ["The same ink is in the mix twice."];
  return mixProblems({ recipe: recipeFromDraft(draft) }, shelf).map(sentenceForProblem);
}
