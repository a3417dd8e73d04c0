/** The record book is only ever added to, and nothing is added that names nothing. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { addInkLot, changeInkLot, removeInkLot } from "../../src/job/edits/inkLots.ts";
import {
  appendApproval,
  appendGoodsInCheck,
  appendSlipAnswer,
  appendTestPrint,
} from "../../src/job/edits/records.ts";
import { LEDGER_NAMES } from "../../src/job/libraryDocument.ts";
import { testPrintSchema } from "../../src/job/recordDocument.ts";
import { withRecordedItems } from "../../src/job/recordedItems.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids } from "./exampleDocuments.ts";
import {
  exampleApproval,
  exampleDilution,
  exampleGoodsInCheck,
  examplePot,
  exampleSlipAnswer,
} from "./exampleRecords.ts";

const printed = appendTestPrint(exampleDocuments(), exampleTestPrint(1));
const NOWHERE = exampleId(999);

describe("the edits of the record book", () => {
  it("append one record each, and every reference leads somewhere", () => {
    const approved = appendApproval(printed, exampleApproval(1));
    const checked = appendGoodsInCheck(approved, exampleGoodsInCheck(1));
    const answered = appendSlipAnswer(checked, exampleSlipAnswer(1));
    expect(answered.library).toEqual({
      ...exampleDocuments().library,
      testPrints: [exampleTestPrint(1)],
      approvals: [exampleApproval(1)],
      goodsInChecks: [exampleGoodsInCheck(1)],
      slipAnswers: [exampleSlipAnswer(1)],
    });
    expect(validateDocuments(answered)).toEqual([]);
  });

  it("take a correction beside what it corrects", () => {
    const correction = exampleTestPrint(2, { supersedesId: exampleTestPrint(1).id });
    expect(appendTestPrint(printed, correction).library.testPrints).toEqual([
      exampleTestPrint(1),
      correction,
    ]);
  });

  it.each<[string, (d: Documents) => Documents, RegExp]>([
    [
      "a print on no lot",
      (d) => appendTestPrint(d, exampleTestPrint(2, { garmentLotId: NOWHERE })),
      /lot must exist/,
    ],
    [
      "a print through no set-up",
      (d) => appendTestPrint(d, exampleTestPrint(2, { setUpId: NOWHERE })),
      /set-up must/,
    ],
    [
      "a print of an ink that is not there",
      (d) => appendTestPrint(d, exampleTestPrint(2, { actualGrams: [{ itemId: NOWHERE, grams: 1 }] })),
      /recipe item must/,
    ],
    ["a print under a taken id", (d) => appendTestPrint(d, exampleTestPrint(1)), /new id/],
    [
      "a second correction of one print",
      (d) => {
        const supersedesId = exampleTestPrint(1).id;
        const once = appendTestPrint(d, exampleTestPrint(2, { supersedesId }));
        return appendTestPrint(once, exampleTestPrint(3, { supersedesId }));
      },
      /corrected already/,
    ],
    [
      "an approval of no print",
      (d) => appendApproval(d, exampleApproval(1, { testPrintId: NOWHERE })),
      /test print must/,
    ],
    [
      "a goods-in check of a lot against itself",
      (d) => appendGoodsInCheck(d, exampleGoodsInCheck(1, { arrivingLotId: ids.lot })),
      /another lot/,
    ],
    [
      "an answer about no print",
      (d) => appendSlipAnswer(d, exampleSlipAnswer(1, { testPrintId: NOWHERE })),
      /test print/,
    ],
  ])("refuse %s", (_name, edit, message) => {
    expect(() => edit(printed)).toThrow(message);
  });
});

describe("the schema of a test print", () => {
  const problem = (change: object) =>
    testPrintSchema.safeParse({ ...exampleTestPrint(1), ...change }).error?.issues[0];
  const eye = { kind: "by-eye", grade: 3.5, direction: "darker", light: "D65", observerCount: 1 };

  it("takes half steps of the grey scale and no others", () => {
    expect(problem({ readings: eye })).toBeUndefined();
    for (const grade of [0.5, 3.25, 5.5]) expect(problem({ readings: { ...eye, grade } })).toBeDefined();
  });

  it("asks for the light, observer and geometry of a reading", () => {
    const { viewing: _, ...without } = exampleTestPrint(1).readings as { viewing: object };
    expect(problem({ readings: without })?.path).toEqual(["readings", "viewing"]);
  });

  it("takes one pair for the mean of many, but not two for three", () => {
    const { readings } = exampleTestPrint(1);
    if (readings.kind !== "lab") throw new Error("the example is read by an instrument");
    const [pair] = readings.pairs;
    expect(problem({ readings: { ...readings, pairCount: 3 } })).toBeUndefined();
    expect(problem({ readings: { ...readings, pairs: [pair, pair], pairCount: 3 } })).toMatchObject({
      path: ["readings", "pairCount"],
      params: { code: "pair-count" },
    });
  });

  it("refuses grams of nothing, and a photo that is no picture or too large", () => {
    expect(problem({ actualGrams: [{ itemId: ids.clear, grams: 0 }] })).toMatchObject({
      params: { code: "no-grams" },
    });
    const photo = { name: "print.png", mediaType: "image/png", dataUrl: "data:image/png;base64,iVBORw0K" };
    expect(problem({ photo })).toBeUndefined();
    expect(problem({ photo: { ...photo, dataUrl: "data:text/html;base64,PGI+" } })).toBeDefined();
    const large = `data:image/png;base64,${"A".repeat(1_048_576)}`;
    expect(problem({ photo: { ...photo, dataUrl: large } })).toBeDefined();
  });
});

describe("what records stand on", () => {
  it("stays when undo takes it back: the lots of a goods-in check, the inks of a pot and of a master", () => {
    const { library } = exampleDocuments();
    const bare = { ...library.shelf, bases: [], colourants: [] };
    const none = Object.fromEntries(LEDGER_NAMES.map((name) => [name, []])) as unknown as typeof library;
    const kept = (records: Partial<typeof library>) =>
      withRecordedItems({ shelf: bare, garmentLots: [] }, library, { ...none, ...records });
    const checked = kept({ goodsInChecks: [exampleGoodsInCheck(1)] });
    expect(checked.garmentLots.map(({ id }) => id)).toEqual([ids.lot, ids.otherLot]);
    expect(checked.shelf.bases.map(({ id }) => id)).toEqual([ids.clear]);
    for (const records of [{ pots: [examplePot(1)] }, { dilutions: [exampleDilution(1)] }]) {
      const { shelf } = kept(records);
      expect([...shelf.bases, ...shelf.colourants].map(({ id }) => id)).toEqual([ids.clear, ids.black]);
    }
  });
});

describe("the lots of an ink", () => {
  const lot = { id: exampleId(700), code: "GC-1", receivedOn: "2026-01-02", expiresOn: null, note: "" };
  const stocked = addInkLot(exampleDocuments(), "bases", ids.clear, lot);
  const lotsOf = (documents: Documents) => documents.library.shelf.bases[0]?.lots;

  it("are added, changed and taken off", () => {
    expect(lotsOf(stocked)).toEqual([lot]);
    const changed = changeInkLot(stocked, "bases", ids.clear, lot.id, { expiresOn: "2026-12-01" });
    expect(lotsOf(changed)).toEqual([{ ...lot, expiresOn: "2026-12-01" }]);
    expect(lotsOf(removeInkLot(changed, "bases", ids.clear, lot.id))).toEqual([]);
  });

  it("have days that the calendar has", () => {
    const change = { expiresOn: "2026-02-30" };
    expect(() => changeInkLot(stocked, "bases", ids.clear, lot.id, change)).toThrow(/expiresOn/);
  });
});
