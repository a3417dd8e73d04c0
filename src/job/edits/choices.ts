/** Which candidate is printed on a line at a place. */
import type { Documents } from "../documents.ts";
import type { Choice } from "../jobDocument.ts";
import { isPrintedAt } from "../lookup.ts";
import { requireId, requireItem } from "./listEdit.ts";

/** Chooses a candidate for a line at a place, in place of an earlier one; null takes the choice back. */
export function chooseCandidate(
  documents: Documents,
  { lineId, placeId, candidateId }: Omit<Choice, "candidateId"> & { readonly candidateId: string | null },
): Documents {
  const { job } = documents;
  requireId(job.lines, lineId, "line");
  const place = requireItem(job.places, placeId, "place");
  const isHere = (choice: Choice) => choice.lineId === lineId && choice.placeId === placeId;
  if (candidateId === null) {
    return { ...documents, job: { ...job, choices: job.choices.filter((choice) => !isHere(choice)) } };
  }
  requireId(place.candidates, candidateId, "candidate");
  if (!isPrintedAt(place, lineId)) {
    throw new RangeError(`line must be printed at the place to choose for it; got ${lineId}`);
  }
  const choice: Choice = { lineId, placeId, candidateId };
  const choices = job.choices.some(isHere)
    ? job.choices.map((one) => (isHere(one) ? choice : one))
    : [...job.choices, choice];
  return { ...documents, job: { ...job, choices } };
}
