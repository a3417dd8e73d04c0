/** Whether every id in job and library leads to something, and none is taken twice. */
import type { Documents } from "../job/documents.ts";
import type { Library } from "../job/libraryDocument.ts";
import type { MixComponent } from "../job/mixDocument.ts";
import type { Problem } from "../job/problem.ts";

type Identified = readonly { readonly id: string }[];

function idsOf(...lists: readonly Identified[]): ReadonlySet<string> {
  return new Set(lists.flatMap((list) => list.map((item) => item.id)));
}

function repeatedIds(lists: Readonly<Record<string, Identified>>): Problem[] {
  return Object.entries(lists).flatMap(([where, list]) => {
    const seen = new Set<string>();
    return list.flatMap((item, index) => {
      if (seen.has(item.id)) return [{ code: "repeated-id", where: `${where}[${index}].id` }];
      seen.add(item.id);
      return [];
    });
  });
}

/** Collects the references that lead nowhere. */
class ReferenceCheck {
  readonly problems: Problem[] = [];
  readonly #code: string;

  constructor(code = "missing-reference") {
    this.#code = code;
  }

  expect(known: ReadonlySet<string>, id: string | null, where: string): void {
    if (id !== null && !known.has(id)) this.problems.push({ code: this.#code, where, detail: id });
  }

  expectRecipe(known: ReadonlySet<string>, recipe: readonly MixComponent[], where: string): void {
    recipe.forEach((component, index) => {
      this.expect(known, component.itemId, `${where}.recipe[${index}].itemId`);
    });
  }
}

/** The library's own references that lead nowhere, and ids taken twice. */
export function libraryReferenceProblems(library: Library): Problem[] {
  const { shelf, garmentLots, testPrints, approvals } = library;
  const check = new ReferenceCheck();
  const lots = idsOf(garmentLots);
  const items = idsOf(shelf.bases, shelf.colourants);
  const colourants = idsOf(shelf.colourants);
  const bases = idsOf(shelf.bases);
  const meshes = idsOf(shelf.meshes);
  const squeegees = idsOf(shelf.squeegees);
  const setUps = idsOf(shelf.setUps);
  const prints = idsOf(testPrints);
  const approved = idsOf(approvals);
  shelf.masters.forEach((master, index) => {
    check.expect(colourants, master.colourantId, `library.shelf.masters[${index}].colourantId`);
    check.expect(bases, master.baseId, `library.shelf.masters[${index}].baseId`);
  });
  shelf.setUps.forEach((setUp, index) => {
    check.expect(meshes, setUp.meshId, `library.shelf.setUps[${index}].meshId`);
    check.expect(squeegees, setUp.squeegeeId, `library.shelf.setUps[${index}].squeegeeId`);
  });
  testPrints.forEach((print, index) => {
    const where = `library.testPrints[${index}]`;
    check.expect(lots, print.garmentLotId, `${where}.garmentLotId`);
    check.expect(setUps, print.setUpId, `${where}.setUpId`);
    check.expect(prints, print.supersedesId, `${where}.supersedesId`);
    check.expectRecipe(items, print.recipe, where);
  });
  approvals.forEach((approval, index) => {
    const where = `library.approvals[${index}]`;
    check.expect(lots, approval.garmentLotId, `${where}.garmentLotId`);
    check.expect(prints, approval.testPrintId, `${where}.testPrintId`);
    check.expect(approved, approval.supersedesId, `${where}.supersedesId`);
  });
  return [
    ...repeatedIds({
      "library.shelf.bases": shelf.bases,
      "library.shelf.colourants": shelf.colourants,
      "library.shelf.masters": shelf.masters,
      "library.shelf.meshes": shelf.meshes,
      "library.shelf.squeegees": shelf.squeegees,
      "library.shelf.setUps": shelf.setUps,
      "library.garmentLots": garmentLots,
      "library.testPrints": testPrints,
      "library.approvals": approvals,
    }),
    ...check.problems,
  ];
}

/**
 * The job's references to what the shelf no longer holds. No fault of the file: a shelf item may be removed while a
 * job that is not open uses it, and such a job still opens, exports and imports; it says so when it is predicted.
 */
export function removedShelfItems({ job, library }: Documents): Problem[] {
  const check = new ReferenceCheck("removed-from-shelf");
  const items = idsOf(library.shelf.bases, library.shelf.colourants);
  const setUps = idsOf(library.shelf.setUps);
  job.mixes.forEach((mix, index) => {
    check.expectRecipe(items, mix.recipe, `job.mixes[${index}]`);
  });
  job.places.forEach((place, placeIndex) => {
    place.candidates.forEach((candidate, index) => {
      check.expect(setUps, candidate.setUpId, `job.places[${placeIndex}].candidates[${index}].setUpId`);
    });
  });
  return check.problems;
}

/** The job's references that lead nowhere, in the job or among the garments, and ids taken twice. */
export function jobReferenceProblems({ job, library }: Documents): Problem[] {
  const check = new ReferenceCheck();
  const lots = idsOf(library.garmentLots);
  const lines = idsOf(job.lines);
  const mixes = idsOf(job.mixes);
  const places = idsOf(job.places);
  job.lines.forEach((line, index) => {
    check.expect(lots, line.garmentLotId, `job.lines[${index}].garmentLotId`);
    check.expect(lots, line.substitutedForLotId, `job.lines[${index}].substitutedForLotId`);
  });
  job.places.forEach((place, placeIndex) => {
    const where = `job.places[${placeIndex}]`;
    place.candidates.forEach((candidate, index) => {
      check.expect(mixes, candidate.mixId, `${where}.candidates[${index}].mixId`);
    });
    place.lineIds?.forEach((lineId, index) => {
      check.expect(lines, lineId, `${where}.lineIds[${index}]`);
    });
  });
  job.choices.forEach((choice, index) => {
    const where = `job.choices[${index}]`;
    check.expect(lines, choice.lineId, `${where}.lineId`);
    check.expect(places, choice.placeId, `${where}.placeId`);
    const place = job.places.find((candidatePlace) => candidatePlace.id === choice.placeId);
    if (place) check.expect(idsOf(place.candidates), choice.candidateId, `${where}.candidateId`);
  });
  return [
    ...repeatedIds({
      "job.lines": job.lines,
      "job.mixes": job.mixes,
      "job.places": job.places,
      "job.checklist": job.checklist,
      ...Object.fromEntries(
        job.places.map((place, index) => [`job.places[${index}].candidates`, place.candidates]),
      ),
    }),
    ...check.problems,
  ];
}
