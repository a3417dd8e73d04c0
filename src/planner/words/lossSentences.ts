/** What an expected loss says in words, and what it was made of. */
import type { ExpectedLoss } from "../../core/planning/decisions/expectedLoss.ts";
import { percentWords } from "./garmentWords.ts";
import { moneyWords } from "./moneyWords.ts";
import { pieces } from "./pieceWords.ts";

/** "of 1,900 EUR: 900 pieces, 3.74 EUR each, 70 % refused where the print misses". */
export function lossMadeOf({ lossIfOutOfBand, costPerSpoiledPiece, inputs }: ExpectedLoss, currency: string) {
  const { pieceCount, refusedShare } = inputs;
  return `of ${moneyWords(lossIfOutOfBand, currency)}: ${pieces(pieceCount)}, ${moneyWords(costPerSpoiledPiece, currency)} each, ${percentWords(refusedShare)} refused where the print misses`;
}
