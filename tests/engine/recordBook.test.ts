// What the engine answers the record book: a record against all other prints, and readings files under what was answered.
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { learnWatchfully } from "../../src/core/evidence/learnWatchfully.ts";
import { predictPrint } from "../../src/core/prediction/predictPrint.ts";
import { scalesFromRecords } from "../../src/engine/ownScales.ts";
import { type ReadingsRequest, readingsAnswer } from "../../src/engine/readingsFile.ts";
import { findingOf } from "../../src/engine/recordFinding.ts";
import { readJobArchive } from "../../src/exchange/jobArchive.ts";
import { evidenceInputs } from "../../src/job/evidenceInputs.ts";
import type { Library } from "../../src/job/libraryDocument.ts";
import { askedRecord } from "../../src/job/recordBook/recordQuestion.ts";
import type { TestPrint } from "../../src/job/recordDocument.ts";

const DEMO = new URL("../../demo-data/verrowmoor-vm-217.tonebench.json", import.meta.url);
const read = readJobArchive(readFileSync(DEMO, "utf8"));
if (!read.ok) throw new Error("the demo cannot be read");
const { job, library } = read.documents;
const band = job.places[0]!.band;
const approved = library.testPrints.find(({ verdict }) => verdict === "reference")!;
const [firstBrick, , lastBrick] = library.testPrints.filter(
  ({ garmentLotId }) => library.garmentLots.find(({ id }) => id === garmentLotId)?.lot === "PT-3189",
);

function learnt(from: Library) {
  const { records, ...options } = evidenceInputs(from);
  return learnWatchfully(records, options).posterior;
}

function ask(print: TestPrint, correctsId: string | null = null, posterior = learnt(library)) {
  const asked = askedRecord(library, print);
  if (!asked.ok) throw new Error("the model takes every demo record");
  return findingOf(posterior, { record: asked.record, correctsId, band });
}

const without = (ids: readonly string[]): Library => ({
  ...library,
  testPrints: library.testPrints.filter(({ id }) => !ids.includes(id)),
});

describe("a record against all other prints", () => {
  it("is expected as if it were not in the book, and better known once it is", () => {
    const found = ask(approved);
    const fresh = ask(approved, null, learnt(without([approved.id])));
    expect(found.expected.evidence).toBe("model only");
    // The fit is iterated from another start: the same to the second decimal.
    expect(found.expected.deltaL).toBeCloseTo(fresh.expected.deltaL, 2);
    expect(found.expected.deltaL5).toBeCloseTo(fresh.expected.deltaL5, 1);
    expect(found.afterwards?.evidence).toBe("this lot");
    const width = ({ deltaL5, deltaL95 }: { deltaL5: number; deltaL95: number }) => deltaL95 - deltaL5;
    expect(width(found.afterwards!)).toBeLessThan(width(found.expected) / 2);
    expect(found.wetOutCut).toBeGreaterThan(0.8);
    expect(found.tintCut).toBeNull();
    expect(found.suspicion).toBeNull();
  });

  it("is no witness for another reading of its own print", () => {
    const bricks = library.testPrints.filter(({ printedAt }) => printedAt === firstBrick!.printedAt);
    const fresh = ask(firstBrick!, null, learnt(without(bricks.map(({ id }) => id))));
    expect(ask(firstBrick!).expected.deltaL).toBeCloseTo(fresh.expected.deltaL, 2);
    expect(ask(lastBrick!).expected.evidence).toBe("model only");
  });

  it("that corrects another is not held against what it corrects", () => {
    const corrected = { ...approved, id: firstBrick!.id, printedAt: "2026-01-21T12:00:00.000Z" };
    expect(ask(corrected, approved.id).expected.evidence).toBe("model only");
    expect(ask(corrected).expected.evidence).toBe("this lot");
  });

  it("after a wash teaches nothing, by rule", () => {
    const found = ask({ ...approved, washCount: 3 });
    expect([found.afterwards, found.wetOutCut, found.suspicion]).toEqual([null, null, null]);
  });

  it.each([
    ["Navy", 0, 0.15],
    ["White", 0.0025, 0.5],
  ])(
    "on %s with %d of black, printed as expected, takes away less than a part of %d of what is unknown of wet-out, and more of the tint",
    (colourway, tint, most) => {
      const lot = library.garmentLots.find((one) => one.colourway === colourway)!;
      const mix = job.mixes.find(({ recipe }) => (recipe[1]?.massFraction ?? 0) === tint)!;
      if (lot.bare.kind !== "readings") throw new Error("the demo's cloth was read");
      const [bare] = lot.bare.readings;
      const onLot = { ...approved, garmentLotId: lot.id, recipe: mix.recipe };
      const asked = askedRecord(library, onLot);
      if (!asked.ok) throw new Error("the model takes every demo record");
      const { garment, application, mix: ink } = asked.record.print;
      const { printed } = predictPrint({
        garment: garment.garment,
        mix: ink,
        application,
        viewing: job.viewing,
        band,
      });
      const lab = approved.readings as Extract<TestPrint["readings"], { kind: "lab" }>;
      const pairs = [{ bare: bare!, print: printed }];
      const found = ask({ ...onLot, readings: { ...lab, pairs, pairCount: 1 } });
      // The two bounds of findingSentences.ts: "almost nothing" and "little".
      expect(found.wetOutCut).toBeLessThan(most);
      if (tint > 0) expect(found.tintCut).toBeGreaterThan(found.wetOutCut!);
    },
  );

  it("with bare and print swapped stands out, and is named", () => {
    const { pairs, ...lab } = approved.readings as Extract<TestPrint["readings"], { kind: "lab" }>;
    const swapped = pairs.map(({ bare, print }) => ({ bare: print, print: bare }));
    const print = { ...approved, id: firstBrick!.id, printedAt: "2026-01-21T12:00:00.000Z" };
    const found = ask({ ...print, readings: { ...lab, pairs: swapped } });
    expect(found.suspicion?.slip).toBe("swapped-pair");
  });

  it("with 5 % of black typed where 0.5 % was printed is named, once the black is known from a few prints", () => {
    const tinted = job.mixes.find(({ recipe }) => recipe[1]?.massFraction === 0.005)!;
    const readOn = (style: string, number: number, recipe: TestPrint["recipe"]): TestPrint => {
      const lot = library.garmentLots.find((one) => one.style === style)!;
      const print = { ...approved, id: `20000000-0000-4000-8000-00000000000${number}`, garmentLotId: lot.id };
      const asked = askedRecord(library, { ...print, recipe: tinted.recipe });
      if (!asked.ok || lot.bare.kind !== "readings") throw new Error("the model takes every demo garment");
      const { garment, application, mix } = asked.record.print;
      const { printed } = predictPrint({
        garment: garment.garment,
        mix,
        application,
        viewing: job.viewing,
        band,
      });
      const lab = approved.readings as Extract<TestPrint["readings"], { kind: "lab" }>;
      const pairs = [{ bare: lot.bare.readings[0]!, print: printed }];
      return { ...print, recipe, readings: { ...lab, pairs, pairCount: 1 } };
    };
    const right = ["Ring-spun tee", "Blend crew tee", "Tri-blend tee"].map((style, i) =>
      readOn(style, i, tinted.recipe),
    );
    const [base, black] = tinted.recipe;
    const typed = [
      { ...base!, massFraction: 0.95 },
      { ...black!, massFraction: 0.05 },
    ];
    const slipped = readOn("Blend heather tee", 9, typed);
    const posterior = learnt({ ...library, testPrints: [...library.testPrints, ...right] });
    const found = ask(slipped, null, posterior);
    expect(found.suspicion?.slip).toBe("tint-times-ten");
    expect(ask(readOn("Blend heather tee", 9, tinted.recipe), null, posterior).suspicion).toBeNull();
  });

  it("in an empty book is expected as the model has it", () => {
    const asked = askedRecord(library, approved);
    if (!asked.ok) throw new Error("the model takes every demo record");
    const found = findingOf(null, { record: asked.record, correctsId: null, band });
    expect(found.expected.evidence).toBe("model only");
  });
});

