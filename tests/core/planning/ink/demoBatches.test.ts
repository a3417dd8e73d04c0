// The demo job's batches, masters and weigh sheets against a second calculation in plain arithmetic.
import { describe, expect, it } from "vitest";
import demo from "../../../../demo-data/verrowmoor-vm-217.tonebench.json";
import { batchSize } from "../../../../src/core/planning/ink/batchSize.ts";
import {
  gramsPerPrint,
  inkToMix,
  mixDensityGramsPerCm3,
  printedAreaM2,
} from "../../../../src/core/planning/ink/inkQuantity.ts";
import { diluteMaster } from "../../../../src/core/planning/ink/masterDilution.ts";
import type { RecipeComponent } from "../../../../src/core/planning/ink/potRecipe.ts";
import { writeWeighSheet } from "../../../../src/core/planning/ink/weighSheet.ts";
import { depositUm } from "../../../../src/core/screen/mesh.ts";
import { batchOnPaper, tintOnPaper } from "./secondCalculation.ts";

const { job, library } = demo;
const { shelf } = library;
const inkItems = [
  ...shelf.bases.map((item) => ({ ...item, role: item.role as RecipeComponent["role"] })),
  ...shelf.colourants.map((item) => ({ ...item, role: "colourant" as const })),
];
const itemOf = (id: string) => inkItems.find((item) => item.id === id)!;
const spoilage = shelf.defaults.spoilageRule.fraction;

/** What was weighed, in plain arithmetic: ink of all pieces over their area. */
function weighedOf({ weighed }: (typeof shelf.setUps)[number]) {
  if (weighed === null || weighed.pieces === undefined) return weighed;
  const { pieces, printedAreaM2, densityGramsPerCm3 } = weighed;
  const ink = pieces.reduce((sum, piece) => sum + piece.afterGrams - piece.beforeGrams, 0);
  return { meanGsm: ink / pieces.length / printedAreaM2, densityGramsPerCm3 };
}

/** Every mix through every set-up that the demo offers, for all lines printed at the place. */
const columns = job.places.flatMap((place) =>
  place.candidates.map(({ mixId, setUpId }) => {
    const lineIds: readonly string[] | null = place.lineIds;
    const lines = job.lines.filter((line) => lineIds === null || lineIds.includes(line.id));
    const pieces = lines.flatMap((line) => line.quantities).reduce((sum, size) => sum + size.count, 0);
    const setUp = shelf.setUps.find((one) => one.id === setUpId)!;
    const mesh = shelf.meshes.find((one) => one.id === setUp.meshId)!;
    return { place, pieces, mix: job.mixes.find((one) => one.id === mixId)!, setUp, mesh };
  }),
);

function planned({ place, pieces, mix, setUp, mesh }: (typeof columns)[number]) {
  const woven = { threadsPerCm: mesh.threadsPerCm, threadDiameterUm: mesh.threadUm };
  const density = mixDensityGramsPerCm3(
    mix.recipe.map(({ itemId, massFraction }) => ({
      massFraction,
      densityGramsPerCm3: itemOf(itemId).densityGramsPerCm3,
    })),
  );
  const { inkToMixUm } = inkToMix(woven, { strokeCount: setUp.strokeCount }, weighedOf(setUp));
  const areaM2 = printedAreaM2(place);
  const mixedGramsPerPrint = gramsPerPrint(areaM2, inkToMixUm, density);
  const expectedGramsPerPrint = gramsPerPrint(areaM2, depositUm(woven), density);
  const use = { printCount: pieces, spoilageFraction: spoilage, mixedGramsPerPrint, expectedGramsPerPrint };
  const { batchGrams } = batchSize([use], 1);
  return { batchGrams, mixedGramsPerPrint, density };
}

const recipeOf = (mix: (typeof columns)[number]["mix"]): RecipeComponent[] =>
  mix.recipe.map(({ itemId, massFraction }) => ({ itemId, massFraction, role: itemOf(itemId).role }));

/** Two calculations of one batch differ in the last digits only, far below any scale's step. */
const LAST_DIGITS_GRAMS = 1e-6;

