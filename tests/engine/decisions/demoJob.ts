// The demo's documents for tests of decisions, with the mill B forest chosen as its approved sister is printed.
import { readFileSync } from "node:fs";
import { readJobArchive } from "../../../src/exchange/jobArchive.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";

/** From the project's root, where both the tests and the built bench run. */
const DEMO = "demo-data/verrowmoor-vm-217.tonebench.json";

export function demoDocuments(): Documents {
  const read = readJobArchive(readFileSync(DEMO, "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  return read.documents;
}

/** The front, the mill B forest that stands in for the approved one, and the approved one's own choice. */
export function forests({ job, library }: Documents) {
  const place = job.places[0]!;
  const line = job.lines.find(({ substitutedForLotId }) => substitutedForLotId !== null)!;
  const lot = library.garmentLots.find(({ id }) => id === line.garmentLotId)!;
  const approved = job.choices.find(({ placeId }) => placeId === place.id)!;
  return { place, line, lot, candidateId: approved.candidateId };
}

export function withForestChosen(documents: Documents): Documents {
  const { place, line, candidateId } = forests(documents);
  return chooseCandidate(documents, { lineId: line.id, placeId: place.id, candidateId });
}
