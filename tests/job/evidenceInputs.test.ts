/** From the record book to evidence: what is shared, what was observed, and what is left out with its reason. */
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import { beliefSd } from "../../src/core/evidence/belief.ts";
import { beliefFor } from "../../src/core/evidence/beliefFor.ts";
import { learn } from "../../src/core/evidence/learn.ts";
import type { Posterior } from "../../src/core/evidence/posterior.ts";
import { DEFAULT_PRIOR_SCALES } from "../../src/core/evidence/priorScales.ts";
import type { Documents } from "../../src/job/documents.ts";
import { evidenceInputs, printedRecipe, printKeyOf } from "../../src/job/evidenceInputs.ts";
import { evidenceGarment } from "../../src/job/evidencePrints.ts";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import { garmentFor } from "../../src/job/predictionInputs.ts";
import type { Readings, TestPrint } from "../../src/job/recordDocument.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids } from "./exampleDocuments.ts";
import { exampleGoodsInCheck, exampleSlipAnswer } from "./exampleRecords.ts";

const viewing = { illuminant: "D65", observer: "10deg" } as const;

function withPrints(...testPrints: TestPrint[]): Documents {
  const documents = exampleDocuments();
  return { ...documents, library: { ...documents.library, testPrints } };
}

const inputsOf = (...prints: TestPrint[]) => evidenceInputs(withPrints(...prints).library);
const only = (print: TestPrint) => inputsOf(print).records[0]!;

function labReadings(change: Partial<Extract<Readings, { kind: "lab" }>> = {}): Readings {
  return {
    kind: "lab",
    viewing,
    geometry: "45:0",
    pairs: [
      { bare: { L: 30, a: -15, b: 6 }, print: { L: 27, a: -14, b: 5 } },
      { bare: { L: 31, a: -15, b: 8 }, print: { L: 27, a: -14, b: 5 } },
    ],
    pairCount: 2,
    pieceCount: 2,
    sdPairDifference: null,
    ...change,
  };
}

describe("the keys of a garment", () => {
  const [lot] = exampleDocuments().library.garmentLots as [GarmentLot];
  const garment = garmentFor(lot, exampleDocuments().library.shelf);
  if (!garment.ok) throw new Error("the example lot must be a garment");
  const keys = (change: Partial<GarmentLot>) => evidenceGarment({ ...lot, ...change }, garment.garment);

  it("are those of style, mill and colourway, whatever their case and blanks, and the lot's id", () => {
    expect(keys({ style: " Heavy  TEE ", mill: "mill a" })).toEqual(keys({}));
    expect(keys({}).lotKey).toBe(ids.lot);
    expect(keys({ id: exampleId(9) }).lotKey).not.toBe(ids.lot);
  });

  it("share no mill and no colourway that nobody entered", () => {
    const one = keys({ mill: "", colourway: " " });
    const other = keys({ id: exampleId(9), mill: "", colourway: "" });
    expect(one.millKey).not.toBe(other.millKey);
    expect(one.colourwayKey).not.toBe(other.colourwayKey);
  });

  it("tell one mill's countries apart", () => {
    expect(keys({ country: "One land" }).millKey).not.toBe(keys({ country: "Another land" }).millKey);
  });
});

