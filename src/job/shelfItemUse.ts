/** Who uses an item of the shelf; what is used cannot be removed. */
import type { Documents } from "./documents.ts";
import type { Job } from "./jobDocument.ts";
import type { Problem } from "./problem.ts";
import { itemIdsOfDilution, itemIdsOfPot, itemIdsOfTestPrint } from "./recordReferences.ts";
import type { Shelf } from "./shelfDocument.ts";

export type ShelfList = Exclude<keyof Shelf, "defaults">;

interface User {
  readonly code: string;
  readonly where: string;
  readonly name: string;
  readonly itemIds: readonly string[];
}

function recipeIds(recipe: readonly { readonly itemId: string }[]): string[] {
  return recipe.map((component) => component.itemId);
}

/** What of a job uses an item: its mixes, or the columns of its matrix. `at` is put before every path. */
function usersInJob(job: Job, list: ShelfList, at: string): User[] {
  if (list === "setUps") {
    return job.places.flatMap((place, placeIndex) =>
      place.candidates.map((candidate, index) => ({
        code: "used-by-candidate",
        where: `${at}.places[${placeIndex}].candidates[${index}]`,
        name: job.mixes.find((mix) => mix.id === candidate.mixId)?.name ?? "",
        itemIds: [candidate.setUpId],
      })),
    );
  }
  if (list !== "bases" && list !== "colourants") return [];
  return job.mixes.map((mix, index) => ({
    code: "used-by-mix",
    where: `${at}.mixes[${index}]`,
    name: mix.name,
    itemIds: recipeIds(mix.recipe),
  }));
}

function usersOf({ job, library }: Documents, list: ShelfList): User[] {
  const { shelf } = library;
  const setUps = shelf.setUps.map((setUp, index) => ({
    code: "used-by-set-up",
    where: `library.shelf.setUps[${index}]`,
    name: setUp.name,
    itemIds: list === "meshes" ? [setUp.meshId] : [setUp.squeegeeId],
  }));
  const inJob = usersInJob(job, list, "job");
  const masters = shelf.masters.map((master, index) => ({
    code: "used-by-master",
    where: `library.shelf.masters[${index}]`,
    name: shelf.colourants.find((item) => item.id === master.colourantId)?.name ?? "",
    itemIds: [master.colourantId, master.baseId],
  }));
  const testPrints = library.testPrints.map((print, index) => ({
    code: "used-by-test-print",
    where: `library.testPrints[${index}]`,
    name: print.printedAt,
    itemIds: list === "setUps" ? [print.setUpId] : itemIdsOfTestPrint(print),
  }));
  const pots = library.pots.map((pot, index) => ({
    code: "used-by-pot",
    where: `library.pots[${index}]`,
    name: pot.mixName,
    itemIds: itemIdsOfPot(pot),
  }));
  const dilutions = library.dilutions.map((dilution, index) => ({
    code: "used-by-dilution",
    where: `library.dilutions[${index}]`,
    name: dilution.madeOn,
    itemIds: itemIdsOfDilution(dilution),
  }));
  const goodsInChecks = library.goodsInChecks.map((check, index) => ({
    code: "used-by-goods-in-check",
    where: `library.goodsInChecks[${index}]`,
    name: check.at,
    itemIds: [check.baseId],
  }));
  switch (list) {
    case "bases":
    case "colourants":
      return [...inJob, ...masters, ...testPrints, ...pots, ...dilutions, ...goodsInChecks];
    case "setUps":
      return [...inJob, ...testPrints];
    case "meshes":
    case "squeegees":
      return setUps;
    case "masters":
      return [];
  }
}

/** Each other job that uses the item, once, by its number. */
function usersAmong(otherJobs: readonly Job[], list: ShelfList, id: string): Problem[] {
  return otherJobs.flatMap((job) => {
    const used = usersInJob(job, list, "job").some((user) => user.itemIds.includes(id));
    return used ? [{ code: "used-by-other-job", where: "", detail: id, values: { name: job.number } }] : [];
  });
}

/**
 * The users of a shelf item among the open job, the shelf, the records and `otherJobs`: a code, the path, and the user's
 * name in `values.name`. Jobs that are not given are not seen; a job whose item is gone says so when it is predicted.
 */
export function shelfItemUse(
  documents: Documents,
  list: ShelfList,
  id: string,
  otherJobs: readonly Job[] = [],
): Problem[] {
  const here = usersOf(documents, list)
    .filter((user) => user.itemIds.includes(id))
    .map(({ code, where, name }) => ({ code, where, detail: id, values: { name } }));
  return [...here, ...usersAmong(otherJobs, list, id)];
}
