/** From the documents to the ink room that the view shows. */
import { childrensLines } from "../../core/planning/ink/childrensLimits.ts";
import type { Documents } from "../documents.ts";
import { lineName } from "../lineName.ts";
import { chosenCandidate, linesAt, lotOfLine } from "../lookup.ts";
import { batchOf } from "./batchOf.ts";
import type { InkBatch } from "./inkBatch.ts";
import type { InkRoom, InkRoomOptions } from "./inkRoom.ts";
import { shelfMasters } from "./masters.ts";
import { pressRuns } from "./pressRuns.ts";

function unchosenOf(documents: Documents): InkRoom["unchosen"] {
  const { job } = documents;
  return job.places.flatMap((place) =>
    linesAt(job, place)
      .filter((line) => chosenCandidate(job, line.id, place.id) === null)
      .map((line) => {
        const lot = lotOfLine(documents, line);
        return { lineId: line.id, placeId: place.id, name: lot === null ? "" : lineName(lot) };
      }),
  );
}

/** Everything the Ink view shows of a job. Only mixes that are chosen for some garment are counted. */
export function inkRoomOf(documents: Documents, { today, wishes = {} }: InkRoomOptions): InkRoom {
  const { job, library } = documents;
  const masters = shelfMasters(library.shelf, today);
  const chosenMixIds = new Set(
    job.places.flatMap((place) =>
      linesAt(job, place).flatMap((line) => chosenCandidate(job, line.id, place.id)?.mixId ?? []),
    ),
  );
  const batches: InkBatch[] = [];
  const refused: InkRoom["refused"][number][] = [];
  for (const mix of job.mixes) {
    if (!chosenMixIds.has(mix.id)) continue;
    const found = batchOf(documents, mix, { today, wishes: wishes[mix.id] ?? {}, masters });
    if ("refused" in found) refused.push({ mixId: mix.id, mixName: mix.name, problems: found.refused });
    else batches.push(found);
  }
  return {
    batches,
    refused,
    runs: pressRuns(batches, library.shelf),
    masters,
    unchosen: unchosenOf(documents),
    childrensLines: childrensLines(job.forChildren),
  };
}