describe("a record", () => {
  it("is the mean of its pairs with their scatter: changes of -3 and -4 have a standard deviation of 0.707", () => {
    const { reading, viewing: under } = only(exampleTestPrint(1, { readings: labReadings() }));
    expect(under).toEqual(viewing);
    expect(reading).toMatchObject({
      kind: "pair",
      bare: { L: 30.5, a: -15, b: 7 },
      printed: { L: 27, a: -14, b: 5 },
      pairCount: 2,
      pieceCount: 2,
    });
    expect(reading.kind === "pair" && reading.sdPairDeltaL).toBeCloseTo(Math.SQRT1_2, 12);
  });

  it("of one mean pair has the count and scatter that were typed with it", () => {
    const { pairs } = labReadings() as Extract<Readings, { kind: "lab" }>;
    const readings = labReadings({ pairs: pairs.slice(0, 1), pairCount: 5, sdPairDifference: 0.3 });
    expect(only(exampleTestPrint(1, { readings })).reading).toMatchObject({
      pairCount: 5,
      sdPairDeltaL: 0.3,
    });
    const unsaid = labReadings({ pairs: pairs.slice(0, 1), pairCount: 1 });
    expect(only(exampleTestPrint(1, { readings: unsaid })).reading).toMatchObject({ sdPairDeltaL: null });
  });

  it("by eye stands under its light as a large field, and predicts with the lot's own colour", () => {
    const readings: Readings = {
      kind: "by-eye",
      grade: 3.5,
      direction: "darker",
      light: "F11",
      observerCount: 2,
    };
    const record = only(exampleTestPrint(1, { readings }));
    expect(record.viewing).toEqual({ illuminant: "F11", observer: "10deg" });
    expect(record.reading).toEqual({ kind: "by-eye", grade: 3.5, direction: "darker" });
  });

  it("of spectra is seen under the shop's own light and observer", () => {
    const reflectance = Array.from({ length: 36 }, () => 0.2);
    const readings: Readings = {
      kind: "spectral",
      geometry: "45:0",
      pairs: [{ bare: reflectance, print: reflectance.map((value) => value / 2) }],
      pieceCount: 1,
    };
    const record = only(exampleTestPrint(1, { readings }));
    expect(record.viewing).toEqual(viewing);
    // A grey of 20 % is L* 51.84 (CIELAB), a grey of 10 % L* 37.84.
    expect(record.reading).toMatchObject({ pairCount: 1, sdPairDeltaL: null });
    expect(record.reading.kind === "pair" && record.reading.bare.L).toBeCloseTo(51.84, 2);
    expect(record.reading.kind === "pair" && record.reading.printed.L).toBeCloseTo(37.84, 2);
  });

  it("is of what was poured: 199 g of clear and 1 g of black are half a percent, also beyond a data sheet's limit", () => {
    const actualGrams = [
      { itemId: ids.clear, grams: 199 },
      { itemId: ids.black, grams: 1 },
    ];
    const record = only(exampleTestPrint(1, { actualGrams }));
    expect(record.print.itemKeys).toEqual([ids.clear, ids.black]);
    expect(record.print.mix.parts.map(({ massFraction }) => massFraction)).toEqual([0.995, 0.005]);
    // The softener's limit is a half.
    const softener = [{ itemId: ids.softener, grams: 100 }];
    expect(only(exampleTestPrint(1, { actualGrams: softener })).print.itemKeys).toEqual([ids.softener]);
    expect(printedRecipe({ recipe: [], actualGrams: softener })).toEqual([
      { itemId: ids.softener, massFraction: 1 },
    ]);
  });

  it("that was weighed itself says nothing of the set-up: 11.5 g/m2 at 1.15 g/cm3 are 10 um", () => {
    const record = only(exampleTestPrint(1, { depositGsm: 11.5, halftoneFraction: 0.5, smoothed: true }));
    expect(record.print.application.depositUm).toBeCloseTo(10, 12);
    expect(record.print).toMatchObject({
      depositOfThisPrintWeighed: true,
      application: { depositWeighed: true, halftoneFraction: 0.5, smoothed: true },
    });
    const usual = only(exampleTestPrint(1)).print;
    expect(usual.depositOfThisPrintWeighed).toBe(false);
    expect(usual.application.depositUm).toBeCloseTo(20, 12);
  });

  it("shares its lot's cloth with every other record under the same light, and no other", () => {
    const same = inputsOf(exampleTestPrint(1), exampleTestPrint(2)).records;
    expect(same[0]?.print.garment.garment).toBe(same[1]?.print.garment.garment);
    const daylight = labReadings({ viewing: { illuminant: "D50", observer: "2deg" } });
    const glossy = labReadings({ geometry: "specular-included" });
    for (const readings of [daylight, glossy]) {
      const { garment } = only(exampleTestPrint(1, { readings })).print.garment;
      expect(garment).not.toEqual(same[0]?.print.garment.garment);
      expect(garment.geometry).toBe(readings.kind === "by-eye" ? "" : readings.geometry);
      expect(garment.fibres).toEqual(same[0]?.print.garment.garment.fibres);
    }
  });

  it("is one print with its readings of another hour, and another than a second print of the recipe", () => {
    const first = exampleTestPrint(1);
    const nextDay = exampleTestPrint(2, { readAt: "2026-02-18T09:30:00Z" });
    const washed = exampleTestPrint(3, { washCount: 1 });
    const second = exampleTestPrint(4, { printedAt: "2026-02-17T11:00:00Z" });
    expect(printKeyOf(nextDay)).toBe(printKeyOf(first));
    expect(printKeyOf(washed)).toBe(printKeyOf(first));
    expect(printKeyOf(second)).not.toBe(printKeyOf(first));
    expect(inputsOf(first, nextDay, washed).records.map(({ washCount }) => washCount)).toEqual([0, 0, 1]);
  });
});

