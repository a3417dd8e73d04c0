// Expected loss: the design notes' own sum, who supplies the piece, and the laws of an expectation.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  costOfSpoiledPiece,
  expectedLossOf,
  type LossInputs,
} from "../../../../src/core/planning/decisions/expectedLoss.ts";
import { between } from "../../optics/between.ts";

const line: LossInputs = {
  pieceCount: 2100,
  piecePrice: 2.85,
  suppliedBy: "shop",
  liableShare: 0,
  printCost: 0.39,
  chanceInBand: 0,
  refusedShare: 1,
};
const anyLine: fc.Arbitrary<LossInputs> = fc.record({
  pieceCount: fc.nat(10_000),
  piecePrice: between(0, 30),
  suppliedBy: fc.constantFrom("shop" as const, "customer" as const),
  liableShare: between(0, 1),
  printCost: between(0, 5),
  chanceInBand: between(0, 1),
  refusedShare: between(0, 1),
});

describe("expectedLossOf", () => {
  it("gives 6,804 for a wrong print on 2,100 pieces at 2.85 and 0.39, 194 for 60 of them (design notes, trade.md §1)", () => {
    expect(expectedLossOf(line).expectedLoss).toBeCloseTo(6804, 8);
    expect(Math.round(expectedLossOf({ ...line, pieceCount: 60 }).expectedLoss)).toBe(194);
  });

  it("counts the customer's piece by what the shop owes for it, its own always", () => {
    expect(costOfSpoiledPiece({ ...line, suppliedBy: "customer" })).toBe(0.39);
    expect(costOfSpoiledPiece({ ...line, suppliedBy: "customer", liableShare: 0.5 })).toBeCloseTo(1.815, 12);
    expect(costOfSpoiledPiece(line)).toBeCloseTo(3.24, 12);
  });

  it("is the loss of a miss times its chance, between nothing and all, and never grows with the chance in band", () => {
    fc.assert(
      fc.property(anyLine, between(0, 1), (inputs, better) => {
        const loss = expectedLossOf(inputs);
        expect(loss.expectedLoss).toBeGreaterThanOrEqual(0);
        expect(loss.expectedLoss).toBeLessThanOrEqual(loss.lossIfOutOfBand);
        const chanceInBand = Math.max(better, inputs.chanceInBand);
        expect(expectedLossOf({ ...inputs, chanceInBand }).expectedLoss).toBeLessThanOrEqual(
          loss.expectedLoss,
        );
      }),
    );
  });

  it("refuses a chance, a share or money that cannot be", () => {
    expect(() => expectedLossOf({ ...line, chanceInBand: 1.01 })).toThrow(RangeError);
    expect(() => expectedLossOf({ ...line, refusedShare: -0.1 })).toThrow(RangeError);
    expect(() => expectedLossOf({ ...line, piecePrice: Number.NaN })).toThrow(RangeError);
    expect(() => expectedLossOf({ ...line, pieceCount: -1 })).toThrow(RangeError);
  });
});
