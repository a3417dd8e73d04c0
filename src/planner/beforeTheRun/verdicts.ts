/** The verdict of each line as the table and the pane show it: with the test plan, once that is there. */
import type { TestBar, VerdictFacts } from "../../core/planning/decisions/lineVerdict.ts";
import type { TestsFinding } from "../../engine/decisions/decisionProtocol.ts";
import { verdictOfLine } from "../../job/decisions/verdictOfLine.ts";
import type { Documents } from "../../job/documents.ts";
import { chosenCandidate, setUpOf } from "../../job/lookup.ts";
import type { TestPlanState } from "../decisions/useTestPlan.ts";
import { recipeName } from "../words/mixWords.ts";
import type { ShownVerdict } from "../words/verdictSentences.ts";
import type { RunLine } from "./runLines.ts";

type KnownPlan = Pick<TestPlanState, "finding" | "isCurrent">;

/** Why the plan has no further test of the line whatever it would be worth; null where it could have. */
function barOf(
  { library }: Documents,
  { line }: RunLine,
  { tests, atMostTests }: TestsFinding,
): TestBar | null {
  if (line.sparePieceCount !== null && line.sparePieceCount < library.shelf.defaults.testing.pieceCount)
    return "spare-pieces";
  return atMostTests !== null && tests.length >= atMostTests ? "time" : null;
}

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
  if (test === undefined)
    return { planned: null, bestLeft: finding.next, barredBy: barOf(documents, run, finding) };
  const { riskRemoved, cost, candidateId } = test;
  const ofChosenPrint = candidateId !== null && candidateId === chosenId;
  return { planned: { riskRemoved, cost, ofChosenPrint }, bestLeft: finding.next };
}

/** The print that the line's planned test is of, where another one is chosen. */
function otherPrint({ job, library }: Documents, { line, place }: RunLine, plan: KnownPlan): string | null {
  const chosenId = chosenCandidate(job, line.id, place.id)?.id ?? null;
  const test = plan.finding?.tests.find(({ lineId, placeId }) => lineId === line.id && placeId === place.id);
  if (chosenId === null || test === undefined || test.candidateId === chosenId) return null;
  const setUp = setUpOf(library.shelf, test.setUpId)?.name;
  return [recipeName(test.recipe, library.shelf), setUp].filter((part) => part !== undefined).join(", ");
}

/** Null while it cannot be told. */
export function verdictOf(documents: Documents, run: RunLine, plan: KnownPlan): ShownVerdict | null {
  const { line, place, chosen, entries } = run;
  const risk = plan.finding?.lines.find(({ lineId, placeId }) => lineId === line.id && placeId === place.id);
  const found = verdictOfLine(documents, line, place, {
    plan: planFacts(documents, run, plan),
    bestChance: risk?.best.chanceInBand ?? null,
    prediction: chosen.kind === "predicted" ? chosen.cell : null,
    signed: new Set(entries.signed.keys()),
  });
  return found === null ? null : { ...found, testOf: otherPrint(documents, run, plan) };
}
