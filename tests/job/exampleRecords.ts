/** Invented records for tests: one of each kind, on the lots and inks of the example documents. */

import type { Dilution, Pot, PotEntry } from "../../src/job/potDocument.ts";
import type { PressEntry } from "../../src/job/pressDocument.ts";
import type { Approval, GoodsInCheck, SlipAnswer } from "../../src/job/recordDocument.ts";
import type { Master } from "../../src/job/shelfDocument.ts";
import { exampleId, ids, time } from "./exampleDocuments.ts";

export function exampleMaster(number: number, change: Partial<Master> = {}): Master {
  return {
    id: exampleId(0x60000 + number),
    colourantId: ids.black,
    baseId: ids.clear,
    massFraction: 0.1,
    madeOn: null,
    expiresOn: null,
    gramsLeft: null,
    dilutionId: null,
    note: "",
    ...change,
  };
}

export function exampleApproval(number: number, change: Partial<Approval> = {}): Approval {
  return {
    id: exampleId(0x30000 + number),
    garmentLotId: ids.lot,
    testPrintId: exampleId(0x20001),
    approvedBy: "A. Buyer",
    approvedAt: "2026-02-18T09:30:00Z",
    note: "",
    modelVersion: "",
    said: null,
    supersedesId: null,
    ...change,
  };
}

export function exampleGoodsInCheck(number: number, change: Partial<GoodsInCheck> = {}): GoodsInCheck {
  return {
    id: exampleId(0x40000 + number),
    approvedLotId: ids.lot,
    arrivingLotId: ids.otherLot,
    baseId: ids.clear,
    approvedChange: -5,
    arrivingChange: -8,
    viewing: { illuminant: "D65", observer: "10deg" },
    geometry: "45:0",
    at: time,
    by: "A. Printer",
    note: "",
    supersedesId: null,
    ...change,
  };
}

export function exampleSlipAnswer(number: number, change: Partial<SlipAnswer> = {}): SlipAnswer {
  return {
    id: exampleId(0x41000 + number),
    testPrintId: exampleId(0x20001),
    slip: "none",
    answer: "keep",
    by: "A. Printer",
    at: time,
    ...change,
  };
}

const recipe = [
  { itemId: ids.clear, massFraction: 0.995 },
  { itemId: ids.black, massFraction: 0.005 },
];

/** The line ids of the example pot. */
export const lineIds = { clear: ids.clear, master: exampleId(0x60001) };

/** 1 kg of the tinted example mix, its black weighed as a 10 % master in the same clear. */
export function examplePot(number: number, change: Partial<Pot> = {}): Pot {
  return {
    id: exampleId(0x50000 + number),
    jobId: ids.job,
    mixId: ids.otherMix,
    mixName: "Clear, a little black",
    recipe,
    recipeVersion: 1,
    potNumber: 1,
    potCount: 1,
    potLimitGrams: 1500,
    hazards: null,
    scaleStepGrams: 0.1,
    batchGrams: 1000,
    lines: [
      {
        id: lineIds.clear,
        role: "base",
        name: "Gloss clear",
        contents: [{ itemId: ids.clear, massFraction: 1 }],
        exactGrams: 950,
        grams: 950,
      },
      {
        id: lineIds.master,
        role: "master",
        name: "Black, 10 % in Gloss clear",
        contents: [
          { itemId: ids.black, massFraction: 0.1 },
          { itemId: ids.clear, massFraction: 0.9 },
        ],
        exactGrams: 50,
        grams: 50,
      },
    ],
    baseLots: [{ itemId: ids.clear, code: "GC-12" }],
    by: "A. Mixer",
    at: time,
    expiresOn: null,
    note: "",
    supersedesId: null,
    ...change,
  };
}

export function exampleDilution(number: number, change: Partial<Dilution> = {}): Dilution {
  return {
    id: exampleId(0x51000 + number),
    colourantId: ids.black,
    baseId: ids.clear,
    massFraction: 0.1,
    madeOn: "2026-02-10",
    scaleStepGrams: 0.1,
    batchGrams: 500,
    lines: [
      {
        id: ids.clear,
        role: "base",
        name: "Gloss clear",
        contents: [{ itemId: ids.clear, massFraction: 1 }],
        exactGrams: 450,
        grams: 450,
      },
      {
        id: ids.black,
        role: "colourant",
        name: "Black",
        contents: [{ itemId: ids.black, massFraction: 1 }],
        exactGrams: 50,
        grams: 50,
      },
    ],
    baseLots: [{ itemId: ids.clear, code: "GC-12" }],
    by: "A. Mixer",
    at: time,
    expiresOn: "2026-08-10",
    note: "",
    supersedesId: null,
    ...change,
  };
}

export function examplePotEntry(number: number, change: Partial<PotEntry> = {}): PotEntry {
  return {
    id: exampleId(0x52000 + number),
    potId: exampleId(0x50001),
    kind: "weighed",
    lineId: lineIds.clear,
    grams: 950,
    by: "A. Mixer",
    at: time,
    note: "",
    supersedesId: null,
    ...change,
  };
}

export function examplePressEntry(number: number, change: Partial<PressEntry> = {}): PressEntry {
  return {
    id: exampleId(0x80000 + number),
    lineId: ids.line,
    placeId: ids.place,
    kind: "pull",
    change: "none",
    subject: "subject",
    readings: { kind: "pairs", deltaL: [-4.2, -3.9], pieceCount: 1 },
    testPrintId: null,
    band: { deltaL: -4, tolerance: 1.5 },
    said: {
      action: "run",
      mean: -4,
      standardUncertainty: 0.3,
      conformanceProbability: 0.97,
      modelVersion: "2",
    },
    by: "A. Printer",
    at: time,
    note: "",
    supersedesId: null,
    ...change,
  };
}
