/** Who uses an item of the shelf; what is used cannot be removed. */
import type { Documents } from "./documents.ts";
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

function usersOf({ job, library }: Documents, list: ShelfList): User[] {
  const { shelf } = library;
  const setUps = shelf.setUps.map((setUp, index) => ({
    code: "used-by-set-up",
    where: `library.shelf.setUps[${index}]`,
    name: setUp.name,
    itemIds: list === "meshes" ? [setUp.meshId] : [setUp.squeegeeId],
  }));
  const mixes = job.mixes.map((mix, index) => ({
    code: "used-by-mix",
    where: `job.mixes[${index}]`,
    name: mix.name,
    itemIds: recipeIds(mix.recipe),
  }));
  const masters = shelf.masters.map((master, index) => ({
    code: "used-by-master",
    where: `library.shelf.masters[${index}]`,
    name: shelf.colourants.find((item) => item.id === master.colourantId)?.name ?? "",
    itemIds: [master.colourantId, master.baseId],
  }));
  const candidates = job.places.flatMap((place, placeIndex) =>
    place.candidates.map((candidate, index) => ({
      code: "used-by-candidate",
      where: `job.places[${placeIndex}].candidates[${index}]`,
      name: job.mixes.find((mix) => mix.id === candidate.mixId)?.name ?? "",
      itemIds: [candidate.setUpId],
    })),
  );
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
      return [...mixes, ...masters, ...testPrints, ...pots, ...dilutions, ...goodsInChecks];
    case "setUps":
      return [...candidates, ...testPrints];
    case "meshes":
    case "squeegees":
      return setUps;
    case "masters":
      return [];
  }
}

/**
 * The users of a shelf item among the open job, the shelf and the records: a code, the path, and the user's name in
 * `values.name`. Other jobs are not open and not seen; a job whose item is gone says so when it is predicted.
 */
export function shelfItemUse(documents: Documents, list: ShelfList, id: string): Problem[] {
  return usersOf(documents, list)
    .filter((user) => user.itemIds.includes(id))
    .map(({ code, where, name }) => ({ code, where, detail: id, values: { name } }));
}
