/** Finds what an id in a job stands for. */
import type { Documents } from "./documents.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import type { Candidate, Job, Line, Place } from "./jobDocument.ts";
import type { Mix } from "./mixDocument.ts";
import type { Base, Colourant, SetUp, Shelf } from "./shelfDocument.ts";

/** An item that a recipe may name. */
export type RecipeItem =
  | { readonly kind: "base"; readonly item: Base }
  | { readonly kind: "colourant"; readonly item: Colourant };

/** The base, additive, reducer or colourant of that id; null where the shelf has none. */
export function recipeItem(shelf: Shelf, itemId: string): RecipeItem | null {
  const base = shelf.bases.find((item) => item.id === itemId);
  if (base !== undefined) return { kind: "base", item: base };
  const colourant = shelf.colourants.find((item) => item.id === itemId);
  return colourant === undefined ? null : { kind: "colourant", item: colourant };
}

/** The lot that a line prints on; null where the library has none. */
export function lotOfLine({ library }: Documents, line: Line): GarmentLot | null {
  return library.garmentLots.find((lot) => lot.id === line.garmentLotId) ?? null;
}

/** Whether a place is printed on a line. */
export function isPrintedAt(place: Place, lineId: string): boolean {
  return place.lineIds === null || place.lineIds.includes(lineId);
}

/** The lines that a place is printed on, in the job's order. */
export function linesAt(job: Job, place: Place): readonly Line[] {
  return job.lines.filter((line) => isPrintedAt(place, line.id));
}

/** The candidate chosen for a line at a place; null where none is. */
export function chosenCandidate(job: Job, lineId: string, placeId: string): Candidate | null {
  const choice = job.choices.find((one) => one.lineId === lineId && one.placeId === placeId);
  if (choice === undefined) return null;
  const place = job.places.find((one) => one.id === placeId);
  return place?.candidates.find((candidate) => candidate.id === choice.candidateId) ?? null;
}

/** The mix of that id; null where the job has none. */
export function mixOf(job: Job, mixId: string): Mix | null {
  return job.mixes.find((mix) => mix.id === mixId) ?? null;
}

/** The set-up of that id; null where the shelf has none. */
export function setUpOf(shelf: Shelf, setUpId: string): SetUp | null {
  return shelf.setUps.find((setUp) => setUp.id === setUpId) ?? null;
}

/** How many pieces a line has over all sizes. */
export function pieceCount(line: Line): number {
  return line.quantities.reduce((sum, quantity) => sum + quantity.count, 0);
}
