/** The verdict of a line before its run, from the documents, what is signed, its prediction and the test plan. */

import type { ChecklistPrediction } from "../../core/planning/checklistFacts.ts";
import {
  type LineVerdict,
  lineVerdict,
  type VerdictFacts,
} from "../../core/planning/decisions/lineVerdict.ts";
import { runChecklist } from "../../core/planning/runChecklist.ts";
import type { Documents } from "../documents.ts";
import type { Line, Place } from "../jobDocument.ts";
import { checklistFacts } from "../lineChecklist.ts";
import { lineLoss } from "./lineMoney.ts";

export { LEAST_CHANCE } from "../../core/planning/runChecklist.ts";

export interface VerdictKnowledge extends Pick<VerdictFacts, "plan" | "bestChance"> {
  /** Of the chosen print; null while there is none. */
  readonly prediction: ChecklistPrediction | null;
  /** Codes of the checklist's items whose signature counts. */
  readonly signed: ReadonlySet<string>;
}

/** Null while the plan or the prediction is still needed to tell. */
export function verdictOfLine(
  documents: Documents,
  line: Line,
  place: Place,
  { plan, bestChance, prediction, signed }: VerdictKnowledge,
): LineVerdict | null {
  const facts = checklistFacts(documents, line, place, prediction);
  const items = runChecklist(facts);
  const test = items.find(({ code }) => code === "test-print");
  const chanceInBand = facts.prediction?.chanceInBand ?? null;
  return lineVerdict({
    choice: facts.choice,
    testItem: {
      asked: test === undefined ? "none" : test.blocking ? "blocking" : "advised",
      signed: signed.has("test-print"),
    },
    goodsInOpen: items.some(({ code }) => code === "goods-in") && !signed.has("goods-in"),
    plan,
    outlook:
      chanceInBand === null
        ? null
        : { chanceInBand, expectedLoss: lineLoss(documents, line, chanceInBand).expectedLoss },
    bestChance,
    printedOnThisLot: facts.prints.ofThisRecipe,
  });
}
