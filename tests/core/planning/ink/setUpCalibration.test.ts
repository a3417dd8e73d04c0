// Set-ups weighed: mean, spread and error by plain statistics, and what they make of the deposit's uncertainty.
import { describe, expect, it } from "vitest";
import { calibrateSetUp } from "../../../../src/core/planning/ink/setUpCalibration.ts";
import { depositUmFromGsm } from "../../../../src/core/screen/mesh.ts";

const AREA_M2 = 0.0462;
/** Ten invented pieces of 150 g, with the ink that each took. */
const INK_GRAMS = [1.08, 1.15, 1.02, 1.2, 1.11, 1.05, 1.18, 1.09, 1.13, 1.07];
const pieces = INK_GRAMS.map((grams) => ({ beforeGrams: 150, afterGrams: 150 + grams }));

function calibrated(...[weighed, areaM2, step]: Parameters<typeof calibrateSetUp>) {
  const found = calibrateSetUp(weighed, areaM2, step);
  if (!found.ok) throw new Error(JSON.stringify(found.problems));
  return found;
}

describe("a weighed set-up", () => {
  it("has the mean, the sd (n - 1) and the standard error of its pieces over the inked area", () => {
    const found = calibrated(pieces, AREA_M2, 0.01);
    // sum 11.08 g; squares about the mean 1.108 g sum to 0.02956 g2
    expect(found.meanGsm).toBeCloseTo(1.108 / AREA_M2, 9);
    expect(found.sdGsm).toBeCloseTo(Math.sqrt(0.02956 / 9) / AREA_M2, 6);
    expect(found.standardErrorGsm).toBeCloseTo(found.sdGsm / Math.sqrt(10), 9);
    expect(found.pieceCount).toBe(10);
    expect(found.notices).toEqual([]);
    expect(depositUmFromGsm(found.meanGsm, 1.2)).toBeCloseTo(1.108 / 0.0462 / 1.2, 9);
  });

  it("counts 0.10 in ln deposit from session to session, and its own scatter from print to print", () => {
    const found = calibrated(pieces, AREA_M2, 0.01);
    expect(found.lnSetUpSd).toBe(0.1);
    expect(found.lnPrintSd).toBeCloseTo(Math.sqrt(0.02956 / 9) / 1.108, 9);
  });

  it("never believes few pieces more than the default, and says that they are few", () => {
    const one = calibrated(pieces.slice(0, 1), AREA_M2, 0.01);
    expect(one).toMatchObject({ sdGsm: 0, lnPrintSd: 0.08, lnSetUpSd: 0.1 });
    expect(one.standardErrorGsm).toBeCloseTo(0.08 * one.meanGsm, 12);
    expect(one.notices).toEqual([{ code: "few-pieces", figures: { pieceCount: 1, usualPieceCount: 10 } }]);
    const wild = calibrated(
      [
        { beforeGrams: 150, afterGrams: 150.5 },
        { beforeGrams: 150, afterGrams: 151.5 },
      ],
      AREA_M2,
      0.01,
    );
    expect(wild.lnPrintSd).toBeCloseTo(Math.SQRT1_2, 9);
    expect(wild.lnSetUpSd).toBeCloseTo(0.5, 9);
  });

  it("says that a scale is coarse where its step is more than a fiftieth of the ink", () => {
    const notices = calibrated(pieces, AREA_M2, 0.1).notices;
    expect(notices.map((notice) => notice.code)).toEqual(["coarse-scale"]);
    expect(notices[0]!.figures.meanInkGrams).toBeCloseTo(1.108, 9);
    expect(calibrated(pieces, AREA_M2, 1.108 / 50 - 1e-9).notices).toEqual([]);
  });

  it("is refused without pieces, or with one no heavier after printing, which it names", () => {
    expect(calibrateSetUp([], AREA_M2, 0.1)).toEqual({
      ok: false,
      problems: [{ code: "no-pieces", figures: {} }],
    });
    const swapped = [...pieces, { beforeGrams: 151, afterGrams: 150 }];
    const figures = { index: 10, beforeGrams: 151, afterGrams: 150 };
    expect(calibrateSetUp(swapped, AREA_M2, 0.1)).toEqual({
      ok: false,
      problems: [{ code: "not-heavier", figures }],
    });
  });

  it("refuses figures out of range by name", () => {
    expect(() => calibrateSetUp(pieces, 0, 0.1)).toThrow("printedAreaM2 must be above 0; got 0");
    expect(() => calibrateSetUp(pieces, AREA_M2, 0)).toThrow("scaleStepGrams must be above 0; got 0");
    expect(() => calibrateSetUp([{ beforeGrams: -1, afterGrams: 1 }], AREA_M2, 0.1)).toThrow(
      "grams must be >= 0",
    );
  });
});
