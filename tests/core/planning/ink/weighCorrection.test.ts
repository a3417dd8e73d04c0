// Corrections: the shop's rule on one tint, masters, several tints, and any pot that was poured wrong.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { correctWeighing, pouredPot } from "../../../../src/core/planning/ink/weighCorrection.ts";
import { type WrittenWeighSheet, writeWeighSheet } from "../../../../src/core/planning/ink/weighSheet.ts";
import { between } from "../../optics/between.ts";
import { anyBatch, anyMasters, anyRecipe, anyStep, M10, tinted } from "./recipes.ts";

function sheetOf(tintFraction: number, batchGrams: number, masters = [M10], scaleStepGrams = 0.1) {
  const sheet = writeWeighSheet({
    recipe: tinted(tintFraction),
    masters,
    otherBases: "refused",
    batchGrams,
    scaleStepGrams,
  });
  if (!sheet.ok) throw new Error("the sheet must be written");
  return sheet;
}

/** What the sheet says, with some lines poured otherwise. */
const poured = (sheet: WrittenWeighSheet, actual: Readonly<Record<string, number>> = {}) =>
  sheet.lines.map(({ id, grams }) => ({ id, grams: actual[id] ?? grams }));

const fractionOf = (recipe: readonly { itemId: string; massFraction: number }[], itemId: string) =>
  recipe.find((part) => part.itemId === itemId)?.massFraction ?? 0;

describe("a correction", () => {
  it("of 0.7 g too much tint in 1 kg at 0.5 % adds tint / target - total of base (common practice): 139.3 g", () => {
    const sheet = sheetOf(0.005, 1000);
    const found = correctWeighing(sheet, poured(sheet, { black: 5.7 }), 2000);
    if (!found.ok) throw new Error("must be corrected");
    expect(fractionOf(found.before.recipe, "black")).toBeCloseTo(5.7 / 1000.7, 12);
    expect(5.7 / 0.005 - 1000.7).toBeCloseTo(139.3, 9);
    expect(found.additions).toEqual([{ id: "clear", grams: 139.3, stepCount: 1393 }]);
    expect(found.after.totalGrams).toBeCloseTo(1140, 9);
    expect(fractionOf(found.after.recipe, "black")).toBeCloseTo(0.005, 9);
  });

  it("of too little tint, or too much base, adds tint", () => {
    const sheet = sheetOf(0.01, 1000);
    const short = correctWeighing(sheet, poured(sheet, { black: 9 }), 2000);
    if (!short.ok) throw new Error("must be corrected");
    expect(short.additions).toEqual([{ id: "black", grams: 1, stepCount: 10 }]);
    const overBase = correctWeighing(sheet, poured(sheet, { clear: 1089 }), 2000);
    if (!overBase.ok) throw new Error("must be corrected");
    expect(overBase.additions).toEqual([{ id: "black", grams: 1, stepCount: 10 }]);
  });

  it("serves a pot that is still being weighed: base alone asks for the tint that belongs to it", () => {
    const sheet = sheetOf(0.01, 1000);
    const found = correctWeighing(sheet, poured(sheet, { black: 0 }), 2000);
    if (!found.ok) throw new Error("must be corrected");
    expect(found.additions).toEqual([{ id: "black", grams: 10, stepCount: 100 }]);
  });

  it("of a master is made with that master and its base: 2 g of M10 too much in 200 g ask for 38 g of base", () => {
    const sheet = sheetOf(0.005, 200);
    const found = correctWeighing(sheet, poured(sheet, { M10: 12 }), 500);
    if (!found.ok) throw new Error("must be corrected");
    expect(found.additions).toEqual([{ id: "clear", grams: 38, stepCount: 380 }]);
    expect(fractionOf(found.after.recipe, "black")).toBeCloseTo(0.005, 12);
    expect(found.before.lines[1]).toEqual({ id: "M10", grams: 12, wantedGrams: 0.05 * 202 });
  });

  it("is empty within one step, for every sheet weighed as written among them", () => {
    const sheet = sheetOf(0.005, 1000);
    for (const black of [4.95, 5, 5.05, 5.1]) {
      const found = correctWeighing(sheet, poured(sheet, { black }), 2000);
      expect(found).toMatchObject({ ok: true, additions: [] });
      if (found.ok) expect(found.after).toEqual(found.before);
    }
    expect(correctWeighing(sheet, poured(sheet, { black: 5.2 }), 2000)).not.toMatchObject({ additions: [] });
  });

  it("is empty for a pot weighed as written although four tints rounded up leave the base two steps short", () => {
    const tints = ["black", "navy", "red", "forest"];
    const sheet = writeWeighSheet({
      recipe: [
        { itemId: "clear", role: "base", massFraction: 0.97782 },
        ...tints.map((itemId) => ({ itemId, role: "colourant" as const, massFraction: 0.005545 })),
      ],
      masters: [],
      otherBases: "refused",
      batchGrams: 1000,
      scaleStepGrams: 0.1,
    });
    if (!sheet.ok) throw new Error("the sheet must be written");
    expect(sheet.lines.map((line) => line.grams)).toEqual([977.8, 5.5, 5.5, 5.5, 5.5]);
    const up = poured(sheet, { black: 5.6, navy: 5.6, red: 5.6, forest: 5.6 });
    const found = correctWeighing(sheet, up, 2000);
    expect(found).toMatchObject({ ok: true, additions: [] });
    const { grams, wantedGrams } = found.before.lines[0]!;
    expect(wantedGrams - grams).toBeGreaterThan(0.2);
  });

  it("is refused where the pot would get too big, and says how much of the pot to keep for it to fit", () => {
    const sheet = sheetOf(0.005, 1000);
    const found = correctWeighing(sheet, poured(sheet, { black: 10 }), 1500);
    if (found.ok) throw new Error("must be refused");
    expect(found.code).toBe("pot-too-big");
    expect(found.figures.potGrams).toBeCloseTo(2000, 6);
    expect(found.figures.potLimitGrams).toBe(1500);
    expect(found.figures.keepGrams).toBeCloseTo(753.75, 6);
    expect(found.figures.takeOutGrams).toBeCloseTo(1005 - 753.75, 6);
    // kept in proportion, it corrects to just the limit
    const share = found.figures.keepGrams / 1005;
    const kept = correctWeighing(sheet, poured(sheet, { clear: 995 * share, black: 10 * share }), 1500.1);
    expect(kept.ok).toBe(true);
    // a pot poured right but above the limit is refused too
    expect(correctWeighing(sheet, poured(sheet), 900)).toMatchObject({ ok: false, code: "pot-too-big" });
  });

  it("brings every line within one step and the pot within its limit, or is refused with a pot above it", () => {
    let corrected = 0;
    let refused = 0;
    fc.assert(
      fc.property(
        fc.tuple(anyRecipe, anyMasters, anyBatch, anyStep),
        fc.array(between(0.7, 1.4), { minLength: 6, maxLength: 6 }),
        between(1, 4),
        ([recipe, masters, batchGrams, scaleStepGrams], factors, room) => {
          const sheet = writeWeighSheet({
            recipe,
            masters,
            otherBases: "allowed",
            batchGrams,
            scaleStepGrams,
          });
          fc.pre(sheet.ok);
          const limit = room * batchGrams;
          const actual = sheet.lines.map(({ id, grams }, i) => ({ id, grams: grams * factors[i]! }));
          const total = actual.reduce((sum, line) => sum + line.grams, 0);
          const found = correctWeighing(sheet, actual, limit);
          if (!found.ok) {
            refused += 1;
            expect(found.figures.potGrams).toBeGreaterThan(limit);
            // no smaller pot has room for what was poured: some line fills its share, to a step
            const sum = sheet.lines.reduce((sum, line) => sum + line.exactGrams, 0);
            const needed = Math.max(
              ...actual.map(({ grams }, i) => (grams * sum) / sheet.lines[i]!.exactGrams),
            );
            expect(found.figures.potGrams).toBeLessThanOrEqual(
              Math.max(total, needed) + scaleStepGrams * 1.001,
            );
            return;
          }
          const step = scaleStepGrams * (1 + 1e-6) + 1e-9 * batchGrams;
          expect(found.after.totalGrams).toBeLessThanOrEqual(limit);
          if (found.additions.length === 0) expect(found.after).toEqual(found.before);
          else corrected += 1;
          const largest = Math.max(...sheet.lines.map((line) => line.exactGrams));
          sheet.lines.forEach(({ id, exactGrams }, i) => {
            const after = found.after.lines[i]!;
            const added = found.additions.find((addition) => addition.id === id)?.grams ?? 0;
            expect(after.grams).toBeCloseTo(actual[i]!.grams + added, 6);
            // two lines share what is added to half a step each
            if (found.additions.length > 0 && sheet.lines.length === 2) {
              expect(Math.abs(after.grams - after.wantedGrams)).toBeLessThanOrEqual(step / 2);
            }
            if (found.additions.length > 0 || exactGrams < largest) {
              expect(Math.abs(after.grams - after.wantedGrams)).toBeLessThanOrEqual(step);
            }
          });
          for (const line of sheet.lines) {
            if (line.role !== "colourant" && line.role !== "master") continue;
            const { itemId, massFraction: strength } = line.contents[0]!;
            const wanted = recipe.find((part) => part.itemId === itemId)!.massFraction;
            if (line.exactGrams === largest && found.additions.length === 0) continue;
            const miss = Math.abs(fractionOf(found.after.recipe, itemId) - wanted) * found.after.totalGrams;
            // a base that masters used up but for half a step is left off the sheet, and shifts every share by that
            const leftOff = (wanted * scaleStepGrams) / 2 / batchGrams;
            expect(miss).toBeLessThanOrEqual(strength * step + leftOff * found.after.totalGrams);
          }
        },
      ),
      { numRuns: 400 },
    );
    expect(corrected).toBeGreaterThan(50);
    expect(refused).toBeGreaterThan(20);
  });
});

