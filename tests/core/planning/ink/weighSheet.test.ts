// Weigh sheets: the trade's worked figures, the 50-step rule, masters and what they bring, and the sums of any sheet.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { FEWEST_STEP_COUNT } from "../../../../src/core/planning/ink/colourantForm.ts";
import { recipeOfPot } from "../../../../src/core/planning/ink/potRecipe.ts";
import {
  type WeighSheetRequest,
  type WrittenWeighSheet,
  writeWeighSheet,
} from "../../../../src/core/planning/ink/weighSheet.ts";
import published from "../../../published/weighing.json";
import { anyBatch, anyMasters, anyRecipe, anyStep, M2, M10, tinted } from "./recipes.ts";

const request = (more: Partial<WeighSheetRequest>): WeighSheetRequest => ({
  recipe: tinted(0.005),
  masters: [],
  otherBases: "allowed",
  batchGrams: 1000,
  scaleStepGrams: 0.1,
  ...more,
});

function written(more: Partial<WeighSheetRequest>): WrittenWeighSheet {
  const sheet = writeWeighSheet(request(more));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.problems));
  return sheet;
}

const gramsOf = (sheet: WrittenWeighSheet) => sheet.lines.map((line) => [line.id, line.grams]);
const fractionOf = (sheet: WrittenWeighSheet, itemId: string) =>
  sheet.trueRecipe.find((part) => part.itemId === itemId)?.massFraction ?? 0;

