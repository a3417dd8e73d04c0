// By-eye steps, goods-in checks and the quick quantiles, each against what the exact model says.
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import { beliefSd } from "../../../src/core/evidence/belief.ts";
import { beliefFor, examine } from "../../../src/core/evidence/beliefFor.ts";
import { surpriseAt } from "../../../src/core/evidence/cell.ts";
import { factorise } from "../../../src/core/evidence/dense.ts";
import { extend } from "../../../src/core/evidence/extend.ts";
import { learn } from "../../../src/core/evidence/learn.ts";
import type { Posterior } from "../../../src/core/evidence/posterior.ts";
import type { EvidenceGarment, EvidenceRecord, GoodsInRecord } from "../../../src/core/evidence/record.ts";
import { deltaEabOfGrade } from "../../../src/core/evidence/teaching.ts";
import { printedReflectance } from "../../../src/core/prediction/printedReflectance.ts";
import * as unknowns from "../../../src/core/prediction/unknowns.ts";
import { cloth, HALF_AND_HALF, VIEWING } from "../prediction/cloths.ts";
import { STROKE } from "../prediction/inks.ts";
import { seededRandom } from "../prediction/seededRandom.ts";
import { MIXES, modelShop, type NamedMix } from "./modelShop.ts";
import { deltaLQuantiles } from "./quickQuantiles.ts";

const shop = modelShop(61, 24, 50);
const CLEAR = MIXES[0]!;
const lotOf = (lotKey: string, styleKey: string): EvidenceGarment => ({
  lotKey,
  styleKey,
  millKey: "mill",
  colourwayKey: "denim",
  garment: cloth([48, -3, -20], HALF_AND_HALF),
});
const wetOut = (posterior: Posterior, lot: EvidenceGarment, mix: NamedMix = CLEAR) =>
  beliefFor(posterior, shop.printOf(lot, mix), VIEWING);

describe("an eye's step", () => {
  const lot = lotOf("lot", "tee");
  const byEye = (grade: number, direction: "darker" | "lighter"): EvidenceRecord => ({
    id: `eye ${grade} ${direction}`,
    printKey: `eye ${grade} ${direction}`,
    print: shop.printOf(lot, CLEAR),
    viewing: VIEWING,
    reading: { kind: "by-eye", grade, direction },
    at: "2026-01-01T00:00:00Z",
    washCount: 0,
  });
  const expected = -examine(learn([]), shop.printOf(lot, CLEAR), VIEWING).slopes.change.L;

  it("stands for the scale's nominal differences", () => {
    // ISO 105-A02, table 1 (as in colorimetry/greyScale.ts).
    expect([5, 4.5, 4, 3.5, 3, 2.5, 2, 1.5, 1].map(deltaEabOfGrade)).toEqual([
      0, 0.8, 1.7, 2.5, 3.4, 4.8, 6.8, 9.6, 13.6,
    ]);
    expect(() => deltaEabOfGrade(2.25)).toThrow(RangeError);
    expect(() => deltaEabOfGrade(6)).toThrow(RangeError);
  });

  it("stronger than expected moves wet-out up, weaker or lighter down", () => {
    expect(expected).toBeGreaterThan(2.5);
    expect(expected).toBeLessThan(6.8);
    const strong = wetOut(learn([byEye(2, "darker")]), lot).mean.lnWetOut;
    const weak = wetOut(learn([byEye(4.5, "darker")]), lot).mean.lnWetOut;
    const lighter = wetOut(learn([byEye(4.5, "lighter")]), lot).mean.lnWetOut;
    expect(strong).toBeGreaterThan(0);
    expect(weak).toBeLessThan(0);
    // No clear lightens: such a step is nearly an outlier, and weighs less.
    expect(lighter).toBeLessThan(0);
  });

  it("of 1, the scale's last, teaches nothing where the print was expected to be stronger still", () => {
    const dark = { ...shop.printOf(lot, MIXES[4]!), application: { ...STROKE, depositUm: 60 } };
    const nothing = learn([]);
    const strong = -examine(nothing, dark, VIEWING).slopes.change.L;
    expect(strong).toBeGreaterThan(14);
    const taught = learn([{ ...byEye(1, "darker"), print: dark }]);
    const [before, after] = [nothing, taught].map((posterior) => beliefFor(posterior, dark, VIEWING));
    expect(after!.mean.lnWetOut).toBeCloseTo(before!.mean.lnWetOut, 6);
    expect(beliefSd(after!, "lnWetOut")).toBeCloseTo(beliefSd(before!, "lnWetOut"), 6);
    const weaker = beliefFor(learn([{ ...byEye(3, "darker"), print: dark }]), dark, VIEWING);
    expect(weaker.mean.lnWetOut).toBeLessThan(-0.05);
  });

  it("teaches less than an instrument's pair and more than nothing", () => {
    const eye = beliefSd(wetOut(learn([byEye(3, "darker")]), lot), "lnWetOut");
    const pair = beliefSd(wetOut(learn([shop.recordOf(shop.printOf(lot, CLEAR))]), lot), "lnWetOut");
    const nothing = beliefSd(wetOut(learn([]), lot), "lnWetOut");
    expect(pair).toBeLessThan(0.9 * eye);
    expect(eye).toBeLessThan(0.85 * nothing);
    expect(wetOut(learn([byEye(3, "darker")]), lot).evidence).toBe("this lot");
  });
});

