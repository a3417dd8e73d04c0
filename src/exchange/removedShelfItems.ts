/** What a job uses that the shelf no longer holds. */
import type { Documents } from "../job/documents.ts";
import type { Problem } from "../job/problem.ts";

/**
 * The job's references to items that were removed from the shelf, with their paths in the archive: codes
 * `component-missing` and `set-up-missing`, the id as detail. No fault of a file: an item may be removed while a job
 * that is not open uses it, and such a job still opens, exports and imports; it says so when it is predicted.
 */
export function removedShelfItems({ job, library }: Documents): Problem[] {
  const { bases, colourants, setUps } = library.shelf;
  const itemIds = new Set([...bases, ...colourants].map((item) => item.id));
  const setUpIds = new Set(setUps.map((setUp) => setUp.id));
  return [
    ...job.mixes.flatMap((mix, mixIndex) =>
      mix.recipe.flatMap(({ itemId }, index) => {
        const where = `job.mixes[${mixIndex}].recipe[${index}].itemId`;
        return itemIds.has(itemId) ? [] : [{ code: "component-missing", where, detail: itemId }];
      }),
    ),
    ...job.places.flatMap((place, placeIndex) =>
      place.candidates.flatMap(({ setUpId }, index) => {
        const where = `job.places[${placeIndex}].candidates[${index}].setUpId`;
        return setUpIds.has(setUpId) ? [] : [{ code: "set-up-missing", where, detail: setUpId }];
      }),
    ),
  ];
}
