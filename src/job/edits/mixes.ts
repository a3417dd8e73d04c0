/** Edits of the columns of a matrix: candidates, their mixes and tints. */
import type { Documents } from "../documents.ts";
import { type Candidate, candidateSchema, type Job } from "../jobDocument.ts";
import { type Mix, mixSchema } from "../mixDocument.ts";
import { sameValue } from "../sameValue.ts";
import type { Shelf } from "../shelfDocument.ts";
import { requireId, requireItem, requireValid, withChanged, withItem, withoutItem } from "./listEdit.ts";
import { recipeWithoutItem, recipeWithTint } from "./recipe.ts";

/** The mixes that some candidate prints; a mix goes with its last candidate. */
export function usedMixes(job: Job): Mix[] {
  const used = new Set(job.places.flatMap((place) => place.candidates.map((candidate) => candidate.mixId)));
  return job.mixes.filter((mix) => used.has(mix.id));
}

function requireMix(mix: Mix, shelf: Shelf): Mix {
  requireValid(mixSchema, mix, "mix");
  for (const { itemId } of mix.recipe) requireId([...shelf.bases, ...shelf.colourants], itemId, "component");
  return mix;
}

function withCandidates(
  documents: Documents,
  placeId: string,
  change: (candidates: readonly Candidate[]) => Candidate[],
): Documents {
  const { job } = documents;
  const places = withChanged(job.places, placeId, "place", (place) => ({
    ...place,
    candidates: change(place.candidates),
  }));
  return { ...documents, job: { ...job, places } };
}

/** Adds a column at the end of a place's matrix. `mix` is a new mix, or one of the job's unchanged. */
export function addCandidate(
  documents: Documents,
  placeId: string,
  {
    candidateId,
    mix,
    setUpId,
  }: { readonly candidateId: string; readonly mix: Mix; readonly setUpId: string },
): Documents {
  const { job, library } = documents;
  requireId(library.shelf.setUps, setUpId, "set-up");
  const known = job.mixes.find((one) => one.id === mix.id);
  const mixes =
    known !== undefined && sameValue(known, mix)
      ? job.mixes
      : withItem(job.mixes, requireMix(mix, library.shelf), "mix");
  const candidate = requireValid(candidateSchema, { id: candidateId, mixId: mix.id, setUpId }, "candidate");
  requireNewCandidateId(job, candidateId);
  return withCandidates({ ...documents, job: { ...job, mixes } }, placeId, (candidates) =>
    withItem(candidates, candidate, "candidate"),
  );
}

function requireNewCandidateId(job: Job, candidateId: string): void {
  if (job.places.some((place) => place.candidates.some((candidate) => candidate.id === candidateId))) {
    throw new RangeError(`candidate must have a new id; got ${candidateId} again`);
  }
}

/** Removes a column, the choices that fell on it, and its mix where no other column prints it. */
export function removeCandidate(documents: Documents, placeId: string, candidateId: string): Documents {
  const removed = withCandidates(documents, placeId, (candidates) =>
    withoutItem(candidates, candidateId, "candidate"),
  );
  const { job } = removed;
  return {
    ...removed,
    job: {
      ...job,
      mixes: usedMixes(job),
      choices: job.choices.filter((choice) => choice.candidateId !== candidateId),
    },
  };
}

/** Moves a column so that it stands at `toIndex` afterwards. @throws RangeError outside 0..count - 1. */
export function moveCandidate(
  documents: Documents,
  placeId: string,
  candidateId: string,
  toIndex: number,
): Documents {
  return withCandidates(documents, placeId, (candidates) => {
    if (!(Number.isInteger(toIndex) && toIndex >= 0 && toIndex < candidates.length)) {
      throw new RangeError(`toIndex must be in 0..${candidates.length - 1}; got ${toIndex}`);
    }
    const candidate = requireItem(candidates, candidateId, "candidate");
    return withItem(withoutItem(candidates, candidateId, "candidate"), candidate, "candidate", toIndex);
  });
}

export function changeCandidateSetUp(
  documents: Documents,
  placeId: string,
  candidateId: string,
  setUpId: string,
): Documents {
  requireId(documents.library.shelf.setUps, setUpId, "set-up");
  return withCandidates(documents, placeId, (candidates) =>
    withChanged(candidates, candidateId, "candidate", (candidate) => ({ ...candidate, setUpId })),
  );
}

/** Changes a mix wherever it is printed. Limits of data sheets are not checked here: `mixProblems` tells them. */
export function changeMix(documents: Documents, mixId: string, change: Partial<Omit<Mix, "id">>): Documents {
  const { job, library } = documents;
  const mixes = withChanged(job.mixes, mixId, "mix", (mix) =>
    requireMix({ ...mix, ...change }, library.shelf),
  );
  return { ...documents, job: { ...job, mixes } };
}

/**
 * Sets how much of a colourant a mix holds; the bases shrink or grow in proportion, the other colourants stay. The
 * mass fraction is stored exactly as given, 0 included: the colourant stays in the recipe for the next drag.
 * @throws RangeError where the colourants would leave no room, or the mix has no base to give way.
 */
export function setTint(
  documents: Documents,
  mixId: string,
  colourantId: string,
  massFraction: number,
): Documents {
  const { job, library } = documents;
  requireId(library.shelf.colourants, colourantId, "colourant");
  const mix = requireItem(job.mixes, mixId, "mix");
  const recipe = recipeWithTint(mix.recipe, library.shelf, colourantId, massFraction);
  return changeMix(documents, mixId, { recipe });
}

/** Takes a colourant out of a mix; the bases take its room in proportion. */
export function removeTint(documents: Documents, mixId: string, colourantId: string): Documents {
  const without = setTint(documents, mixId, colourantId, 0);
  const mix = requireItem(without.job.mixes, mixId, "mix");
  return changeMix(without, mixId, { recipe: recipeWithoutItem(mix.recipe, colourantId) });
}