describe("the record book", () => {
  it("leaves out what a later record corrects", () => {
    const first = exampleTestPrint(1);
    const { records, leftOut } = inputsOf(first, exampleTestPrint(2, { supersedesId: first.id }));
    expect(records.map(({ id }) => id)).toEqual([exampleTestPrint(2).id]);
    expect(leftOut).toEqual([]);
  });

  it("names each record that the model cannot take, with the reason, and keeps the others", () => {
    const white = exampleTestPrint(2, { recipe: [{ itemId: exampleId(99), massFraction: 1 }] });
    const gone = exampleTestPrint(3, { setUpId: exampleId(99) });
    const { records, leftOut } = inputsOf(exampleTestPrint(1), white, gone);
    expect(records).toHaveLength(1);
    expect(leftOut.map(({ recordId, problems }) => [recordId, problems.map(({ code }) => code)])).toEqual([
      [white.id, ["component-missing"]],
      [gone.id, ["set-up-missing"]],
    ]);
  });

  it("counts the latest answer about a record", () => {
    const { library } = withPrints(exampleTestPrint(1), exampleTestPrint(2));
    const about = (number: number, print: number, answer: "keep" | "set-aside") =>
      exampleSlipAnswer(number, { testPrintId: exampleTestPrint(print).id, answer });
    const slipAnswers = [
      about(1, 1, "set-aside"),
      about(2, 2, "keep"),
      about(3, 1, "keep"),
      about(4, 2, "set-aside"),
    ];
    const { kept, setAside, records } = evidenceInputs({ ...library, slipAnswers });
    expect([...kept]).toEqual([exampleTestPrint(1).id]);
    expect([...setAside]).toEqual([exampleTestPrint(2).id]);
    expect(records).toHaveLength(2);
  });

  it("gives goods-in checks the base alone on both lots", () => {
    const { library } = exampleDocuments();
    const { goodsIn } = evidenceInputs({ ...library, goodsInChecks: [exampleGoodsInCheck(1)] });
    expect(goodsIn[0]).toMatchObject({
      approved: { lotKey: ids.lot },
      arriving: { lotKey: ids.otherLot },
      baseKey: ids.clear,
      approvedDeltaL: -5,
      arrivingDeltaL: -8,
    });
    expect(goodsIn[0]?.mix.parts).toHaveLength(1);
  });

  it("takes the scales that the shop consented to, by the names that the model knows", () => {
    const { library } = exampleDocuments();
    expect(evidenceInputs(library).scales).toEqual(DEFAULT_PRIOR_SCALES);
    const defaults = { ...library.shelf.defaults, priorScales: { mill: 0.5, nobody: 3 } };
    const { scales } = evidenceInputs({ ...library, shelf: { ...library.shelf, defaults } });
    expect(scales).toEqual({ ...DEFAULT_PRIOR_SCALES, mill: 0.5 });
  });

  it("of the demo teaches: the approved lot is known, the substituted one better known than before and not as its lot", () => {
    const { library } = demoDocuments();
    const { records, leftOut, ...options } = evidenceInputs(library);
    expect(records).toHaveLength(5);
    expect(leftOut).toEqual([]);
    const approved = records.at(-1)!.print;
    const on = (mill: string, posterior: Posterior) => {
      const lot = library.garmentLots.find((one) => one.colourway === "Forest" && one.mill === mill)!;
      const garment = garmentFor(lot, library.shelf);
      if (!garment.ok) throw new Error("every demo lot is a garment");
      const belief = beliefFor(
        posterior,
        { ...approved, garment: evidenceGarment(lot, garment.garment) },
        viewing,
      );
      return { evidence: belief.evidence, sd: beliefSd(belief, "lnWetOut") };
    };
    const learned = learn(records, options);
    const prior = learn([], options);
    expect(on("Mill A", learned).evidence).toBe("this lot");
    expect(on("Mill B", learned).evidence).toBe("related prints");
    expect(on("Mill B", prior).evidence).toBe("model only");
    expect(on("Mill A", learned).sd).toBeLessThan(on("Mill B", learned).sd);
    expect(on("Mill B", learned).sd).toBeLessThan(on("Mill B", prior).sd);
  });
});
