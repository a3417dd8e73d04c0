/** Which library items a job uses, directly or through another item; an exported job embeds exactly these. */
import type { Documents } from "../job/documents.ts";
import type { Library } from "../job/libraryDocument.ts";
import type { Approval, TestPrint } from "../job/recordDocument.ts";

interface UsedRecords {
  readonly testPrints: readonly TestPrint[];
  readonly approvals: readonly Approval[];
}

/** The records of the lots, and every record that one of them names, until nothing new is named. */
function usedRecords(library: Library, lotIds: ReadonlySet<string>): UsedRecords {
  const printIds = new Set<string>();
  const approvalIds = new Set<string>();
  let size = -1;
  while (size !== printIds.size + approvalIds.size) {
    size = printIds.size + approvalIds.size;
    for (const approval of library.approvals) {
      if (!lotIds.has(approval.garmentLotId) && !approvalIds.has(approval.id)) continue;
      approvalIds.add(approval.id);
      printIds.add(approval.testPrintId);
      if (approval.supersedesId !== null) approvalIds.add(approval.supersedesId);
    }
    for (const print of library.testPrints) {
      if (!lotIds.has(print.garmentLotId) && !printIds.has(print.id)) continue;
      printIds.add(print.id);
      if (print.supersedesId !== null) printIds.add(print.supersedesId);
    }
  }
  return {
    testPrints: library.testPrints.filter((print) => printIds.has(print.id)),
    approvals: library.approvals.filter((approval) => approvalIds.has(approval.id)),
  };
}

/** The part of the library that the job uses, in the library's own order; the shop's defaults always. */
export function usedLibrary({ job, library }: Documents): Library {
  const { shelf } = library;
  const lotIds = new Set(
    job.lines.flatMap((line) => [line.garmentLotId, line.substitutedForLotId ?? line.garmentLotId]),
  );
  const records = usedRecords(library, lotIds);
  for (const record of [...records.testPrints, ...records.approvals]) lotIds.add(record.garmentLotId);

  const recipes = [...job.mixes, ...records.testPrints].map((item) => item.recipe);
  const itemIds = new Set(recipes.flatMap((recipe) => recipe.map((component) => component.itemId)));
  const masters = shelf.masters.filter((master) => itemIds.has(master.colourantId));
  for (const master of masters) itemIds.add(master.baseId);

  const setUpIds = new Set([
    ...job.places.flatMap((place) => place.candidates.map((candidate) => candidate.setUpId)),
    ...records.testPrints.map((print) => print.setUpId),
  ]);
  const setUps = shelf.setUps.filter((setUp) => setUpIds.has(setUp.id));
  const meshIds = new Set(setUps.map((setUp) => setUp.meshId));
  const squeegeeIds = new Set(setUps.map((setUp) => setUp.squeegeeId));

  return {
    shelf: {
      bases: shelf.bases.filter((base) => itemIds.has(base.id)),
      colourants: shelf.colourants.filter((colourant) => itemIds.has(colourant.id)),
      masters,
      meshes: shelf.meshes.filter((mesh) => meshIds.has(mesh.id)),
      squeegees: shelf.squeegees.filter((squeegee) => squeegeeIds.has(squeegee.id)),
      setUps,
      defaults: shelf.defaults,
    },
    garmentLots: library.garmentLots.filter((lot) => lotIds.has(lot.id)),
    testPrints: [...records.testPrints],
    approvals: [...records.approvals],
  };
}
