/** What a quick draw at goods-in says: how strongly the arriving garment answers, beside the approved one. */
import type { Problem } from "../../job/problem.ts";
import type { GoodsInCheck } from "../../job/recordDocument.ts";
import { changeWords } from "./predictionSentences.ts";

/** Smaller changes cannot be compared: their ratio is noise. As core/evidence/teaching has it. */
const SMALLEST_CHANGE = 0.5;

/** "8.0 darker against 3.1 darker: 2.6 times as strong." */
export function goodsInSentence({ approvedChange, arrivingChange }: GoodsInCheck): string {
  const both = `${changeWords(arrivingChange)} against ${changeWords(approvedChange)}`;
  if (Math.abs(approvedChange) < SMALLEST_CHANGE || Math.sign(approvedChange) !== Math.sign(arrivingChange))
    return `${both}: too little, or the other way, to compare.`;
  return `${both}: ${(arrivingChange / approvedChange).toFixed(1)} times as strong.`;
}

const MISSING: Readonly<Record<string, string>> = {
  approvedLotId: "the approved garment",
  arrivingLotId: "the arriving garment",
  sameLot: "two different garments",
  baseId: "the base",
  approvedChange: "the change on the approved one",
  arrivingChange: "the change on the arriving one",
  by: "who drew it",
};

export function goodsInMissing(problems: readonly Problem[]): string {
  return `Still missing: ${problems.map(({ where }) => MISSING[where] ?? where).join(", ")}.`;
}
