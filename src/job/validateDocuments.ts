/** Whether every id in job and library leads to something and none is taken twice: what a schema cannot see. */
import type { Documents } from "./documents.ts";
import { isPrintedAt } from "./lookup.ts";
import type { MixComponent } from "./mixDocument.ts";
import type { Problem } from "./problem.ts";

type Identified = readonly { readonly id: string }[];
type KnownIds = ReadonlySet<string>;

const idsOf = (...lists: readonly Identified[]): KnownIds =>
  new Set(lists.flatMap((list) => list.map((item) => item.id)));

function missing(known: KnownIds, id: string | null, where: string): Problem[] {
  return id === null || known.has(id) ? [] : [{ code: "missing-reference", where, detail: id }];
}

function missingComponents(known: KnownIds, recipe: readonly MixComponent[], where: string): Problem[] {
  return recipe.flatMap(({ itemId }, index) => missing(known, itemId, `${where}.recipe[${index}].itemId`));
}

/** `seen` is shared by lists whose ids are one name space. */
function repeated(list: Identified, where: string, seen = new Set<string>()): Problem[] {
  return list.flatMap(({ id }, index) => {
    if (seen.has(id)) return [{ code: "repeated-id", where: `${where}[${index}].id`, detail: id }];
    seen.add(id);
    return [];
  });
}

/** The library's own references that lead nowhere, and ids taken twice. */
export function libraryReferenceProblems(library: Documents["library"]): Problem[] {
  const { shelf, garmentLots, testPrints, approvals } = library;
  const at = "library.shelf";
  const colourants = idsOf(shelf.colourants);
  const bases = idsOf(shelf.bases);
  const items = idsOf(shelf.bases, shelf.colourants);
  const meshes = idsOf(shelf.meshes);
  const squeegees = idsOf(shelf.squeegees);
  const setUps = idsOf(shelf.setUps);
  const lots = idsOf(garmentLots);
  const prints = idsOf(testPrints);
  const approved = idsOf(approvals);
  const recipeItems = new Set<string>();
  return [
    ...repeated(shelf.bases, `${at}.bases`, recipeItems),
    ...repeated(shelf.colourants, `${at}.colourants`, recipeItems),
    ...repeated(shelf.masters, `${at}.masters`),
    ...repeated(shelf.meshes, `${at}.meshes`),
    ...repeated(shelf.squeegees, `${at}.squeegees`),
    ...repeated(shelf.setUps, `${at}.setUps`),
    ...repeated(garmentLots, "library.garmentLots"),
    ...repeated(testPrints, "library.testPrints"),
    ...repeated(approvals, "library.approvals"),
    ...shelf.masters.flatMap(({ colourantId, baseId }, index) => [
      ...missing(colourants, colourantId, `${at}.masters[${index}].colourantId`),
      ...missing(bases, baseId, `${at}.masters[${index}].baseId`),
    ]),
    ...shelf.setUps.flatMap(({ meshId, squeegeeId }, index) => [
      ...missing(meshes, meshId, `${at}.setUps[${index}].meshId`),
      ...missing(squeegees, squeegeeId, `${at}.setUps[${index}].squeegeeId`),
    ]),
    ...testPrints.flatMap((print, index) => [
      ...missing(lots, print.garmentLotId, `library.testPrints[${index}].garmentLotId`),
      ...missing(setUps, print.setUpId, `library.testPrints[${index}].setUpId`),
      ...missing(prints, print.supersedesId, `library.testPrints[${index}].supersedesId`),
      ...missingComponents(items, print.recipe, `library.testPrints[${index}]`),
    ]),
    ...approvals.flatMap((approval, index) => [
      ...missing(lots, approval.garmentLotId, `library.approvals[${index}].garmentLotId`),
      ...missing(prints, approval.testPrintId, `library.approvals[${index}].testPrintId`),
      ...missing(approved, approval.supersedesId, `library.approvals[${index}].supersedesId`),
    ]),
  ];
}

/**
 * The job's references that lead nowhere, ids taken twice, and choices that nothing prints. The checklist may name
 * lines and places that were removed since: it is a ledger.
 */
export function jobReferenceProblems({ job, library }: Documents): Problem[] {
  const lots = idsOf(library.garmentLots);
  const items = idsOf(library.shelf.bases, library.shelf.colourants);
  const setUps = idsOf(library.shelf.setUps);
  const lines = idsOf(job.lines);
  const mixes = idsOf(job.mixes);
  const places = idsOf(job.places);
  const candidateIds = new Set<string>();
  const chosen = new Set<string>();
  return [
    ...repeated(job.lines, "job.lines"),
    ...repeated(job.places, "job.places"),
    ...repeated(job.mixes, "job.mixes"),
    ...repeated(job.checklist, "job.checklist"),
    ...job.places.flatMap((place, index) =>
      repeated(place.candidates, `job.places[${index}].candidates`, candidateIds),
    ),
    ...job.lines.flatMap((line, index) => [
      ...missing(lots, line.garmentLotId, `job.lines[${index}].garmentLotId`),
      ...missing(lots, line.substitutedForLotId, `job.lines[${index}].substitutedForLotId`),
    ]),
    ...job.mixes.flatMap((mix, index) => missingComponents(items, mix.recipe, `job.mixes[${index}]`)),
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
  ];
}

/** All of both; empty for documents that hold together. */
export function validateDocuments(documents: Documents): Problem[] {
  return [...libraryReferenceProblems(documents.library), ...jobReferenceProblems(documents)];
}
