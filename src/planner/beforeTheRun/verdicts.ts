/** The verdict of each line, from its checklist, its prediction and the test plan. */
import {
  type LineVerdict,
  lineVerdict,
  type VerdictFacts,
} from "../../core/planning/decisions/lineVerdict.ts";
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import type { Documents } from "../../job/documents.ts";
import { checklistFacts } from "../../job/lineChecklist.ts";
import { chosenCandidate } from "../../job/lookup.ts";
import type { TestPlanState } from "../decisions/useTestPlan.ts";
import type { RunLine } from "./runLines.ts";

type KnownPlan = Pick<TestPlanState, "finding" | "isCurrent">;

/** What the plan says of the line; null while there is no plan of the documents as they are. */
function planFacts(
  documents: Documents,
  run: RunLine,
  { finding, isCurrent }: KnownPlan,
): VerdictFacts["plan"] {
  if (finding === null || !isCurrent) return null;
  const { line, place } = run;
  const test = finding.tests.find(({ lineId, placeId }) => lineId === line.id && placeId === place.id);
  const chosenId = chosenCandidate(documents.job, line.id, place.id)?.id ?? null;
  return {
    planned:
      test === undefined
        ? null
        : {
            riskRemoved: test.riskRemoved,
            cost: test.cost,
            ofChosenPrint: test.candidateId !== null && test.candidateId === chosenId,
          },
    bestLeft: finding.next,
  };
}

function choiceOf({ chosen }: RunLine): VerdictFacts["choice"] {
  return chosen.kind === "none" || chosen.kind === "refused" ? chosen.kind : "made";
}

function outlookOf(documents: Documents, { chosen, line }: RunLine): VerdictFacts["outlook"] {
  if (chosen.kind !== "predicted") return null;
  const { chanceInBand } = chosen.cell;
  return { chanceInBand, expectedLoss: lineLoss(documents, line, chanceInBand).expectedLoss };
}

/** Null while it cannot be told. */
export function verdictOf(documents: Documents, run: RunLine, plan: KnownPlan): LineVerdict | null {
  const { line, place, items } = run;
  const test = items.find(({ item }) => item.code === "test-print");
  const goodsIn = items.find(({ item }) => item.code === "goods-in");
  const risk = plan.finding?.lines.find(({ lineId, placeId }) => lineId === line.id && placeId === place.id);
  return lineVerdict({
    choice: choiceOf(run),
    testItem: {
      asked: test === undefined ? "none" : test.item.blocking ? "blocking" : "advised",
      signed: test?.state === "signed",
    },
    goodsInOpen: goodsIn !== undefined && goodsIn.state !== "signed",
    plan: planFacts(documents, run, plan),
    outlook: outlookOf(documents, run),
    bestChance: risk?.best.chanceInBand ?? null,
    printedOnThisLot: checklistFacts(documents, line, place, null).prints.ofThisRecipe,
  });
}
