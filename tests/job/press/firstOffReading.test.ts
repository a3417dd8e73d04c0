/** How far readings at the press may be off, and what is said of them: figures worked out by hand from the stated spreads. */
import { describe, expect, it } from "vitest";
import type { LineBand } from "../../../src/job/approvedReference.ts";
import { lineBand } from "../../../src/job/approvedReference.ts";
import { judgeReading, meanOf, referenceSdOf } from "../../../src/job/press/firstOffReading.ts";
import { pressReadingsOf, spreadAround, typedReadings } from "../../../src/job/press/pressReadings.ts";
import type { PressReadings } from "../../../src/job/pressDocument.ts";
import { EMPTY_LAB, EMPTY_PAIR, newBenchForm } from "../../../src/job/recordBook/benchForm.ts";
import { exampleDocuments, exampleTestPrint, lotDraft } from "../exampleDocuments.ts";

const D65 = { illuminant: "D65", observer: "10deg" } as const;
const BAND: Pick<LineBand, "band"> = { band: { deltaL: -3.1, tolerance: 1.5, hueLimit: 2 } };
const pairs = (...deltaL: number[]): PressReadings => ({ kind: "pairs", deltaL, pieceCount: deltaL.length });

describe("the mean of pairs", () => {
  it("may be off by the usual scatter of a pair drawn to theirs, the pieces and the approved print, worked out by hand", () => {
    // s2 = (4 * 0.3^2 + 0.02) / 5 = 0.076, widened by 5 / 3; over 2 pairs; pieces 5 % of 4 over 2; reference 0.2.
    const read = meanOf(pairs(-3.9, -4.1), lotDraft, 0.2);
    expect(read.mean).toBeCloseTo(-4, 12);
    const variance = (0.076 * 5) / 3 / 2 + (0.05 * 4) ** 2 / 2 + 0.2 ** 2;
    expect(read.standardUncertainty).toBeCloseTo(Math.sqrt(variance), 10);
  });

  it("is less sure on a heather, and of one piece than of as many pairs on several", () => {
    const readings = pairs(-3.9, -4.1, -4);
    const solid = meanOf(readings, lotDraft, 0).standardUncertainty;
    expect(meanOf(readings, { ...lotDraft, heather: true }, 0).standardUncertainty).toBeGreaterThan(solid);
    const onePiece = { ...readings, pieceCount: 1 } as PressReadings;
    expect(meanOf(onePiece, lotDraft, 0).standardUncertainty).toBeGreaterThan(solid);
  });

  it("is the same where only mean and scatter were typed as where the pairs were", () => {
    const deltaL = [-3.6, -4.4, -4.1, -3.9, -4.3];
    const mean = deltaL.reduce((sum, value) => sum + value, 0) / 5;
    const sd = Math.sqrt(deltaL.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 4);
    const typed = meanOf(
      { kind: "mean", deltaL: mean, pairCount: 5, pieceCount: 5, sdPairDifference: sd },
      lotDraft,
      0,
    );
    const read = meanOf(pairs(...deltaL), lotDraft, 0);
    expect(typed.standardUncertainty).toBeCloseTo(read.standardUncertainty, 10);
    expect(typed.mean).toBeCloseTo(read.mean, 10);
  });

  it.each([1, 2, 3, 4, 7])("keeps mean and scatter of %i pairs that nobody typed", (count) => {
    const values = spreadAround(-4, count, 0.7);
    expect(values).toHaveLength(count);
    const mean = values.reduce((sum, value) => sum + value, 0) / count;
    expect(mean).toBeCloseTo(-4, 12);
    if (count > 1) {
      const squares = values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
      expect(Math.sqrt(squares / (count - 1))).toBeCloseTo(0.7, 12);
    }
  });
});

describe("an eye's step", () => {
  it("is the scale's difference of ISO 105-A02 with a quarter of it, 0.4 and its rounding as its error", () => {
    // Grade 3 is 3.4; its neighbours 2.5 and 4.8 are the rounding's half gaps (table 1 of ISO 105-A02).
    const read = meanOf({ kind: "by-eye", grade: 3, direction: "darker" }, lotDraft, 0);
    expect(read.mean).toBe(-3.4);
    const rounding = (4.8 - 2.5) / 2 / Math.sqrt(12);
    const variance = (0.25 * 3.4) ** 2 + 0.4 ** 2 + rounding ** 2 + (0.05 * 3.4) ** 2;
    expect(read.standardUncertainty).toBeCloseTo(Math.sqrt(variance), 10);
    expect(meanOf({ kind: "by-eye", grade: 3, direction: "lighter" }, lotDraft, 0).mean).toBe(3.4);
  });

  it("stops what is far out of band, and asks for an instrument where it cannot decide", () => {
    const far = judgeReading({ kind: "by-eye", grade: 1, direction: "darker" }, lotDraft, BAND, 0);
    expect(far.ok && far.verdict.action).toBe("stop");
    const near = judgeReading({ kind: "by-eye", grade: 3, direction: "darker" }, lotDraft, BAND, 0);
    expect(near.ok && [near.verdict.action, near.verdict.readMoreCount]).toEqual(["read-more", 0]);
    const edge = judgeReading({ kind: "by-eye", grade: 2.5, direction: "darker" }, lotDraft, BAND, 0);
    expect(edge.ok && [edge.verdict.action, edge.verdict.readMoreCount]).toEqual(["read-more", 0]);
  });
});

