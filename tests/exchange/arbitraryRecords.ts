/** Draws the library's append-only records: what is drawn, and the records that it makes on given lots and inks. */
import fc from "fast-check";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import type { LibraryLedgers } from "../../src/job/libraryDocument.ts";
import type { MixComponent } from "../../src/job/mixDocument.ts";
import type { PotEntry, SheetLine } from "../../src/job/potDocument.ts";
import type { Approval, TestPrint } from "../../src/job/recordDocument.ts";
import type { Shelf } from "../../src/job/shelfDocument.ts";
import {
  chosen,
  day,
  fraction,
  geometry,
  lab,
  name,
  number,
  reflectance,
  text,
  time,
  uuid,
  viewing,
} from "./arbitraryValues.ts";

const pieceCount = fc.integer({ min: 1, max: 9 });

const readings: fc.Arbitrary<TestPrint["readings"]> = fc.oneof(
  fc
    .record({
      kind: fc.constant("lab" as const),
      viewing,
      geometry,
      pairs: fc.array(fc.record({ bare: lab, print: lab }), { minLength: 1, maxLength: 2 }),
      pieceCount,
      sdPairDifference: fc.option(number(0, 3)),
    })
    .map((drawn) => ({ ...drawn, pairCount: drawn.pairs.length })),
  fc.record({
    kind: fc.constant("spectral" as const),
    geometry,
    pairs: fc.array(fc.record({ bare: reflectance, print: reflectance }), { minLength: 1, maxLength: 2 }),
    pieceCount,
  }),
  fc.record({
    kind: fc.constant("by-eye" as const),
    grade: fc.integer({ min: 2, max: 10 }).map((halves) => halves / 2),
    direction: fc.constantFrom("darker" as const, "lighter" as const),
    light: fc.constantFrom("D65" as const, "F11" as const),
    observerCount: fc.integer({ min: 1, max: 4 }),
  }),
);

const said = fc.record({
  deltaL: number(-20, 20),
  p5: number(-20, 20),
  p95: number(-20, 20),
  evidence: fc.constantFrom("this lot" as const, "related prints" as const, "model only" as const),
  chanceInBand: fraction,
});

export const arbitraryRecords = fc.record({
  printIds: fc.uniqueArray(uuid, { minLength: 1, maxLength: 4 }),
  print: fc.record({
    depositGsm: fc.option(number(1, 80)),
    halftoneFraction: fraction,
    smoothed: fc.boolean(),
    cure: fc.record({ filmCelsius: fc.option(number(20, 260)), seconds: fc.option(number(0, 600)) }),
    printedAt: time,
    readAt: time,
    operator: text,
    readings,
    instrument: text,
    backing: text,
    washCount: fc.nat(5),
    verdict: fc.constantFrom("reference" as const, "rejected" as const, "none" as const),
    note: text,
    photo: fc.option(
      fc.record({
        name: text,
        mediaType: fc.constant("image/png" as const),
        dataUrl: fc
          .base64String({ minLength: 4, maxLength: 40 })
          .map((data) => `data:image/png;base64,${data}`),
      }),
    ),
  }),
  isGramsKnown: fc.boolean(),
  approvalIds: fc.uniqueArray(uuid, { maxLength: 2 }),
  approval: fc.record({ approvedAt: time, modelVersion: text, said: fc.option(said) }),
  checkIds: fc.uniqueArray(uuid, { maxLength: 2 }),
  check: fc.record({
    approvedChange: number(-20, 20),
    arrivingChange: number(-20, 20),
    viewing,
    geometry,
    at: time,
  }),
  answerIds: fc.uniqueArray(uuid, { maxLength: 2 }),
  weighedIds: fc.uniqueArray(uuid, { minLength: 1, maxLength: 3 }),
  entryIds: fc.uniqueArray(uuid, { minLength: 3, maxLength: 3 }),
  jobId: uuid,
  madeOn: day,
  by: name,
});

type Drawn = typeof arbitraryRecords extends fc.Arbitrary<infer Value> ? Value : never;

