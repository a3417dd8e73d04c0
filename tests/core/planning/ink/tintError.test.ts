// One step of a scale in delta-L*: against the prediction itself, in sign, in size, and with a finer scale.
import { describe, expect, it } from "vitest";
import { masterContents, recipeOfPot } from "../../../../src/core/planning/ink/potRecipe.ts";
import {
  inkMixOfRecipe,
  type WeighedPrint,
  weighingErrorOn,
} from "../../../../src/core/planning/ink/tintError.ts";
import { type WrittenWeighSheet, writeWeighSheet } from "../../../../src/core/planning/ink/weighSheet.ts";
import { predictPrint } from "../../../../src/core/prediction/predictPrint.ts";
import { GARMENTS, VIEWING } from "../../prediction/cloths.ts";
import { base, black, STROKE } from "../../prediction/inks.ts";
import { M10, tinted } from "./recipes.ts";

const parts: WeighedPrint["parts"] = [
  { itemId: "clear", part: base("curable") },
  { itemId: "gloss", part: base("gloss") },
  { itemId: "black", part: black(1) },
];

function printOn(garment: string): WeighedPrint {
  return {
    garment: GARMENTS[garment]!,
    application: STROKE,
    viewing: VIEWING,
    clothCoverFraction: null,
    parts,
  };
}

function sheetOf(
  tintFraction: number,
  batchGrams: number,
  scaleStepGrams: number,
  master = M10,
): WrittenWeighSheet {
  const sheet = writeWeighSheet({
    recipe: tinted(tintFraction),
    masters: [master],
    otherBases: "allowed",
    batchGrams,
    scaleStepGrams,
  });
  if (!sheet.ok) throw new Error("the sheet must be written");
  return sheet;
}

const predictedDeltaL = (garment: string, recipe: Parameters<typeof inkMixOfRecipe>[0]): number =>
  predictPrint({
    garment: GARMENTS[garment]!,
    mix: inkMixOfRecipe(recipe, parts, null),
    application: STROKE,
    viewing: VIEWING,
    band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
  }).deltaL;

describe("the weighing error in delta-L*", () => {
  it("predicts with the true fractions, masters taken apart, just as the planner's prediction does", () => {
    const sheet = sheetOf(0.005, 203, 0.1, { ...M10, baseId: "gloss" });
    const error = weighingErrorOn(sheet, printOn("denim 50/50"));
    expect(sheet.lines[1]!.role).toBe("master");
    expect(error.weighedDeltaL).toBeCloseTo(predictedDeltaL("denim 50/50", sheet.trueRecipe), 10);
    const master = { ...M10, baseId: "gloss" };
    const [clear, tint] = sheet.lines;
    const stepMore = recipeOfPot([
      { grams: clear!.grams, contents: [{ itemId: "clear", massFraction: 1 }] },
      { grams: tint!.grams + 0.1, contents: masterContents(master) },
    ]);
    const byHand = predictedDeltaL("denim 50/50", stepMore) - error.weighedDeltaL;
    expect(error.steps[1]!.deltaL).toBeCloseTo(byHand, 10);
    expect(error.roundingDeltaL).toBeCloseTo(error.weighedDeltaL - error.wantedDeltaL, 12);
    expect(error.wantedDeltaL).not.toBe(error.weighedDeltaL);
  });

  it("is darker for a step more of tint, and a little lighter for a step more of base", () => {
    for (const garment of Object.keys(GARMENTS)) {
      const error = weighingErrorOn(sheetOf(0.005, 1000, 0.1), printOn(garment));
      expect(error.steps.map((step) => step.lineId)).toEqual(["clear", "black"]);
      expect(error.steps[1]!.deltaL, garment).toBeLessThan(0);
      expect(error.steps[0]!.deltaL, garment).toBeGreaterThan(0);
      expect(error.oneStepDeltaL).toBe(-error.steps[1]!.deltaL);
    }
  });

  it("is about ten times smaller by the 10 % master, on a scale ten times finer, or in ten times the batch", () => {
    const neat = writeWeighSheet({
      recipe: tinted(0.005),
      masters: [],
      otherBases: "allowed",
      batchGrams: 200,
      scaleStepGrams: 0.1,
    });
    if (!neat.ok) throw new Error("the sheet must be written");
    const print = printOn("denim 50/50");
    const coarse = weighingErrorOn(neat, print).oneStepDeltaL;
    const others = [sheetOf(0.005, 200, 0.1), sheetOf(0.005, 200, 0.01), sheetOf(0.005, 2000, 0.1)];
    for (const sheet of others) {
      const ratio = coarse / weighingErrorOn(sheet, print).oneStepDeltaL;
      // not exactly ten: the response bends, and a step of master brings base too
      expect(ratio).toBeGreaterThan(8.5);
      expect(ratio).toBeLessThan(11.5);
    }
  });

  it("is refused where the model does not know an item of the sheet", () => {
    const print = { ...printOn("denim 50/50"), parts: parts.slice(0, 2) };
    expect(() => weighingErrorOn(sheetOf(0.005, 1000, 0.1), print)).toThrow("missing black");
  });
});
