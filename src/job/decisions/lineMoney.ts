/** What a line costs where its print is refused: the inputs of the expected loss, from job and shelf. */
import { type ExpectedLoss, expectedLossOf } from "../../core/planning/decisions/expectedLoss.ts";
import type { Documents } from "../documents.ts";
import type { Line } from "../jobDocument.ts";
import { lotOfLine, pieceCount } from "../lookup.ts";

/** A polyester surcharge is asked where more than this part of the cloth is polyester (posted price lists, trade.md §1). */
const MOSTLY = 0.5;

/** The price of printing one piece of the line, money. */
export function printPrice(documents: Documents, line: Line): number {
  const { print, polyesterSurcharge } = documents.library.shelf.defaults.prices;
  const polyester = (lotOfLine(documents, line)?.blend ?? [])
    .filter(({ fibre }) => fibre === "polyester")
    .reduce((sum, { massFraction }) => sum + massFraction, 0);
  return print + (polyester > MOSTLY ? polyesterSurcharge : 0);
}

/** What may be lost on the line with a print of that chance in band; a piece without a price counts as nothing. */
export function lineLoss(documents: Documents, line: Line, chanceInBand: number): ExpectedLoss {
  const { refusedFraction, liableFraction } = documents.library.shelf.defaults;
  return expectedLossOf({
    pieceCount: pieceCount(line),
    piecePrice: line.piecePrice ?? 0,
    suppliedBy: line.suppliedBy,
    liableShare: liableFraction,
    printCost: printPrice(documents, line),
    chanceInBand,
    refusedShare: refusedFraction,
  });
}