interface Ground {
  readonly shelf: Shelf;
  readonly garmentLots: readonly GarmentLot[];
  readonly recipe: MixComponent[];
  readonly pick: number;
}

const before = (ids: readonly string[], index: number) => (index === 0 ? null : (ids[index - 1] ?? null));

export function recordsOf(drawn: Drawn, { shelf, garmentLots, recipe, pick }: Ground): LibraryLedgers {
  const base = chosen(shelf.bases, pick);
  const colourant = chosen(shelf.colourants, pick);
  const actualGrams = recipe.map(({ itemId, massFraction }) => ({ itemId, grams: 1 + massFraction }));
  const testPrints: TestPrint[] = drawn.printIds.map((id, index) => ({
    id,
    ...drawn.print,
    garmentLotId: chosen(garmentLots, pick + index).id,
    recipe,
    actualGrams: drawn.isGramsKnown ? actualGrams : null,
    setUpId: chosen(shelf.setUps, pick).id,
    supersedesId: before(drawn.printIds, index),
  }));
  const approvals: Approval[] = drawn.approvalIds.map((id, index) => {
    const approved = chosen(testPrints, pick + index);
    return {
      id,
      ...drawn.approval,
      garmentLotId: approved.garmentLotId,
      testPrintId: approved.id,
      approvedBy: "buyer",
      note: "",
      supersedesId: before(drawn.approvalIds, index),
    };
  });
  const line: SheetLine = {
    id: base.id,
    role: "base",
    name: base.name,
    contents: [{ itemId: base.id, massFraction: 1 }],
    exactGrams: 100,
    grams: 100,
  };
  const sheet = {
    scaleStepGrams: 0.1,
    batchGrams: 100,
    lines: [line],
    baseLots: [{ itemId: base.id, code: "lot 1" }],
    by: drawn.by,
    at: drawn.approval.approvedAt,
    expiresOn: drawn.madeOn,
    note: "",
    supersedesId: null,
  };
  const [dilutionId, ...potIds] = drawn.weighedIds;
  const weighed = (id: string | undefined, entryId: string | undefined): PotEntry[] =>
    id === undefined || entryId === undefined
      ? []
      : [
          {
            id: entryId,
            potId: id,
            kind: "weighed",
            lineId: base.id,
            grams: 99,
            by: drawn.by,
            at: sheet.at,
            note: "",
            supersedesId: null,
          },
        ];
  return {
    testPrints,
    approvals,
    goodsInChecks: drawn.checkIds.map((id, index) => ({
      id,
      ...drawn.check,
      approvedLotId: chosen(garmentLots, pick).id,
      arrivingLotId: chosen(garmentLots, pick + 1).id,
      baseId: base.id,
      by: drawn.by,
      note: "",
      supersedesId: before(drawn.checkIds, index),
    })),
    slipAnswers: drawn.answerIds.map((id, index) => ({
      id,
      testPrintId: chosen(testPrints, pick + index).id,
      slip: "tint-times-ten",
      answer: "set-aside",
      by: drawn.by,
      at: drawn.check.at,
    })),
    pots: potIds.map((id, index) => ({
      id,
      jobId: drawn.jobId,
      mixId: drawn.jobId,
      mixName: drawn.by,
      recipe,
      recipeVersion: 1,
      potNumber: index + 1,
      potCount: potIds.length,
      potLimitGrams: 900,
      hazards: null,
      ...sheet,
    })),
    dilutions:
      dilutionId === undefined
        ? []
        : [
            {
              id: dilutionId,
              colourantId: colourant.id,
              baseId: base.id,
              massFraction: 0.1,
              madeOn: drawn.madeOn,
              ...sheet,
            },
          ],
    potEntries: [
      ...weighed(dilutionId, drawn.entryIds[0]),
      ...weighed(potIds[0], drawn.entryIds[1]),
      ...weighed(potIds[1], drawn.entryIds[2]),
    ],
  };
}
