/** The spread against brute force, and the laws it keeps. */
import { describe, expect, it } from "vitest";
import type { InkMix, TargetBand } from "../../../src/core/prediction/inputs.ts";
import { predictPrint } from "../../../src/core/prediction/predictPrint.ts";
import { GARMENTS, VIEWING } from "./cloths.ts";
import { base, black, mixOf, navy, STROKE, tinted } from "./inks.ts";
import { cellName, type GridCell, missesOf, missText, WHOLE_GRID } from "./spreadGrid.ts";

/** The whole grid at 10^5 points is the soak's; here every fifth cell, so that each garment and each mix comes up. */
const SAMPLE: readonly GridCell[] = WHOLE_GRID.filter((_, index) => index % 5 === 0);
const POINT_COUNT = 12_000;
const SEED = 20260301;

const BAND: TargetBand = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const predict = (garment: string, mix: InkMix, band = BAND, depositWeighed = true) =>
  predictPrint({
    garment: GARMENTS[garment]!,
    mix,
    application: { ...STROKE, depositWeighed },
    viewing: VIEWING,
    band,
  });

describe("the spread against random draws of the exact model", () => {
  it.each(SAMPLE.map((cell, index) => [cellName(cell), cell, index] as const))(
    "holds chance within 0.015 and 5, 50, 95 %% within 0.15 beyond the reference's own error: %s",
    (_, cell, index) => {
      const over = missesOf(cell, POINT_COUNT, SEED + index).filter(
        ({ missed, allowed }) => !(missed <= allowed),
      );
      expect(over.map((miss) => missText(cell, miss))).toEqual([]);
    },
  );

  it("samples every garment and every mix", () => {
    expect(new Set(SAMPLE.map((cell) => cell.garment)).size).toBe(Object.keys(GARMENTS).length);
    expect(new Set(SAMPLE.map((cell) => cell.mix)).size).toBe(
      new Set(WHOLE_GRID.map((cell) => cell.mix)).size,
    );
  });
});

describe("laws of the spread", () => {
  it("orders its points and keeps the chance in 0..1 in every cell", () => {
    for (const garment of Object.keys(GARMENTS)) {
      for (const mix of [
        mixOf(base("matt")),
        tinted("curable", black, 0.005),
        tinted("curable", navy, 0.01),
      ]) {
        const { p5, p50, p95, chanceInBand } = predict(garment, mix).spread;
        expect(p5.deltaL).toBeLessThan(p50.deltaL);
        expect(p50.deltaL).toBeLessThan(p95.deltaL);
        expect(chanceInBand).toBeGreaterThanOrEqual(0);
        expect(chanceInBand).toBeLessThanOrEqual(1);
      }
    }
  });

  it("is certain of a band that takes everything, and of nothing in an empty one", () => {
    const mix = mixOf(base("curable"));
    const wide = { deltaL: 0, tolerance: 100, hueLimit: 50 };
    expect(predict("forest 50/50", mix, wide).spread.chanceInBand).toBeCloseTo(1, 6);
    expect(predict("forest 50/50", mix, { ...wide, tolerance: 0 }).spread.chanceInBand).toBeCloseTo(0, 9);
  });

  it("widens where the deposit is only estimated, and where the cloth is dark", () => {
    const mix = tinted("curable", black, 0.005);
    const width = (weighed: boolean) => {
      const { p5, p95 } = predict("denim 50/50", mix, BAND, weighed).spread;
      return p95.deltaL - p5.deltaL;
    };
    expect(width(false)).toBeGreaterThan(width(true));
  });

  it("gives the same numbers for the same input", () => {
    const mix = tinted("curable", black, 0.0025);
    expect(predict("denim tri-blend", mix)).toEqual(predict("denim tri-blend", mix));
  });

  it("does not jump while a tint is dragged: no step over 0.02 in chance per 0.01 % of black", () => {
    for (const garment of ["forest 50/50", "navy cotton", "graphite heather, polyester dyed"]) {
      let last: number | null = null;
      for (let step = 1; step <= 60; step++) {
        const chance = predict(garment, tinted("curable", black, step * 1e-4)).spread.chanceInBand;
        if (last !== null) expect(Math.abs(chance - last), `${garment} at ${step}`).toBeLessThan(0.02);
        last = chance;
      }
    }
  });

  it("does not pass a navy tint on a red shirt, whose hue it shifts", () => {
    const mix = tinted("curable", navy, 0.04);
    const band = { deltaL: predict("brick spun polyester", mix).deltaL, tolerance: 3, hueLimit: 2 };
    const strict = predict("brick spun polyester", mix, band).spread.chanceInBand;
    const lax = predict("brick spun polyester", mix, { ...band, hueLimit: 50 }).spread.chanceInBand;
    expect(strict).toBeLessThan(lax / 2);
  });

  it("names its sources largest first, the mill among the first for an untested blend", () => {
    const { sources } = predict("denim 50/50", mixOf(base("curable"))).spread;
    const sds = sources.map((source) => source.sdDeltaL);
    expect(sds).toEqual([...sds].sort((a, b) => b - a));
    expect(sources.slice(0, 3).map((source) => source.source)).toContain("mill");
  });

  it("reports the print at the ends of the spread with the L* it names", () => {
    const { bare, spread } = predict("denim 50/50", tinted("curable", black, 0.005));
    for (const point of [spread.p5, spread.p50, spread.p95]) {
      expect(point.lab.L).toBeCloseTo(bare.L + point.deltaL, 9);
      for (const value of point.reflectance) expect(value).toBeGreaterThan(0);
    }
  });
});
