/** Which library items a job uses, directly or through another item; an exported job embeds exactly these. */
import type { Documents } from "../job/documents.ts";
import type { Library, LibraryLedgers } from "../job/libraryDocument.ts";
import { itemIdsOfDilution, itemIdsOfLedgers, lotIdsOfLedgers } from "../job/recordReferences.ts";

interface Superseding {
  readonly id: string;
  readonly supersedesId: string | null;
}

/** Those wanted and those that they correct, one after the other, in the list's own order. */
function withCorrected<Entry extends Superseding>(
  list: readonly Entry[],
  isWanted: (entry: Entry) => boolean,
): Entry[] {
  const byId = new Map(list.map((entry) => [entry.id, entry]));
  const wanted = new Set<string>();
  for (const entry of list) {
    if (!isWanted(entry)) continue;
    let corrected: Entry | undefined = entry;
    while (corrected !== undefined && !wanted.has(corrected.id)) {
      wanted.add(corrected.id);
      corrected = corrected.supersedesId === null ? undefined : byId.get(corrected.supersedesId);
    }
  }
  return list.filter((entry) => wanted.has(entry.id));
}

type PrintRecords = Pick<LibraryLedgers, "testPrints" | "approvals" | "goodsInChecks" | "slipAnswers">;

/** The records of the lots, what they correct, the prints that were approved or read at the press, and the answers about them. */
function printRecords(
  library: Library,
  lotIds: ReadonlySet<string>,
  pressPrintIds: ReadonlySet<string>,
): PrintRecords {
  const approvals = withCorrected(library.approvals, ({ garmentLotId }) => lotIds.has(garmentLotId));
  const approvedIds = new Set(approvals.map(({ testPrintId }) => testPrintId));
  const testPrints = withCorrected(
    library.testPrints,
    ({ id, garmentLotId }) => lotIds.has(garmentLotId) || approvedIds.has(id) || pressPrintIds.has(id),
  );
  const printIds = new Set(testPrints.map(({ id }) => id));
  return {
    testPrints,
    approvals,
    goodsInChecks: withCorrected(
      library.goodsInChecks,
      ({ approvedLotId, arrivingLotId }) => lotIds.has(approvedLotId) || lotIds.has(arrivingLotId),
    ),
    slipAnswers: library.slipAnswers.filter(({ testPrintId }) => printIds.has(testPrintId)),
  };
}

/** The masters of the colourants in use with their dilutions, and the bases and colourants that these bring in turn. */
function masterRecords({ shelf, dilutions }: Library, itemIds: Set<string>) {
  let size = -1;
  let masters: Library["shelf"]["masters"] = [];
  let made: Library["dilutions"] = [];
  while (size !== itemIds.size) {
    size = itemIds.size;
    masters = shelf.masters.filter((master) => itemIds.has(master.colourantId));
    const dilutionIds = new Set(masters.map(({ dilutionId }) => dilutionId));
    // A correction stands after what it corrects.
    for (const { id, supersedesId } of dilutions) {
      if (supersedesId !== null && dilutionIds.has(supersedesId)) dilutionIds.add(id);
    }
    made = withCorrected(dilutions, ({ id }) => dilutionIds.has(id));
    for (const { baseId } of masters) itemIds.add(baseId);
    for (const id of made.flatMap(itemIdsOfDilution)) itemIds.add(id);
  }
  return { masters, dilutions: made };
}

/** The part of the library that the job uses, in the library's own order; the shop's defaults always. */
export function usedLibrary({ job, library }: Documents): Library {
  const { shelf } = library;
  const lotIds = new Set(
    job.lines.flatMap((line) => [line.garmentLotId, line.substitutedForLotId ?? line.garmentLotId]),
  );
  // A line of the press log may be gone since, and its lot with it: the print that it names stays.
  const pressPrintIds = new Set(job.pressLog.flatMap(({ testPrintId }) => testPrintId ?? []));
  const records = printRecords(library, lotIds, pressPrintIds);
  for (const lotId of lotIdsOfLedgers(records)) lotIds.add(lotId);

  const pots = withCorrected(library.pots, ({ jobId }) => jobId === job.id);
  const itemIds = itemIdsOfLedgers({ ...records, pots, dilutions: [] });
  for (const { recipe } of job.mixes) for (const { itemId } of recipe) itemIds.add(itemId);
  const { masters, dilutions } = masterRecords(library, itemIds);
  const weighedIds = new Set([...pots, ...dilutions].map(({ id }) => id));

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
    ...records,
    pots,
    dilutions,
    potEntries: withCorrected(library.potEntries, ({ potId }) => weighedIds.has(potId)),
  };
}
