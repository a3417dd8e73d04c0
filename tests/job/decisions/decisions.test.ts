// From documents to what decisions take: money of a line and a mix, candidates of a place, terms and limits of tests, stock to recover with.
import { describe, expect, it } from "vitest";
import { changeSets, withChanges } from "../../../src/core/planning/decisions/recoverChanges.ts";
import { inkCostPerPiece, mixOpeningCost, partsWithoutPrice } from "../../../src/job/decisions/inkMoney.ts";
import { lineLoss, printPrice } from "../../../src/job/decisions/lineMoney.ts";
import { mixCandidates } from "../../../src/job/decisions/mixCandidates.ts";
import {
  printingOf,
  recipeOfPrinting,
  recoverEffort,
  recoverStock,
} from "../../../src/job/decisions/recoverStock.ts";
import { pairCountFor95, testsBefore, testTermsOf } from "../../../src/job/decisions/testTerms.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { changeShelfItem } from "../../../src/job/edits/shelf.ts";
import { isSameRecipe } from "../../../src/job/recipeParts.ts";
import { demoDocuments } from "../../engine/decisions/demoJob.ts";

const documents = demoDocuments();
const { job, library } = documents;
const { shelf } = library;
const [front, back] = job.places as [(typeof job.places)[0], (typeof job.places)[0]];
const baseNamed = (name: string) => shelf.bases.find((base) => base.name === name)!;
const lineOf = (colourway: string, mill: string) =>
  job.lines.find(({ garmentLotId }) => {
    const lot = library.garmentLots.find(({ id }) => id === garmentLotId)!;
    return lot.colourway === colourway && lot.mill === mill;
  })!;
const curable = [{ itemId: baseNamed("Curable clear").id, massFraction: 1 }];

describe("the money of a line", () => {
  it("asks the polyester surcharge above half polyester, not at half", () => {
    const { print, polyesterSurcharge } = shelf.defaults.prices;
    expect(polyesterSurcharge).toBeGreaterThan(0);
    expect(printPrice(documents, lineOf("Forest", "Mill B"))).toBe(print);
    expect(printPrice(documents, lineOf("Royal", "Mill D"))).toBe(print + polyesterSurcharge);
  });

  it("is pieces x (piece + print) x chance out x share refused: 2,100 forests at 2.85 + 0.39, 40 % out, 70 % refused", () => {
    const { expectedLoss, inputs } = lineLoss(documents, lineOf("Forest", "Mill B"), 0.6);
    expect(inputs).toMatchObject({ pieceCount: 2100, piecePrice: 2.85, printCost: 0.39, refusedShare: 0.7 });
    expect(expectedLoss).toBeCloseTo(2100 * (2.85 + 0.39) * 0.4 * 0.7, 6);
  });

  it("counts a customer's own piece by the share that the shop owes for it", () => {
    const line = { ...lineOf("Forest", "Mill B"), suppliedBy: "customer" as const };
    const defaults = { ...shelf.defaults, liableFraction: 0.25 };
    const on: Documents = { job, library: { ...library, shelf: { ...shelf, defaults } } };
    expect(lineLoss(on, line, 0).costPerSpoiledPiece).toBeCloseTo(0.39 + 0.25 * 2.85, 9);
  });
});

describe("the money of a mix", () => {
  const setUp = shelf.setUps.find(({ weighed }) => weighed !== null)!;
  const priced = changeShelfItem(documents, "bases", curable[0]!.itemId, { pricePerKg: 8 }).library.shelf;

  it("is area x film x density x price: twice for a print twice as wide, nothing without a price", () => {
    const one = inkCostPerPiece(curable, setUp, front, priced);
    expect(one).toBeGreaterThan(0);
    expect(inkCostPerPiece(curable, setUp, { ...front, widthMm: 2 * front.widthMm }, priced)).toBeCloseTo(
      2 * one,
      9,
    );
    const unpriced = changeShelfItem(documents, "bases", curable[0]!.itemId, { pricePerKg: null }).library
      .shelf;
    expect(inkCostPerPiece(curable, setUp, front, unpriced)).toBe(0);
    expect(partsWithoutPrice(curable, unpriced)).toEqual(["Curable clear"]);
  });

  it("opens with an ink change and the ink that keeps a screen wet", () => {
    const { prices, screenWetGrams } = priced.defaults;
    expect(mixOpeningCost(curable, priced)).toBeCloseTo(prices.inkChange + (screenWetGrams * 8) / 1000, 9);
  });
});