describe("what was poured", () => {
  it("is read back as fractions, masters taken apart", () => {
    const sheet = sheetOf(0.005, 200);
    const state = pouredPot(sheet, poured(sheet, { M10: 12 }));
    expect(state.totalGrams).toBe(202);
    expect(fractionOf(state.recipe, "black")).toBeCloseTo(1.2 / 202, 12);
    expect(fractionOf(state.recipe, "clear")).toBeCloseTo(200.8 / 202, 12);
  });

  it("must name every line once, with grams, and the pot must have a limit", () => {
    const sheet = sheetOf(0.005, 1000);
    const one = { id: "clear", grams: 995 };
    expect(() => pouredPot(sheet, [one])).toThrow("poured must have one entry for each of 2 lines");
    expect(() => pouredPot(sheet, [one, one])).toThrow("poured must have one entry for each of 2 lines");
    expect(() => pouredPot(sheet, [one, { id: "navy", grams: 5 }])).toThrow(
      "poured must have the line black",
    );
    expect(() => correctWeighing(sheet, poured(sheet, { black: -1 }), 2000)).toThrow("grams must be >= 0");
    expect(() => correctWeighing(sheet, poured(sheet, { black: 0, clear: 0 }), 2000)).toThrow(
      "hold something",
    );
    expect(() => correctWeighing(sheet, poured(sheet), 0)).toThrow("potLimitGrams must be above 0; got 0");
  });
});