describe("the shop's own scales", () => {
  it("are not told from a handful of records", () => {
    expect(scalesFromRecords(learnt(library))).toBeNull();
  });
});

const CSV = "Name;L*;a*;b*\nbare 1;30,9;-14,6;6,9\nprint 1;22,9;-12,7;6,1\n";

function request(change: Partial<ReadingsRequest>): ReadingsRequest {
  return {
    name: "readings.csv",
    bytes: new TextEncoder().encode(CSV),
    remembered: [],
    matching: null,
    scale: null,
    answers: { light: "D65", observer: "10deg", geometry: "45:0" },
    pairs: null,
    pieceCount: 1,
    ...change,
  };
}

describe("a readings file on its way to a record", () => {
  it("is read, paired by its names and taken under what was answered", async () => {
    const answer = await readingsAnswer(request({}));
    expect(answer.outcome).toMatchObject({
      ok: true,
      readings: {
        kind: "lab",
        viewing: { illuminant: "D65", observer: "10deg" },
        pairs: [{ bare: { L: 30.9 }, print: { L: 22.9 } }],
      },
    });
  });

  it("is not taken as long as something it does not say is not answered", async () => {
    const answer = await readingsAnswer(
      request({ answers: { light: null, observer: null, geometry: null } }),
    );
    expect(answer.result).toMatchObject({ ok: true, toAsk: ["light", "observer", "geometry"] });
    expect(answer.outcome?.ok).toBe(false);
  });

  it("follows a matching put right by hand, which is remembered for the next file of these headings", async () => {
    const first = await readingsAnswer(request({}));
    const columns = first.matching!.columns.map((column) =>
      column.role === "a"
        ? { ...column, role: "b" as const }
        : column.role === "b"
          ? { ...column, role: "a" as const }
          : column,
    );
    const byHand = await readingsAnswer(request({ matching: { columns, scale: null } }));
    expect(byHand.outcome).toMatchObject({ readings: { pairs: [{ bare: { a: 6.9, b: -14.6 } }] } });
    const next = await readingsAnswer(request({ name: "next.csv", remembered: [byHand.toRemember!] }));
    expect(next.rememberedName).toBe("readings.csv");
    expect(next.outcome).toEqual(byHand.outcome);
  });

  it("gives reasons and no reading where it cannot be read", async () => {
    const answer = await readingsAnswer(request({ bytes: new TextEncoder().encode("nothing here") }));
    expect(answer).toMatchObject({ result: { ok: false }, proposal: null, outcome: null });
  });
});