describe("the verdict", () => {
  it.each<[string, PressReadings, string]>([
    ["runs in the middle of the band", pairs(-3.1, -3.2, -3.0, -3.1), "run"],
    ["stops at 2.6 times the approved change", pairs(-7.9, -8, -7.8), "stop"],
    [
      "adjusts surely outside by less than half a tolerance",
      pairs(-5.1, -5, -5.1, -5.05, -5.15, -5),
      "adjust",
    ],
    ["reads more just inside a limit", pairs(-4.2, -4.1), "read-more"],
  ])("%s", (_, readings, action) => {
    const judged = judgeReading(readings, lotDraft, BAND, 0.1);
    expect(judged.ok && judged.verdict.action).toBe(action);
  });

  it("is none for a band without width", () => {
    const flat = { band: { ...BAND.band, tolerance: 0 } };
    expect(judgeReading(pairs(-3), lotDraft, flat, 0)).toEqual({ ok: false, reason: "no-tolerance" });
  });
});

describe("the approved print that a band follows", () => {
  const documents = exampleDocuments();
  const print = exampleTestPrint(1, { verdict: "reference" });
  const library = { ...documents.library, testPrints: [print] };
  const line = documents.job.lines[0]!;
  const found = lineBand({ ...documents, library }, line, documents.job.places[0]!);

  it("is as sure as its own readings: one pair on one piece", () => {
    // One pair: s2 = 0.3^2, widened by 4 / 2; pieces 5 % of 3.
    const expected = Math.sqrt((0.3 ** 2 * 4) / 2 + (0.05 * 3) ** 2);
    expect(referenceSdOf(found.follows, library, D65)).toBeCloseTo(expected, 10);
  });

  it("adds nothing where the band is a figure", () => {
    expect(referenceSdOf(null, library, D65)).toBe(0);
  });
});

describe("what was read", () => {
  const { readings } = exampleTestPrint(1);
  const form = newBenchForm({ prints: [], instrument: { viewing: D65, geometry: "45:0" } });
  const L = (bare: number | null, print: number | null) => ({
    bare: { ...EMPTY_LAB, L: bare },
    print: { ...EMPTY_LAB, L: print },
  });

  it("is the change of L* of each pair", () => {
    expect(pressReadingsOf(readings, D65)).toEqual({
      ok: true,
      readings: { kind: "pairs", deltaL: [-3], pieceCount: 1 },
    });
  });

  it("is never held against a band under another light or observer", () => {
    for (const other of [
      { ...D65, illuminant: "D50" as const },
      { ...D65, observer: "2deg" as const },
    ]) {
      expect(pressReadingsOf(readings, other)).toEqual({ ok: false, reason: "other-light" });
    }
  });

  it("is kept as mean and scatter where one pair stands for several", () => {
    if (readings.kind !== "lab") throw new Error("the example is read as L*, a*, b*");
    const mean = { ...readings, pairCount: 6, pieceCount: 3, sdPairDifference: 0.4 };
    expect(pressReadingsOf(mean, D65)).toEqual({
      ok: true,
      readings: { kind: "mean", deltaL: -3, pairCount: 6, pieceCount: 3, sdPairDifference: 0.4 },
    });
  });

  it("says the change while it is typed, as soon as both L* are there", () => {
    expect(typedReadings({ ...form, pairs: [L(30.9, null)] }, D65)).toEqual({
      ok: false,
      reason: "nothing-read",
    });
    const typed = typedReadings({ ...form, pairs: [L(30.5, 22.5), EMPTY_PAIR], pieceCount: 5 }, D65);
    expect(typed).toEqual({ ok: true, readings: { kind: "pairs", deltaL: [-8], pieceCount: 1 } });
    const other = { ...form, observer: "2deg" as const, pairs: [L(30.5, 22.5)] };
    expect(typedReadings(other, D65)).toEqual({ ok: false, reason: "other-light" });
  });

  it("takes a grade by eye", () => {
    const eye = {
      ...form,
      way: "by-eye" as const,
      byEye: { ...form.byEye, grade: 2, direction: "darker" as const },
    };
    expect(typedReadings(eye, D65)).toEqual({
      ok: true,
      readings: { kind: "by-eye", grade: 2, direction: "darker" },
    });
  });
});