describe("a weigh sheet", () => {
  it("weighs 0.5 % of a 100 g pot as 99.5 g of base, then 0.5 g of tint", () => {
    const { batchGrams, baseGrams, tintGrams } = published.hundredGramPot;
    const sheet = written({ batchGrams, scaleStepGrams: 0.01, masters: [M10, M2] });
    expect(gramsOf(sheet)).toEqual([
      ["clear", baseGrams],
      ["black", tintGrams],
    ]);
    expect(sheet.totalGrams).toBe(100);
    expect(sheet.notices).toEqual([]);
  });

  it("gives the trade's worked figures for 0.5 % (derived): neat and by 10 % master, with the scale's error", () => {
    for (const row of published.rows) {
      const { batchGrams, scaleStepGrams } = row;
      const neat = written({ batchGrams, scaleStepGrams, masters: [M10], weighAs: { black: "neat" } });
      expect(neat.lines[1]!.grams).toBe(row.neatGrams);
      expect(neat.lines[1]!.scaleErrorFraction).toBeCloseTo(row.neatErrorFraction, 12);
      const free = written({ batchGrams, scaleStepGrams, masters: [M10] });
      if (row.masterGrams === undefined) {
        expect(free.lines[1]!.id).toBe("black");
      } else {
        expect(free.lines[1]).toMatchObject({ id: "M10", role: "master", grams: row.masterGrams });
        expect(free.lines[1]!.scaleErrorFraction).toBeCloseTo(row.masterErrorFraction!, 12);
      }
    }
  });

  it("counts the master's own base and takes it off the base: 200 g at 0.5 % are 190 g and 10 g of M10", () => {
    const sheet = written({ batchGrams: 200, masters: [M2, M10] });
    expect(gramsOf(sheet)).toEqual([
      ["clear", 190],
      ["M10", 10],
    ]);
    expect(fractionOf(sheet, "black")).toBeCloseTo(0.005, 12);
    expect(fractionOf(sheet, "clear")).toBeCloseTo(0.995, 12);
    const figures = { masterFraction: 0.1, masterGrams: 10, neatGrams: 1, baseGrams: 9 };
    expect(sheet.notices).toEqual([{ code: "weighed-as-master", itemId: "black", figures }]);
  });

  it("takes the 2 % master only where the 10 % one is under 50 steps", () => {
    expect(written({ batchGrams: 100, masters: [M10, M2] }).lines[1]).toMatchObject({ id: "M10", grams: 5 });
    expect(written({ batchGrams: 99, masters: [M10, M2] }).lines[1]!.id).toBe("M2");
  });

  it("says so where even the weakest master is under 50 steps, and what batch would not be", () => {
    const sheet = written({ recipe: tinted(0.0005), batchGrams: 100, masters: [M10, M2] });
    expect(sheet.lines[1]).toMatchObject({ id: "M2", grams: 2.5, stepCount: 25 });
    const remark = sheet.notices.find((notice) => notice.code === "under-fifty-steps")!;
    expect(remark.itemId).toBe("black");
    expect(remark.figures).toEqual({ stepCount: 25, fewestStepCount: 50, leastBatchGrams: 200 });
    expect(sheet.notices.some((notice) => notice.code === "master-would-help")).toBe(false);
  });

  it("names the usual master that would be weighed better, also where it has to refuse", () => {
    const help = (masterFraction: number, masterGrams: number) => ({
      code: "master-would-help",
      itemId: "black",
      figures: { masterFraction, masterGrams },
    });
    expect(written({ batchGrams: 200 }).notices[0]).toEqual(help(0.1, 10));
    expect(written({ batchGrams: 50 }).notices[0]).toEqual(help(0.02, 12.5));
    expect(written({ batchGrams: 50, masters: [M10] }).notices[1]).toEqual(help(0.02, 12.5));
    const refused = writeWeighSheet(request({ recipe: tinted(0.001), batchGrams: 40 }));
    expect(refused).toMatchObject({ ok: false, problems: [{ code: "rounds-to-nothing" }] });
    expect(refused.notices).toEqual([help(0.02, 2)]);
    const noRoom = written({ recipe: tinted(0.95), batchGrams: 4 }).notices;
    expect(noRoom.some((notice) => notice.code === "master-would-help")).toBe(false);
  });

  it("refuses to round a tint to 0 g, with the figures", () => {
    const sheet = writeWeighSheet(request({ recipe: tinted(0.0001), batchGrams: 400 }));
    if (sheet.ok) throw new Error("0.04 g on a 0.1 g scale must be refused");
    expect(sheet.problems).toHaveLength(1);
    const [{ code, itemId, figures }] = sheet.problems as [(typeof sheet.problems)[number]];
    expect([code, itemId]).toEqual(["rounds-to-nothing", "black"]);
    expect(figures.exactGrams).toBeCloseTo(0.04, 12);
    expect(figures.leastBatchGrams).toBeCloseTo(50_000, 6);
  });

  it("shows the base that a foreign master brings, 4.5 % of the batch, or keeps it out of a low-cure mix", () => {
    const foreign = { ...M10, baseId: "gloss" };
    const sheet = written({ batchGrams: 200, masters: [foreign] });
    expect(gramsOf(sheet)).toEqual([
      ["clear", 190],
      ["M10", 10],
    ]);
    expect(fractionOf(sheet, "gloss")).toBeCloseTo(0.045, 12);
    expect(sheet.notices[1]!.code).toBe("master-in-another-base");
    expect(sheet.notices[1]!.itemId).toBe("gloss");
    expect(sheet.notices[1]!.figures.baseFraction).toBeCloseTo(0.045, 12);
    const kept = written({ batchGrams: 200, masters: [foreign], otherBases: "refused" });
    expect(kept.lines[1]).toMatchObject({ id: "black", grams: 1 });
    // both have 50 steps: the recipe's own base comes before the stronger master in another
    const own = written({ batchGrams: 200, masters: [{ ...foreign, id: "F" }, M2] });
    expect(own.lines[1]).toMatchObject({ id: "M2", grams: 50 });
    const both = written({ batchGrams: 50, masters: [{ ...foreign, id: "F" }, M2] });
    expect(both.lines[1]!.id).toBe("M2");
    const tooCoarse = written({
      batchGrams: 50,
      scaleStepGrams: 0.5,
      masters: [{ ...foreign, massFraction: 0.02 }],
    });
    expect(tooCoarse.lines[1]!.id).toBe("M10");
  });

  it("lets a master replace the largest base, and leaves a used-up base off the sheet", () => {
    const recipe = [
      { itemId: "matt", role: "base", massFraction: 0.3 },
      { itemId: "black", role: "colourant", massFraction: 0.01 },
      { itemId: "clear", role: "base", massFraction: 0.69 },
    ] as const;
    const foreign = { ...M10, baseId: "gloss" };
    const sheet = written({ recipe, batchGrams: 100, scaleStepGrams: 0.1, masters: [foreign] });
    expect(gramsOf(sheet)).toEqual([
      ["matt", 30],
      ["clear", 60],
      ["M10", 10],
    ]);
    const whole = written({ recipe: tinted(0.1), batchGrams: 10, masters: [M10] });
    expect(gramsOf(whole)).toEqual([["M10", 10]]);
    expect(fractionOf(whole, "clear")).toBeCloseTo(0.9, 12);
  });

  it("weighs neat where no base makes room, and takes no master asked for that finds none", () => {
    const white = [
      { itemId: "white", role: "colourant", massFraction: 0.995 },
      { itemId: "black", role: "colourant", massFraction: 0.005 },
    ] as const;
    const sheet = written({ recipe: white, batchGrams: 200, masters: [M10] });
    expect(gramsOf(sheet)).toEqual([
      ["white", 199],
      ["black", 1],
    ]);
    const impossible = { ok: false, problems: [{ code: "chosen-form-impossible", itemId: "black" }] };
    expect(
      writeWeighSheet(request({ recipe: white, masters: [M10], weighAs: { black: "M10" } })),
    ).toMatchObject(impossible);
    expect(writeWeighSheet(request({ weighAs: { black: "M10" } }))).toMatchObject(impossible);
    expect(
      writeWeighSheet(request({ recipe: tinted(0.2), masters: [M10], weighAs: { black: "M10" } })),
    ).toMatchObject(impossible);
    const asked = written({ masters: [M10, M2], weighAs: { black: "M2" } });
    expect(asked.lines[1]).toMatchObject({ id: "M2", grams: 250 });
  });

  it("orders base, additive, reducer, tint, whatever the order of the recipe, and leaves parts of none out", () => {
    const sheet = written({
      recipe: [
        { itemId: "black", role: "colourant", massFraction: 0.01 },
        { itemId: "thin", role: "reducer", massFraction: 0.1 },
        { itemId: "soft", role: "additive", massFraction: 0.3 },
        { itemId: "none", role: "base", massFraction: 0 },
        { itemId: "clear", role: "base", massFraction: 0.59 },
      ],
    });
    expect(sheet.lines.map((line) => line.id)).toEqual(["clear", "soft", "thin", "black"]);
  });

  it("sums to the batch within one step per component, each line within half a step, for any recipe, batch and step", () => {
    let writtenCount = 0;
    fc.assert(
      fc.property(anyRecipe, anyMasters, anyBatch, anyStep, (recipe, masters, batchGrams, scaleStepGrams) => {
        const sheet = writeWeighSheet({ recipe, masters, otherBases: "allowed", batchGrams, scaleStepGrams });
        const smallest = Math.min(...recipe.map((part) => part.massFraction).filter((part) => part > 0));
        if (!sheet.ok) {
          // refused only where some part of the recipe could not be weighed
          expect(sheet.problems.every((problem) => problem.code === "rounds-to-nothing")).toBe(true);
          for (const { figures } of sheet.problems) {
            expect(figures.exactGrams!).toBeLessThanOrEqual(scaleStepGrams * 0.500001);
          }
          return;
        }
        writtenCount += 1;
        expect(smallest).toBeGreaterThan(0);
        const slack = 1e-9 * batchGrams;
        expect(Math.abs(sheet.totalGrams - batchGrams)).toBeLessThanOrEqual(
          recipe.length * scaleStepGrams + slack,
        );
        for (const line of sheet.lines) {
          expect(Math.abs(line.grams - line.exactGrams)).toBeLessThanOrEqual(scaleStepGrams / 2 + slack);
          expect(Math.abs(line.grams / scaleStepGrams - line.stepCount)).toBeLessThan(1e-6);
        }
      }),
    );
    expect(writtenCount).toBeGreaterThan(30);
  });

  it("has true fractions that sum to 1, are those of its grams, and before rounding are the recipe itself", () => {
    fc.assert(
      fc.property(anyRecipe, anyMasters, anyBatch, anyStep, (recipe, masters, batchGrams, scaleStepGrams) => {
        const sheet = writeWeighSheet({ recipe, masters, otherBases: "refused", batchGrams, scaleStepGrams });
        fc.pre(sheet.ok);
        expect(sheet.trueRecipe.reduce((sum, part) => sum + part.massFraction, 0)).toBeCloseTo(1, 12);
        for (const { itemId, massFraction } of sheet.trueRecipe) {
          let grams = 0;
          for (const line of sheet.lines) {
            if (line.role !== "master") grams += line.id === itemId ? line.grams : 0;
            else {
              const master = masters.find((one) => one.id === line.id)!;
              if (master.colourantId === itemId) grams += line.grams * master.massFraction;
              if (master.baseId === itemId) grams += line.grams * (1 - master.massFraction);
            }
          }
          expect(Math.abs(massFraction - grams / sheet.totalGrams)).toBeLessThan(1e-12);
        }
        const unrounded = recipeOfPot(
          sheet.lines.map(({ exactGrams, contents }) => ({ grams: exactGrams, contents })),
        );
        // a base that masters used up but for half a step is the one thing left off
        const leftOff = scaleStepGrams / batchGrams;
        for (const { itemId, massFraction } of recipe) {
          const found = unrounded.find((part) => part.itemId === itemId)?.massFraction ?? 0;
          expect(Math.abs(found - massFraction)).toBeLessThan(leftOff + 1e-9);
        }
      }),
    );
  });

  it("weighs a tint neat from 50 steps on and else in a form of 50 steps where any master at hand has them", () => {
    fc.assert(
      fc.property(anyRecipe, anyMasters, anyBatch, anyStep, (recipe, masters, batchGrams, scaleStepGrams) => {
        const sheet = writeWeighSheet({ recipe, masters, otherBases: "allowed", batchGrams, scaleStepGrams });
        fc.pre(sheet.ok);
        const least = FEWEST_STEP_COUNT * scaleStepGrams;
        const tints = recipe.filter((part) => part.role === "colourant" && part.massFraction > 0);
        const gramsOfBase = new Map(
          recipe
            .filter((part) => part.role === "base" && part.massFraction > 0)
            .map((part) => [part.itemId, part.massFraction * batchGrams]),
        );
        const largestBase = Math.max(0, ...gramsOfBase.values());
        for (const { itemId, massFraction } of tints) {
          const line = sheet.lines.find((one) => one.contents[0]!.itemId === itemId)!;
          const neatGrams = batchGrams * massFraction;
          if (neatGrams >= least * 1.000001) expect(line.role).toBe("colourant");
          if (line.role === "master") expect(neatGrams).toBeLessThan(least * 1.000001);
          // under 50 steps only where no master of 50 steps finds room (of one tint: several compete for the room)
          if (tints.length > 1 || line.exactGrams >= least * 0.999999) continue;
          for (const master of masters.filter((one) => one.colourantId === itemId)) {
            const grams = neatGrams / master.massFraction;
            const room = gramsOfBase.get(master.baseId) ?? largestBase;
            expect(grams < least * 1.000001 || grams - neatGrams > room * 0.999999).toBe(true);
          }
        }
      }),
    );
  });
});

describe("a weigh sheet's arguments out of range", () => {
  it("are refused by name and value", () => {
    for (const bad of [0, -1, Number.NaN, Infinity]) {
      expect(() => written({ batchGrams: bad })).toThrow(`batchGrams must be above 0 and finite; got ${bad}`);
      expect(() => written({ scaleStepGrams: bad })).toThrow(
        `scaleStepGrams must be above 0 and finite; got ${bad}`,
      );
    }
    expect(() => written({ recipe: tinted(0.005).slice(1) })).toThrow("recipe must sum to 1; got 0.005");
    expect(() => written({ recipe: tinted(1.5) })).toThrow("massFraction must be in 0..1; got -0.5");
    const twice = { itemId: "clear", role: "base", massFraction: 0.5 } as const;
    expect(() => written({ recipe: [twice, twice] })).toThrow("must name each item once");
    expect(() => written({ batchGrams: 200, masters: [{ ...M10, massFraction: 1 }] })).toThrow("got 1");
    expect(() => recipeOfPot([])).toThrow("a pot must hold something");
    expect(() => recipeOfPot([{ grams: -1, contents: [] }])).toThrow("grams must be >= 0 and finite; got -1");
  });
});
