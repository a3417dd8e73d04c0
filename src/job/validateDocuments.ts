/** Whether every id in job and library leads to something and none is taken twice: what a schema cannot see. */
import type { Documents } from "./documents.ts";
import { isPrintedAt } from "./lookup.ts";
import type { Problem } from "./problem.ts";
import { idsOf, missing, missingComponents, repeated } from "./references.ts";
import { libraryReferenceProblems } from "./validateLibrary.ts";

/**
 * The job's references that lead nowhere, ids taken twice, and choices that nothing prints. The checklist and the
 * press log may name lines and places that were removed since: they are ledgers.
 */
export function jobReferenceProblems({ job, library }: Documents): Problem[] {
  const lots = idsOf(library.garmentLots);
  const items = idsOf(library.shelf.bases, library.shelf.colourants);
  const setUps = idsOf(library.shelf.setUps);
  const lines = idsOf(job.lines);
  const mixes = idsOf(job.mixes);
  const places = idsOf(job.places);
  const testPrints = idsOf(library.testPrints);
  const pressEntries = idsOf(job.pressLog);
  const candidateIds = new Set<string>();
  const chosen = new Set<string>();
  return [
    ...repeated(job.lines, "job.lines"),
    ...repeated(job.places, "job.places"),
    ...repeated(job.mixes, "job.mixes"),
    ...repeated(job.checklist, "job.checklist"),
    ...repeated(job.pressLog, "job.pressLog"),
    ...job.places.flatMap((place, index) =>
      repeated(place.candidates, `job.places[${index}].candidates`, candidateIds),
    ),
    ...job.lines.flatMap((line, index) => [
      ...missing(lots, line.garmentLotId, `job.lines[${index}].garmentLotId`),
      ...missing(lots, line.substitutedForLotId, `job.lines[${index}].substitutedForLotId`),
    ]),
    ...job.mixes.flatMap((mix, index) => missingComponents(items, mix.recipe, `job.mixes[${index}].recipe`)),
    ...job.places.flatMap((place, at) => [
      ...place.candidates.flatMap((candidate, index) => [
        ...missing(mixes, candidate.mixId, `job.places[${at}].candidates[${index}].mixId`),
        ...missing(setUps, candidate.setUpId, `job.places[${at}].candidates[${index}].setUpId`),
      ]),
      ...(place.lineIds ?? []).flatMap((id, index) =>
        missing(lines, id, `job.places[${at}].lineIds[${index}]`),
      ),
    ]),
    ...job.choices.flatMap(({ lineId, placeId, candidateId }, index) => {
      const where = `job.choices[${index}]`;
      const place = job.places.find((one) => one.id === placeId);
      const key = `${lineId} ${placeId}`;
      const isSecond = chosen.has(key);
      chosen.add(key);
      return [
        ...missing(lines, lineId, `${where}.lineId`),
        ...missing(places, placeId, `${where}.placeId`),
        ...(place === undefined ? [] : missing(idsOf(place.candidates), candidateId, `${where}.candidateId`)),
        ...(isSecond ? [{ code: "repeated-choice", where }] : []),
        ...(place === undefined || isPrintedAt(place, lineId) ? [] : [{ code: "choice-not-printed", where }]),
      ];
    }),
    ...job.pressLog.flatMap((entry, index) => [
      ...missing(testPrints, entry.testPrintId, `job.pressLog[${index}].testPrintId`),
      ...missing(pressEntries, entry.supersedesId, `job.pressLog[${index}].supersedesId`),
    ]),
  ];
}

/** All of both; empty for documents that hold together. */
export function validateDocuments(documents: Documents): Problem[] {
  return [...libraryReferenceProblems(documents.library), ...jobReferenceProblems(documents)];
}
