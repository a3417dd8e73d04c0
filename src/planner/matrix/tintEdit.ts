/** A tint dragged or typed: the recipe follows, a name that only told the recipe follows too, limits are kept. */
import type { Documents } from "../../job/documents.ts";
import { changeMix, setTint } from "../../job/edits/mixes.ts";
import { tintRoomFraction } from "../../job/edits/recipe.ts";
import { mixOf } from "../../job/lookup.ts";
import type { Mix } from "../../job/mixDocument.ts";
import { mixProblems } from "../../job/mixProblems.ts";
import type { Colourant, Shelf } from "../../job/shelfDocument.ts";
import { isNamedByRecipe, recipeName } from "../words/mixWords.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";

/** The colourant that a column's slider moves: the one the mix holds most of, else the shelf's black, else its first. */
export function tintOf(mix: Mix, shelf: Shelf): Colourant | null {
  const held = mix.recipe
    .filter(({ itemId }) => shelf.colourants.some(({ id }) => id === itemId))
    .sort((one, other) => other.massFraction - one.massFraction)[0];
  return (
    shelf.colourants.find(({ id }) => id === held?.itemId) ??
    shelf.colourants.find(({ optics }) => optics.kind === "black") ??
    shelf.colourants[0] ??
    null
  );
}

export function tintFraction(mix: Mix, colourantId: string): number {
  return mix.recipe.find(({ itemId }) => itemId === colourantId)?.massFraction ?? 0;
}

/** The most that the data sheet and the other colourants leave room for. */
export function largestTintFraction(mix: Mix, shelf: Shelf, colourant: Colourant): number {
  return Math.min(colourant.largestFraction, tintRoomFraction(mix, shelf, colourant.id));
}

export type TintEdit =
  | { readonly ok: true; readonly change: (documents: Documents) => Documents }
  | { readonly ok: false; readonly sentence: string };

/** The edit that sets a tint, or the sentence that says why it is refused. */
export function tintEdit(
  documents: Documents,
  mixId: string,
  colourantId: string,
  massFraction: number,
): TintEdit {
  const { shelf } = documents.library;
  const mix = mixOf(documents.job, mixId);
  if (mix === null) return { ok: false, sentence: "This mix is no longer in the job." };
  const change = (now: Documents) => withTint(now, mixId, colourantId, massFraction);
  let after: Mix | null;
  try {
    after = mixOf(change(documents).job, mixId);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return {
      ok: false,
      sentence: "So much of it leaves no room for the base, or there is no base to give way.",
    };
  }
  const before = new Set(mixProblems(mix, shelf).map(({ code, detail }) => `${code} ${detail}`));
  const added = (after === null ? [] : mixProblems(after, shelf)).find(
    ({ code, detail }) => !before.has(`${code} ${detail}`),
  );
  return added === undefined ? { ok: true, change } : { ok: false, sentence: sentenceForProblem(added) };
}

function withTint(documents: Documents, mixId: string, colourantId: string, massFraction: number): Documents {
  const before = mixOf(documents.job, mixId);
  const tinted = setTint(documents, mixId, colourantId, massFraction);
  const after = mixOf(tinted.job, mixId);
  const { shelf } = documents.library;
  if (before === null || after === null || !isNamedByRecipe(before, shelf)) return tinted;
  return changeMix(tinted, mixId, { name: recipeName(after.recipe, shelf) });
}
