/** The engine: only the latest waits, cells travel packed and come back as they were, and equal the core's own. */
import { describe, expect, it } from "vitest";
import { GREY_SCALE_STEPS } from "../../src/core/colorimetry/greyScale.ts";
import type { PredictionWarning } from "../../src/core/prediction/prediction.ts";
import { predictPrint } from "../../src/core/prediction/predictPrint.ts";
import { latestOnly } from "../../src/engine/latestOnly.ts";
import { predictDetail, predictPackedMatrix } from "../../src/engine/matrixPrediction.ts";
import { CELL_LENGTH, packCell, unpackCell } from "../../src/engine/packedCells.ts";
import { GARMENTS, VIEWING } from "../core/prediction/cloths.ts";
import { base, black, mixOf, STROKE, tinted } from "../core/prediction/inks.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const WARNINGS: readonly PredictionWarning[] = [
  "dark-limit",
  "brightener",
  "deposit-outside-range",
  "heather-as-solid",
  "milky-haze",
  "bare-approximate",
  "light-indicative",
  "screen-colour-moved",
];

describe("latestOnly", () => {
  it("works on one request, lets the newest wait and answers null to the overtaken", async () => {
    const finish: (() => void)[] = [];
    const seen: number[] = [];
    const ask = latestOnly(async (n: number) => {
      seen.push(n);
      await new Promise<void>((resolve) => finish.push(resolve));
      return n * 10;
    });
    const first = ask(1);
    const second = ask(2);
    const third = ask(3);
    expect(await second).toBeNull();
    finish[0]!();
    expect(await first).toBe(10);
    await Promise.resolve();
    finish[1]!();
    expect(await third).toBe(30);
    expect(seen).toEqual([1, 3]);
  });

  it("passes an error on and goes on with what waits", async () => {
    const ask = latestOnly(async (n: number) => {
      if (n === 1) throw new RangeError("no");
      return n;
    });
    const failing = ask(1);
    const next = ask(2);
    await expect(failing).rejects.toThrow("no");
    expect(await next).toBe(2);
  });
});

const LEVELS = ["model only", "related prints", "this lot"] as const;

describe("packed cells", () => {
  it("come back as they were, with every warning, every grade and every word for the evidence", () => {
    for (const { grade } of GREY_SCALE_STEPS) {
      for (const warnings of [[], ...WARNINGS.map((warning) => [warning]), WARNINGS]) {
        const cell = {
          bareHex: "#000102",
          printedHex: "#ffffff",
          lightHex: "#0a0b0c",
          darkHex: "#7f0000",
          deltaL: -3.25,
          deltaL5: -7,
          deltaL50: -3.1,
          deltaL95: -1,
          chanceInBand: 0.4,
          deltaE00: 3,
          greyScaleGrade: grade,
          evidence: LEVELS[warnings.length % LEVELS.length]!,
          warnings,
        };
        const packed = new Float64Array(2 * CELL_LENGTH);
        packCell(packed, 1, cell);
        const identity = { lineId: "line", candidateId: "candidate" };
        expect(unpackCell(packed, 1, "line", "candidate")).toEqual({ ...cell, ...identity });
      }
    }
  });

  it("hold what predictPrint gives, cell by cell", () => {
    const rows = Object.entries(GARMENTS).map(([lineId, garment]) => ({ lineId, garment }));
    const columns = [mixOf(base("curable")), tinted("matt", black, 0.005)].map((mix, i) => ({
      candidateId: `${i}`,
      mix,
      application: STROKE,
    }));
    const packed = predictPackedMatrix({ rows, columns, viewing: VIEWING, band: BAND });
    rows.forEach(({ lineId, garment }, r) => {
      columns.forEach(({ candidateId, mix, application }, c) => {
        const cell = unpackCell(packed, r * columns.length + c, lineId, candidateId);
        const alone = predictPrint({ garment, mix, application, viewing: VIEWING, band: BAND });
        expect(cell.deltaL).toBeCloseTo(alone.deltaL, 12);
        expect(cell.deltaE00).toBeCloseTo(alone.deltaE00, 12);
        expect(cell.deltaL5).toBeCloseTo(alone.spread.p5.deltaL, 12);
        expect(cell.deltaL95).toBeCloseTo(alone.spread.p95.deltaL, 12);
        expect(cell.chanceInBand).toBeCloseTo(alone.spread.chanceInBand, 12);
        expect(cell.greyScaleGrade).toBe(alone.greyScaleGrade);
        expect(cell.warnings.filter((warning) => warning !== "screen-colour-moved")).toEqual(alone.warnings);
      });
    });
  });

  it("come with a tint curve for the cell looked at", () => {
    const garment = GARMENTS["denim 50/50"]!;
    const detail = predictDetail({
      row: { lineId: "l", garment },
      column: { candidateId: "c", mix: mixOf(base("curable")), application: STROKE },
      viewing: VIEWING,
      band: BAND,
      tints: [0.001, 0.01].map((massFraction) => ({
        massFraction,
        mix: tinted("curable", black, massFraction),
      })),
    });
    expect(detail.tintCurve).toHaveLength(2);
    expect(detail.tintCurve[1]!.deltaL).toBeLessThan(detail.tintCurve[0]!.deltaL);
    expect(detail.printedHex).toMatch(/^#[0-9a-f]{6}$/);
  });
});
