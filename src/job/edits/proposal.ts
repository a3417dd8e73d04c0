/** Takes over what a mix search proposed: the mixes and columns that are missing, and the choice of every line it names. */
import type { Documents } from "../documents.ts";
import { isSameRecipe, type Recipe } from "../recipeParts.ts";
import { chooseCandidate } from "./choices.ts";
import { requireItem } from "./listEdit.ts";
import { addCandidate } from "./mixes.ts";

export interface ProposedChange {
  readonly lineId: string;
  readonly recipe: Recipe;
  /** Name of the mix where the job has none of this recipe yet. */
  readonly mixName: string;
  readonly setUpId: string;
  /** The job's mix that was meant, such as one that covers the cloth; taken where it still has this recipe. */
  readonly jobMixId?: string | null;
  /** Taken where a mix or a column is missing. */
  readonly newMixId: string;
  readonly newCandidateId: string;
}

/** The documents with a column of the place that prints this recipe through this set-up, and the column's id. */
function withColumn(documents: Documents, placeId: string, change: ProposedChange) {
  const { job } = documents;
  const place = requireItem(job.places, placeId, "place");
  const ofRecipe = job.mixes.filter((mix) => isSameRecipe(mix.recipe, change.recipe));
  const meant = ofRecipe.filter(({ id }) => id === change.jobMixId);
  const same = meant.length > 0 ? meant : ofRecipe.filter((mix) => mix.clothCoverFraction === null);
  const found = place.candidates.find(
    (candidate) => candidate.setUpId === change.setUpId && same.some((mix) => mix.id === candidate.mixId),
  );
  if (found !== undefined) return { documents, candidateId: found.id };
  const mix = same[0] ?? {
    id: change.newMixId,
    name: change.mixName,
    recipe: change.recipe.map((part) => ({ ...part })),
    clothCoverFraction: null,
  };
  const candidateId = change.newCandidateId;
  return {
    documents: addCandidate(documents, placeId, { candidateId, mix, setUpId: change.setUpId }),
    candidateId,
  };
}

/**
 * Chooses the proposed mix for each line. The job's mix and the place's column of the same recipe and set-up are used where
 * there are any, so that two lines with one recipe end in one mix and one column; the other columns stay.
 * @throws RangeError where a line, the place, a set-up or an ink does not exist, or a line is not printed there.
 */
export function applyProposal(
  documents: Documents,
  placeId: string,
  changes: readonly ProposedChange[],
): Documents {
  return changes.reduce((current, change) => {
    const { documents: ready, candidateId } = withColumn(current, placeId, change);
    return chooseCandidate(ready, { lineId: change.lineId, placeId, candidateId });
  }, documents);
}