describe("a goods-in check", () => {
  const approved = lotOf("approved", "tee");
  const check = (arriving: EvidenceGarment, ratio: number): GoodsInRecord => ({
    id: `check ${arriving.lotKey}`,
    approved,
    arriving,
    baseKey: "gloss",
    mix: CLEAR.mix,
    viewing: VIEWING,
    approvedDeltaL: -3,
    arrivingDeltaL: -3 * ratio,
  });

  it("of a garment that reacts twice as strongly says so, with more doubt than a print", () => {
    const arriving = lotOf("arriving", "tee");
    const goodsIn = [check(arriving, 2)];
    const checked = wetOut(learn(shop.records, { goodsIn }), arriving);
    const unchecked = wetOut(learn(shop.records), arriving);
    expect(checked.mean.lnWetOut).toBeGreaterThan(unchecked.mean.lnWetOut + 0.05);
    expect(beliefSd(checked, "lnWetOut")).toBeLessThan(beliefSd(unchecked, "lnWetOut"));
    expect(checked.evidence).not.toBe("this lot");
    const printed = learn([...shop.records, shop.recordOf(shop.printOf(arriving, CLEAR))]);
    expect(beliefSd(wetOut(printed, arriving), "lnWetOut")).toBeLessThan(beliefSd(checked, "lnWetOut"));
  });

  it("joins two styles: what is printed on one is then known of the other", () => {
    const arriving = lotOf("arriving", "polo");
    const goodsIn = [check(arriving, 1)];
    const records = ["a", "b"].map((id) => ({
      ...shop.recordOf(shop.printOf(approved, CLEAR)),
      id,
      printKey: id,
    }));
    const before = learn([], { goodsIn });
    const after = learn(records, { goodsIn });
    expect(after.blocks.length).toBe(1);
    const [open, known] = [before, after].map((posterior) =>
      beliefSd(wetOut(posterior, arriving), "lnWetOut"),
    );
    expect(known!).toBeLessThan(0.9 * open!);
    const extended = extend(extend(before, records[0]!), records[1]!);
    expect(beliefSd(wetOut(extended, arriving), "lnWetOut")).toBeCloseTo(known!, 2);
  });

  it("that shows no change to speak of teaches nothing", () => {
    const weak = { ...check(lotOf("arriving", "tee"), 1), approvedDeltaL: -0.1 };
    expect(learn([], { goodsIn: [weak] }).lessons.length).toBe(0);
  });
});

describe("quick quantiles of delta-L*", () => {
  const posterior = learn(shop.records);
  const DRAWS = 4000;

  /** Random prints under the posterior by the exact model, sorted. */
  function drawn(lot: EvidenceGarment, mix: NamedMix, seed: number): Float64Array {
    const { normal, student5 } = seededRandom(seed);
    const print = shop.printOf(lot, mix);
    const { cell, means, covariance, slopes } = examine(posterior, print, VIEWING);
    const isUnseen = beliefFor(posterior, print, VIEWING).styleTailSd > 0;
    const n = means.length;
    const root = covariance.slice();
    for (let i = 0; i < n; i++) root[i * n + i]! += 1e-12;
    factorise(root, n);
    const width = Math.hypot(unknowns.DISCREPANCY_DELTA_L, slopes.heatherGap[0]! / 2);
    const found = new Float64Array(DRAWS);
    for (let d = 0; d < DRAWS; d++) {
      const z = Float64Array.from({ length: n }, normal);
      const values = means.map((mean, i) => {
        let sum = mean;
        for (let j = 0; j <= i; j++) sum += root[i * n + j]! * z[j]!;
        return sum;
      });
      if (isUnseen) values[0] = unknowns.STYLE_SCALE * student5();
      const at = surpriseAt(cell, values);
      const tintMiss = unknowns.DISCREPANCY_LN_TINT * normal();
      const reflectance = printedReflectance(cell.cloth, cell.mix, cell.application, {
        ...at,
        lnWetOut: at.lnWetOut + unknowns.DISCREPANCY_LN_WET_OUT * normal(),
        lnPartStrength: at.lnPartStrength.map((s, i) =>
          cell.mix.parts[i]!.kind === "base" ? s : s + tintMiss,
        ),
        lnDeposit: at.lnDeposit + unknowns.DEPOSIT_SD_PRINT_TO_PRINT * normal(),
      });
      const lab = labFromReflectance(reflectance, cell.cloth.weights);
      found[d] = lab.L - cell.cloth.bareLab.L + width * normal();
    }
    return found.sort();
  }

  it.each([
    ["a tested lot", shop.records[0]!.print.garment, 0],
    ["a tested lot, tinted", shop.records[0]!.print.garment, 4],
    ["a lot of a new style", lotOf("fresh", "never seen"), 0],
    ["a lot of a new style, tinted", lotOf("fresh", "never seen"), 5],
    ["another tested lot under matt clear", shop.records[7]!.print.garment, 3],
  ])("are those of random draws of the exact model: %s", (_, lot, m) => {
    const mix = MIXES[m]!;
    const print = shop.printOf(lot, mix);
    const { cell } = examine(posterior, print, VIEWING);
    const found = deltaLQuantiles(beliefFor(posterior, print, VIEWING), print, cell.cloth);
    const draws = drawn(lot, mix, 70 + m);
    const at = (p: number): number => draws[Math.floor(p * DRAWS)]!;
    const width = at(0.95) - at(0.05);
    // Three standard errors of a 5 % point of 4000 draws (0.0034 of probability over its density), and 2 % of the width.
    const tolerance = 0.06 * width + 0.02;
    expect(Math.abs(found.p5 - at(0.05))).toBeLessThan(tolerance);
    expect(Math.abs(found.p50 - at(0.5))).toBeLessThan(tolerance);
    expect(Math.abs(found.p95 - at(0.95))).toBeLessThan(tolerance);
  });
});