describe("the candidates of a place", () => {
  const candidates = mixCandidates(documents, front);

  it("are the job's mixes there and every base up the ladder of black, each once", () => {
    const keys = candidates.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    const here = new Set(front.candidates.map(({ mixId }) => mixId));
    expect(new Set(candidates.flatMap(({ mixId }) => mixId ?? []))).toEqual(here);
    const bases = shelf.bases.filter(({ role }) => role === "base");
    const black = shelf.colourants.find(({ optics }) => optics.kind === "black")!;
    for (const { id } of bases) {
      for (const step of shelf.defaults.tintLadder) {
        const recipe = [
          { itemId: id, massFraction: 1 - step },
          { itemId: black.id, massFraction: step },
        ];
        expect(candidates.some((candidate) => isSameRecipe(candidate.recipe, recipe))).toBe(true);
      }
    }
  });

  it("leave out what a data sheet refuses", () => {
    const { library: limited } = changeShelfItem(documents, "bases", curable[0]!.itemId, {
      largestFraction: 0.5,
    });
    const left = mixCandidates({ job, library: limited }, front);
    expect(left.some(({ recipe }) => recipe.some(({ itemId }) => itemId === curable[0]!.itemId))).toBe(false);
  });

  it("lighten with white where the print has to be lighter than the cloth", () => {
    const white = shelf.colourants.find(({ optics }) => optics.kind === "white")!.id;
    const added = mixCandidates(documents, back).filter(({ mixId }) => mixId === null);
    expect(added.length).toBeGreaterThan(0);
    for (const { recipe } of added) expect(recipe.map(({ itemId }) => itemId)).toContain(white);
  });

  it("say what is out of stock", () => {
    const { library: empty } = changeShelfItem(documents, "bases", curable[0]!.itemId, { inStock: false });
    for (const { recipe, inStock } of mixCandidates({ job, library: empty }, front)) {
      expect(inStock).toBe(recipe.every(({ itemId }) => itemId !== curable[0]!.itemId));
    }
  });
});

describe("the terms of a test", () => {
  const solid = { heather: false, blend: [{ fibre: "polyester" as const, massFraction: 1, dyed: true }] };
  const heather = { ...solid, heather: true };

  it("ask n = (1.96 sd / E)^2 pairs, E a third of the tolerance: 2 on a solid and 10 on a heather at 1.5", () => {
    // sd 0.3 and 0.8: common practice, no source (core/evidence); trade.md §2 has 10 reads for a heather at 0.5.
    expect(pairCountFor95(solid, { tolerance: 1.5 })).toBe(2);
    expect(pairCountFor95(heather, { tolerance: 1.5 })).toBe(10);
  });

  it("take the shop's number of pairs where the precision asks fewer", () => {
    const { defaults } = shelf;
    expect(testTermsOf(solid, { tolerance: 1.5 }, defaults).pairCount).toBe(defaults.testing.pairCount);
    expect(testTermsOf(heather, { tolerance: 1.5 }, defaults).pairCount).toBe(10);
  });

  it("let as many be made as the days before the run allow", () => {
    const testing = { ...shelf.defaults.testing, perDay: 3, restDays: 2 };
    const on = (runStartsOn: string | null) => testsBefore({ runStartsOn }, testing, "2026-02-27");
    expect(on(null)).toBeNull();
    expect(on("2026-03-03")).toBe(2 * 3);
    expect(on("2026-03-01")).toBe(0);
    expect(on("2026-02-01")).toBe(0);
    expect(testsBefore({ runStartsOn: "2026-03-03" }, { ...testing, perDay: null }, "2026-02-27")).toBeNull();
  });
});

describe("the stock to recover with", () => {
  const setUp = shelf.setUps[0]!;
  const printing = printingOf(curable, setUp, front, shelf);
  const stock = recoverStock(printing, false, shelf);

  it("holds what is in stock and at hand, and no halftone unless that is allowed", () => {
    expect(stock.halftoneFractions).toEqual([]);
    expect(recoverStock(printing, true, shelf).halftoneFractions.length).toBeGreaterThan(0);
    const { shelf: empty } = changeShelfItem(documents, "bases", baseNamed("Matt clear").id, {
      inStock: false,
    }).library;
    expect(recoverStock(printing, false, empty).bases.map(({ key }) => key)).not.toContain(
      baseNamed("Matt clear").id,
    );
    const { shelf: bare } = changeShelfItem(documents, "meshes", shelf.setUps[1]!.meshId, {
      screensAtHand: 0,
    }).library;
    expect(recoverStock(printing, false, bare).screens.map(({ key }) => key)).not.toContain(
      shelf.setUps[1]!.meshId,
    );
  });

  it("turns white down or up where it carries the print, and never adds it to a clear", () => {
    expect(stock.colourants.map(({ family }) => family)).not.toContain("white");
    const white = shelf.colourants.find(({ optics }) => optics.kind === "white")!;
    const soft = [
      { itemId: baseNamed("Curable clear").id, massFraction: 0.5 },
      { itemId: white.id, massFraction: 0.5 },
    ];
    const own = recoverStock(printingOf(soft, setUp, back, shelf), false, shelf).colourants;
    const { ladder } = own.find(({ family }) => family === "white")!;
    expect(Math.min(...ladder)).toBeGreaterThan(0);
  });

  it("gives every change a recipe that sums to 1 and keeps additives", () => {
    const additive = shelf.bases.find(({ role }) => role === "additive")!;
    const soft = [
      { itemId: baseNamed("Curable clear").id, massFraction: 0.9 },
      { itemId: additive.id, massFraction: 0.1 },
    ];
    const now = printingOf(soft, setUp, front, shelf);
    for (const changes of changeSets(now, recoverStock(now, true, shelf)).slice(0, 200)) {
      const recipe = recipeOfPrinting(withChanges(now, changes), soft, shelf)!;
      expect(recipe.reduce((sum, { massFraction }) => sum + massFraction, 0)).toBeCloseTo(1, 12);
      expect(recipe.find(({ itemId }) => itemId === additive.id)?.massFraction).toBe(0.1);
    }
  });

  it("costs what the shop has entered", () => {
    const effort = recoverEffort(shelf);
    expect(effort.perPressMinute).toBeCloseTo(shelf.defaults.prices.pressHour / 60, 12);
    expect(effort.minutes).toEqual(shelf.defaults.changeMinutes);
  });
});
