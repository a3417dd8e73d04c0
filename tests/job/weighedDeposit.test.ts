/** A weighed set-up by its pieces or by its mean: the same figures from the same weighing. */
import { describe, expect, it } from "vitest";
import { changeShelfItem } from "../../src/job/edits/shelf.ts";
import { depositFigures } from "../../src/job/meshFigures.ts";
import { setUpSchema, type Weighed } from "../../src/job/shelfDocument.ts";
import { weighedDeposit } from "../../src/job/weighedDeposit.ts";
import { exampleDocuments, ids, time } from "./exampleDocuments.ts";

/** Inks of 1.1, 1.2 and 1.3 g on 0.05 m2: 22, 24 and 26 g/m2, mean 24, standard deviation 2. */
const pieces: Weighed = {
  kind: "pieces",
  pieces: [1.1, 1.2, 1.3].map((ink) => ({ beforeGrams: 150, afterGrams: 150 + ink })),
  printedAreaM2: 0.05,
  scaleStepGrams: 0.01,
  densityGramsPerCm3: 1.2,
  weighedAt: time,
};
const mean: Weighed = { kind: "mean", meanGsm: 24, sdGsm: 2, pieceCount: 3, densityGramsPerCm3: 1.2 };

describe("a weighed deposit", () => {
  it("has mean and scatter of its pieces", () => {
    const found = weighedDeposit(pieces);
    expect(found.meanGsm).toBeCloseTo(24, 9);
    expect(found.sdGsm).toBeCloseTo(2, 9);
    expect(found).toMatchObject({ pieceCount: 3, densityGramsPerCm3: 1.2 });
  });

  it("is known as well from the mean as from the pieces", () => {
    const [one, other] = [weighedDeposit(pieces), weighedDeposit(mean)];
    expect(one.lnPrintSd).toBeCloseTo(other.lnPrintSd, 9);
    expect(one.lnSetUpSd).toBeCloseTo(other.lnSetUpSd, 9);
    // Few pieces: at least the usual 8 % from print to print; 2/24 is 8.3 %.
    expect(other.lnPrintSd).toBeCloseTo(2 / 24, 9);
  });

  it("replaces the estimate, for the colour and for the ink to mix: 24 g/m2 at 1.2 g/cm3 are 20 um", () => {
    for (const weighed of [pieces, mean]) {
      const { shelf } = changeShelfItem(exampleDocuments(), "setUps", ids.otherSetUp, { weighed }).library;
      const found = depositFigures(shelf.setUps[1]!, shelf);
      expect(found).toMatchObject({ ok: true, weighed: true });
      expect(found.ok && found.depositUm).toBeCloseTo(20, 9);
      expect(found.ok && found.inkToMixUm).toBeCloseTo(20, 9);
    }
  });

  it("cannot be of a piece that is no heavier after printing", () => {
    const [setUp] = exampleDocuments().library.shelf.setUps;
    const refused = { ...pieces, pieces: [{ beforeGrams: 150, afterGrams: 150 }] };
    const parsed = setUpSchema.safeParse({ ...setUp, weighed: refused });
    expect(parsed.error?.issues[0]).toMatchObject({ params: { code: "not-heavier" } });
  });
});
