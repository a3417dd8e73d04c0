/** An exported job takes along the ink room's and the record book's entries that belong to it, and no others. */
import { describe, expect, it } from "vitest";
import { readJobArchive, writeJobArchive } from "../../src/exchange/jobArchive.ts";
import { usedLibrary } from "../../src/exchange/usedLibrary.ts";
import type { Documents } from "../../src/job/documents.ts";
import type { Library } from "../../src/job/libraryDocument.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids } from "../job/exampleDocuments.ts";
import {
  exampleDilution,
  exampleGoodsInCheck,
  exampleMaster,
  examplePot,
  examplePotEntry,
  examplePressEntry,
  exampleSlipAnswer,
} from "../job/exampleRecords.ts";

function withRecords(records: Partial<Library>): Documents {
  const { job, library } = exampleDocuments();
  return { job, library: { ...library, ...records } };
}

const idsOf = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);

describe("the library of an exported job", () => {
  it("holds the job's pots with what was poured, not another job's", () => {
    const foreign = examplePot(2, { jobId: exampleId(999) });
    const used = usedLibrary(
      withRecords({
        pots: [examplePot(1), foreign],
        potEntries: [examplePotEntry(1), examplePotEntry(2, { potId: foreign.id })],
      }),
    );
    expect(used.pots).toEqual([examplePot(1)]);
    expect(used.potEntries).toEqual([examplePotEntry(1)]);
  });

  it("holds the print of a first-off with its lot and its corrections, though its line is gone, and no other print of it", () => {
    const { library } = exampleDocuments();
    const lot = { ...library.garmentLots[0]!, id: exampleId(12) };
    const first = exampleTestPrint(1, { garmentLotId: lot.id });
    const second = exampleTestPrint(2, { garmentLotId: lot.id, supersedesId: first.id });
    const documents = withRecords({
      garmentLots: [...library.garmentLots, lot],
      testPrints: [first, second],
    });
    expect(usedLibrary(documents).testPrints).toEqual([]);
    const pressLog = [
      examplePressEntry(1, { lineId: exampleId(999), kind: "first-off", testPrintId: second.id }),
      examplePressEntry(2),
    ];
    const printed = { ...documents, job: { ...documents.job, pressLog } };
    const used = usedLibrary(printed);
    expect(idsOf(used.testPrints)).toEqual([first.id, second.id]);
    expect(idsOf(used.garmentLots)).toContain(lot.id);
    expect(readJobArchive(writeJobArchive(printed))).toEqual({
      ok: true,
      documents: { job: printed.job, library: used },
    });
  });

  it("holds the weighing of every master that it embeds, with its corrections before and after", () => {
    const first = exampleDilution(1);
    const second = exampleDilution(2, { supersedesId: first.id });
    const third = exampleDilution(3, { supersedesId: second.id });
    const other = exampleDilution(4);
    const documents = withRecords({
      dilutions: [first, second, third, other],
      potEntries: [examplePotEntry(1, { potId: third.id }), examplePotEntry(2, { potId: other.id })],
    });
    documents.library.shelf.masters.push(exampleMaster(1, { dilutionId: second.id }));
    const used = usedLibrary(documents);
    expect(idsOf(used.dilutions)).toEqual([first.id, second.id, third.id]);
    expect(idsOf(used.potEntries)).toEqual([examplePotEntry(1).id]);
    expect(validateDocuments({ job: documents.job, library: used })).toEqual([]);
  });

  it("holds inks that only a pot was mixed from, although no mix names them any more", () => {
    const documents = withRecords({ pots: [examplePot(1)] });
    const mixes = documents.job.mixes.map((mix) => ({
      ...mix,
      recipe: [{ itemId: ids.softener, massFraction: 1 }],
    }));
    const used = usedLibrary({ ...documents, job: { ...documents.job, mixes } });
    expect(idsOf(used.shelf.colourants)).toEqual([ids.black]);
    expect(idsOf(used.shelf.bases)).toEqual([ids.clear, ids.softener]);
  });

  it("holds goods-in checks of its lots with the other lot, and answers about its prints alone", () => {
    const { library } = exampleDocuments();
    const [lot] = library.garmentLots;
    const earlier = { ...lot!, id: exampleId(12) };
    const unrelated = { ...lot!, id: exampleId(13) };
    const elsewhere = exampleTestPrint(2, { garmentLotId: unrelated.id });
    const documents = withRecords({
      garmentLots: [...library.garmentLots, earlier, unrelated],
      testPrints: [exampleTestPrint(1), elsewhere],
      goodsInChecks: [
        exampleGoodsInCheck(1, { approvedLotId: earlier.id, arrivingLotId: ids.lot }),
        exampleGoodsInCheck(2, { approvedLotId: earlier.id, arrivingLotId: unrelated.id }),
      ],
      slipAnswers: [exampleSlipAnswer(1), exampleSlipAnswer(2, { testPrintId: elsewhere.id })],
    });
    const used = usedLibrary(documents);
    expect(idsOf(used.garmentLots)).toEqual([ids.lot, ids.otherLot, earlier.id]);
    expect(idsOf(used.goodsInChecks)).toEqual([exampleGoodsInCheck(1).id]);
    expect(idsOf(used.slipAnswers)).toEqual([exampleSlipAnswer(1).id]);
    const written = readJobArchive(writeJobArchive(documents));
    expect(written).toEqual({ ok: true, documents: { job: documents.job, library: used } });
  });
});
