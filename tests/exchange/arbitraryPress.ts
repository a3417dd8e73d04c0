/** Draws what a job holds of its press and its mix search: entries of the press log, what a checklist said, rules. */
import fc from "fast-check";
import type { ChecklistEntry, MixRules } from "../../src/job/jobDocument.ts";
import type { PressEntry, PressReadings } from "../../src/job/pressDocument.ts";
import { fraction, money, name, number, text, time } from "./arbitraryValues.ts";

const deltaL = number(-120, 120);

export const mixRules: fc.Arbitrary<MixRules> = fc.record({
  atMostMixes: fc.option(fc.integer({ min: 1, max: 100 })),
  stockOnly: fc.boolean(),
  lowCureOnly: fc.boolean(),
  exactTints: fc.boolean(),
  keptRecipes: fc.array(name, { maxLength: 3 }),
  forbiddenRecipes: fc.array(name, { maxLength: 3 }),
});

const said: fc.Arbitrary<ChecklistEntry["said"]> = fc.option(
  fc.record({
    deltaL,
    p5: deltaL,
    p95: deltaL,
    chanceInBand: fraction,
    evidence: fc.constantFrom("this lot" as const, "related prints" as const, "model only" as const),
    expectedLoss: fc.option(money),
    modelVersion: text,
  }),
);

/** An entry of the checklist before it has a line, a place and an id. */
export const checklistEntry: fc.Arbitrary<Omit<ChecklistEntry, "id" | "lineId" | "placeId">> = fc
  .record({
    action: fc.constantFrom(
      "sign" as const,
      "withdraw" as const,
      "override" as const,
      "release" as const,
      "hold" as const,
    ),
    itemCode: fc.constantFrom("lot", "wash-test", "cure"),
    subject: text,
    signer: name,
    at: time,
    note: text,
    said,
  })
  .map((drawn) => ({
    ...drawn,
    itemCode: drawn.action === "sign" || drawn.action === "withdraw" ? drawn.itemCode : null,
  }));

const readings: fc.Arbitrary<PressReadings> = fc.oneof(
  fc
    .record({ deltaL: fc.array(deltaL, { minLength: 1, maxLength: 6 }), pick: fc.nat(100) })
    .map(({ deltaL: pairs, pick }) => ({
      kind: "pairs" as const,
      deltaL: pairs,
      pieceCount: 1 + (pick % pairs.length),
    })),
  fc
    .record({
      deltaL,
      pairCount: fc.integer({ min: 1, max: 10_000 }),
      pick: fc.nat(100),
      sdPairDifference: fc.option(number(0, 50)),
    })
    .map(({ pick, ...mean }) => ({
      kind: "mean" as const,
      ...mean,
      pieceCount: 1 + (pick % mean.pairCount),
    })),
  fc.record({
    kind: fc.constant("by-eye" as const),
    grade: fc.integer({ min: 2, max: 10 }).map((halves) => halves / 2),
    direction: fc.constantFrom("darker" as const, "lighter" as const),
  }),
);

/** An entry of the press log before it leads anywhere. */
export const pressEntry: fc.Arbitrary<
  Omit<PressEntry, "id" | "lineId" | "placeId" | "testPrintId" | "supersedesId">
> = fc.record({
  kind: fc.constantFrom("first-off" as const, "pull" as const),
  change: fc.constantFrom(
    "none" as const,
    "lot" as const,
    "pot" as const,
    "shift" as const,
    "restart" as const,
    "recovery" as const,
  ),
  subject: text,
  readings,
  band: fc.record({ deltaL, tolerance: number(0, 50) }),
  said: fc.record({
    action: fc.constantFrom(
      "run" as const,
      "look" as const,
      "adjust" as const,
      "stop" as const,
      "read-more" as const,
      "first-off" as const,
    ),
    mean: deltaL,
    standardUncertainty: number(0, 100),
    conformanceProbability: fraction,
    modelVersion: text,
  }),
  by: name,
  at: time,
  note: text,
});
