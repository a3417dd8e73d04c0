/** Whether every id in a library leads to something and none is taken twice. */
import { LEDGER_NAMES, type Library } from "./libraryDocument.ts";
import type { SheetLine } from "./potDocument.ts";
import type { Problem } from "./problem.ts";
import { idsOf, type KnownIds, missing, missingComponents, repeated } from "./references.ts";

/** Pots name jobs and mixes that may be elsewhere or gone, and lines what they were: only items and records are asked. */
function potReferenceProblems({ shelf, pots, dilutions, potEntries }: Library): Problem[] {
  const items = idsOf(shelf.bases, shelf.colourants);
  const bases = idsOf(shelf.bases);
  const colourants = idsOf(shelf.colourants);
  const potIds = idsOf(pots);
  const dilutionIds = idsOf(dilutions);
  const entryIds = idsOf(potEntries);
  const linesById = new Map([...pots, ...dilutions].map(({ id, lines }) => [id, idsOf(lines)] as const));
  return [
    ...pots.flatMap((pot, index) => [
      ...missingComponents(items, pot.recipe, `library.pots[${index}].recipe`),
      ...missingContents(items, pot.lines, `library.pots[${index}]`),
      ...missingComponents(items, pot.baseLots, `library.pots[${index}].baseLots`),
      ...missing(potIds, pot.supersedesId, `library.pots[${index}].supersedesId`),
    ]),
    ...dilutions.flatMap((dilution, index) => [
      ...missing(colourants, dilution.colourantId, `library.dilutions[${index}].colourantId`),
      ...missing(bases, dilution.baseId, `library.dilutions[${index}].baseId`),
      ...missingContents(items, dilution.lines, `library.dilutions[${index}]`),
      ...missingComponents(items, dilution.baseLots, `library.dilutions[${index}].baseLots`),
      ...missing(dilutionIds, dilution.supersedesId, `library.dilutions[${index}].supersedesId`),
    ]),
    ...potEntries.flatMap(({ potId, lineId, supersedesId }, index) => {
      const lines = linesById.get(potId);
      return [
        ...(lines === undefined ? missing(new Set(), potId, `library.potEntries[${index}].potId`) : []),
        ...(lines === undefined ? [] : missing(lines, lineId, `library.potEntries[${index}].lineId`)),
        ...missing(entryIds, supersedesId, `library.potEntries[${index}].supersedesId`),
      ];
    }),
  ];
}

function missingContents(items: KnownIds, lines: readonly SheetLine[], where: string): Problem[] {
  return lines.flatMap(({ contents }, index) =>
    missingComponents(items, contents, `${where}.lines[${index}].contents`),
  );
}

/** The library's own references that lead nowhere, and ids taken twice. */
export function libraryReferenceProblems(library: Library): Problem[] {
  const { shelf, garmentLots, testPrints, approvals, goodsInChecks, slipAnswers } = library;
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
  const checked = idsOf(goodsInChecks);
  const dilutions = idsOf(library.dilutions);
  const recipeItems = new Set<string>();
  const weighedIds = new Set<string>();
  const isWeighed = (name: string) => name === "pots" || name === "dilutions";
  return [
    ...repeated(shelf.bases, `${at}.bases`, recipeItems),
    ...repeated(shelf.colourants, `${at}.colourants`, recipeItems),
    ...repeated(shelf.masters, `${at}.masters`),
    ...repeated(shelf.meshes, `${at}.meshes`),
    ...repeated(shelf.squeegees, `${at}.squeegees`),
    ...repeated(shelf.setUps, `${at}.setUps`),
    ...repeated(garmentLots, "library.garmentLots"),
    ...LEDGER_NAMES.flatMap((name) =>
      // Entries name a pot or a dilution by one id.
      repeated(library[name], `library.${name}`, isWeighed(name) ? weighedIds : new Set()),
    ),
    ...(["bases", "colourants"] as const).flatMap((list) =>
      shelf[list].flatMap(({ lots: own }, index) => repeated(own, `${at}.${list}[${index}].lots`)),
    ),
    ...shelf.masters.flatMap(({ colourantId, baseId, dilutionId }, index) => [
      ...missing(colourants, colourantId, `${at}.masters[${index}].colourantId`),
      ...missing(bases, baseId, `${at}.masters[${index}].baseId`),
      ...missing(dilutions, dilutionId, `${at}.masters[${index}].dilutionId`),
    ]),
    ...shelf.setUps.flatMap(({ meshId, squeegeeId }, index) => [
      ...missing(meshes, meshId, `${at}.setUps[${index}].meshId`),
      ...missing(squeegees, squeegeeId, `${at}.setUps[${index}].squeegeeId`),
    ]),
    ...testPrints.flatMap((print, index) => [
      ...missing(lots, print.garmentLotId, `library.testPrints[${index}].garmentLotId`),
      ...missing(setUps, print.setUpId, `library.testPrints[${index}].setUpId`),
      ...missing(prints, print.supersedesId, `library.testPrints[${index}].supersedesId`),
      ...missingComponents(items, print.recipe, `library.testPrints[${index}].recipe`),
      ...missingComponents(items, print.actualGrams ?? [], `library.testPrints[${index}].actualGrams`),
    ]),
    ...approvals.flatMap((approval, index) => [
      ...missing(lots, approval.garmentLotId, `library.approvals[${index}].garmentLotId`),
      ...missing(prints, approval.testPrintId, `library.approvals[${index}].testPrintId`),
      ...missing(approved, approval.supersedesId, `library.approvals[${index}].supersedesId`),
    ]),
    ...goodsInChecks.flatMap((check, index) => [
      ...missing(lots, check.approvedLotId, `library.goodsInChecks[${index}].approvedLotId`),
      ...missing(lots, check.arrivingLotId, `library.goodsInChecks[${index}].arrivingLotId`),
      ...missing(bases, check.baseId, `library.goodsInChecks[${index}].baseId`),
      ...missing(checked, check.supersedesId, `library.goodsInChecks[${index}].supersedesId`),
    ]),
    ...slipAnswers.flatMap(({ testPrintId }, index) =>
      missing(prints, testPrintId, `library.slipAnswers[${index}].testPrintId`),
    ),
    ...potReferenceProblems(library),
  ];
}