describe("the demo job's ink", () => {
  it("is the second calculation's, by print and by batch, for every mix and set-up", () => {
    expect(columns).toHaveLength(9);
    for (const column of columns) {
      const { mixedGramsPerPrint, batchGrams, density } = planned(column);
      const weighed = weighedOf(column.setUp);
      const paper = batchOnPaper({
        pieces: column.pieces,
        spoilage,
        widthMm: column.place.widthMm,
        heightMm: column.place.heightMm,
        cover: column.place.coverFraction,
        ink:
          weighed === null
            ? { threadsPerCm: column.mesh.threadsPerCm, threadUm: column.mesh.threadUm }
            : { weighedGsm: weighed.meanGsm, weighedDensity: weighed.densityGramsPerCm3 },
        density,
      });
      expect(Math.abs(mixedGramsPerPrint - paper.gramsPerPrint)).toBeLessThan(LAST_DIGITS_GRAMS);
      expect(Math.abs(batchGrams - paper.batchGrams)).toBeLessThan(LAST_DIGITS_GRAMS);
    }
    // worked by hand: 28 x 33 cm at 46 %, 24 g/m2, 7,200 pieces and 2 %
    const front = planned(columns[0]!);
    expect(columns[0]!.pieces).toBe(7200);
    expect(front.mixedGramsPerPrint).toBeCloseTo(0.042504 * 24, 9);
    expect(front.batchGrams).toBeCloseTo(7344 * 1.020096 * 1.1 + 400, 6);
  });

  it("is weighed as the second calculation says, within one scale step, for whole batches and small pots", () => {
    let sheets = 0;
    const forms = new Set<string>();
    const oneTint = columns.filter(({ mix }) => mix.recipe.length === 2 && mix.name.includes("black"));
    for (const column of oneTint) {
      const tint = column.mix.recipe[1]!;
      for (const batchGrams of [planned(column).batchGrams, 1000, 200, 100]) {
        for (const scaleStepGrams of [0.01, 0.1, 0.5]) {
          const base = column.mix.recipe[0]!.itemId;
          const masters = shelf.masters.map((master) => ({ ...master, baseId: base }));
          const sheet = writeWeighSheet({
            recipe: recipeOf(column.mix),
            masters,
            otherBases: "refused",
            batchGrams,
            scaleStepGrams,
          });
          const paper = tintOnPaper(batchGrams, 100 * tint.massFraction, scaleStepGrams);
          if (!sheet.ok) throw new Error(`${column.mix.name}, ${batchGrams} g must be weighable`);
          const [first, second] = sheet.lines;
          const master = shelf.masters.find((one) => one.id === second!.id);
          expect(master === undefined ? "neat" : `${100 * master.massFraction} %`).toBe(paper.form);
          expect(Math.abs(first!.grams - paper.base)).toBeLessThanOrEqual(scaleStepGrams * 1.000001);
          expect(Math.abs(second!.grams - paper.tint)).toBeLessThanOrEqual(scaleStepGrams * 1.000001);
          const black = sheet.trueRecipe.find((part) => part.itemId === tint.itemId)!;
          expect(100 * black.massFraction).toBeCloseTo(paper.truePercent, 9);
          sheets += 1;
          forms.add(paper.form);
        }
      }
    }
    expect(sheets).toBe(36);
    expect([...forms].sort()).toEqual(["10 %", "2 %", "neat"]);
  });

  it("has masters in another base only for the low-cure mix, where they bring a base it does not name", () => {
    const lowCure = columns.find(({ mix }) => mix.name.startsWith("Low-cure"))!;
    const request = {
      recipe: recipeOf(lowCure.mix),
      masters: shelf.masters,
      batchGrams: 1000,
      scaleStepGrams: 0.1,
    };
    const shown = writeWeighSheet({ ...request, otherBases: "allowed" });
    expect(shown.notices.map((notice) => notice.code)).toContain("master-in-another-base");
    const kept = writeWeighSheet({ ...request, otherBases: "refused" });
    expect(kept.notices.map((notice) => notice.code)).toEqual(["master-would-help", "under-fifty-steps"]);
  });

  it("weighs soft white as equal halves, additive before white", () => {
    const soft = columns.find(({ mix }) => mix.name === "Soft white")!;
    const { batchGrams } = planned(soft);
    const sheet = writeWeighSheet({
      recipe: recipeOf(soft.mix),
      masters: shelf.masters,
      otherBases: "refused",
      batchGrams,
      scaleStepGrams: 0.5,
    });
    if (!sheet.ok) throw new Error("must be weighable");
    expect(sheet.lines.map((line) => line.role)).toEqual(["additive", "colourant"]);
    for (const line of sheet.lines) {
      expect(Math.abs(line.grams - batchGrams / 2)).toBeLessThanOrEqual(0.5);
    }
  });

  it("makes its 10 % and 2 % masters, 500 g each, as 450 and 50 g and as 490 and 10 g", () => {
    for (const { colourantId, baseId, massFraction, madeOn, expiresOn } of shelf.masters) {
      const made = diluteMaster({
        colourantId,
        baseId,
        massFraction,
        madeOn,
        expiresOn,
        masters: [],
        batchGrams: 500,
        scaleStepGrams: 0.1,
      });
      if (!made.ok) throw new Error("must be weighable");
      const grams = made.sheet.lines.map((line) => line.grams);
      expect(grams).toEqual(massFraction === 0.1 ? [450, 50] : [490, 10]);
    }
  });
});
