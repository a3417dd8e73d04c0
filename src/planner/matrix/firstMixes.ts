/** The mixes that a print place without any is begun with: the shop's reference clear, alone or up its tint ladder. */
import type { Documents } from "../../job/documents.ts";
import { addCandidate } from "../../job/edits/mixes.ts";
import { recipeWithTint } from "../../job/edits/recipe.ts";
import type { Base, Colourant, SetUp, Shelf } from "../../job/shelfDocument.ts";
import { recipeName } from "../words/mixWords.ts";

export interface FirstInks {
  readonly base: Base;
  readonly setUp: SetUp;
  /** The shop's black, for the ladder; null where there is none. */
  readonly black: Colourant | null;
  /** The ladder's steps as mass fractions, untinted first; one step where there is no black. */
  readonly ladder: readonly number[];
}

/** What the shelf offers to begin with; null where it has no base or no set-up yet. A weighed set-up comes first. */
export function firstInks({ bases, colourants, setUps, defaults }: Shelf): FirstInks | null {
  const clears = bases.filter(({ role }) => role === "base");
  const base = clears.find(({ reference }) => reference) ?? clears[0];
  const setUp = setUps.find(({ weighed }) => weighed !== null) ?? setUps[0];
  if (base === undefined || setUp === undefined) return null;
  const black = colourants.find(({ optics }) => optics.kind === "black") ?? null;
  const steps = black === null ? [] : defaults.tintLadder.filter((step) => step <= black.largestFraction);
  return { base, setUp, black, ladder: [...new Set([0, ...steps])].sort((one, other) => one - other) };
}

/** Adds one mix for each step of the ladder that is asked for; the shelf has to offer `firstInks`. */
export function withFirstMixes(
  documents: Documents,
  placeId: string,
  steps: readonly number[],
  newId: () => string,
): Documents {
  const { shelf } = documents.library;
  const inks = firstInks(shelf);
  if (inks === null) return documents;
  return steps.reduce((now, step) => {
    const clear = [{ itemId: inks.base.id, massFraction: 1 }];
    const recipe =
      step === 0 || inks.black === null ? clear : recipeWithTint(clear, shelf, inks.black.id, step);
    const mix = { id: newId(), name: recipeName(recipe, shelf), recipe, clothCoverFraction: null };
    return addCandidate(now, placeId, { candidateId: newId(), mix, setUpId: inks.setUp.id });
  }, documents);
}
