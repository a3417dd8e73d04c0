// A decision engine whose test plans are plain data, given when the test says so; it keeps what it was asked.
import { act } from "@testing-library/react";
import type { DecisionEngine, TestsRequest } from "../../src/engine/decisions/decisionEngine.ts";
import type { TestsFinding, WorthwhileTest } from "../../src/engine/decisions/decisionProtocol.ts";
import { exampleDocuments, ids } from "../job/exampleDocuments.ts";
import { noDecisions } from "./noDecisions.ts";

const recipeOf = (mixId: string) => exampleDocuments().job.mixes.find(({ id }) => id === mixId)!.recipe;

export function exampleTest(change: Partial<WorthwhileTest> = {}): WorthwhileTest {
  const { lineId = ids.otherLine, placeId = ids.place, riskRemoved = 1186 } = change;
  return {
    lineId,
    placeId,
    recipe: recipeOf(ids.mix),
    setUpId: ids.setUp,
    candidateId: ids.candidate,
    cost: 25,
    riskRemoved,
    informs: [{ lineId, placeId, riskRemoved }],
    shareSettled: 0.26,
    pieceCount: 2,
    pairCount: 6,
    deltaL5: -9.5,
    deltaL95: -1.5,
    ...change,
  };
}

/** Four tests on the two garments of the example job; invented figures. */
export function exampleFinding(change: Partial<TestsFinding> = {}): TestsFinding {
  const { placeId } = exampleTest();
  const informs = [
    { lineId: ids.line, placeId, riskRemoved: 425 },
    { lineId: ids.otherLine, placeId, riskRemoved: 177 },
  ];
  const black = { recipe: recipeOf(ids.otherMix), candidateId: ids.otherCandidate };
  const best = { recipe: recipeOf(ids.mix), setUpId: ids.setUp, candidateId: ids.candidate };
  return {
    tests: [
      exampleTest(),
      exampleTest({ lineId: ids.line, riskRemoved: 602, shareSettled: 0.39, informs }),
      exampleTest({ ...black, riskRemoved: 505, shareSettled: 0.5 }),
      exampleTest({ ...black, lineId: ids.line, riskRemoved: 40, shareSettled: 0.91 }),
    ],
    candidateCount: 30,
    lossNow: 5000,
    avoidable: 2600,
    netWorth: 2233,
    next: { lineId: ids.line, placeId, cost: 25, riskRemoved: 24.69 },
    lines: [
      {
        lineId: ids.line,
        placeId,
        lossNow: 60,
        lossIfKnown: 55,
        best: { ...best, chanceInBand: 0.1, evidence: "model only" },
        chosen: null,
      },
      {
        lineId: ids.otherLine,
        placeId,
        lossNow: 70,
        lossIfKnown: 2,
        best: { ...best, chanceInBand: 0.6, evidence: "related prints" },
        chosen: null,
      },
    ],
    atMostTests: null,
    left: [],
    ...change,
  };
}

interface Waiting {
  readonly resolve: (finding: TestsFinding | null) => void;
  readonly reject: (error: Error) => void;
}

export function plansOnDemand() {
  const asked: TestsRequest[] = [];
  const waiting: Waiting[] = [];
  const engine: DecisionEngine = {
    ...noDecisions,
    planTests: (request) => {
      asked.push(request);
      return new Promise((resolve, reject) => waiting.push({ resolve, reject }));
    },
  };
  /** Answers the oldest open question. */
  const answer = (finding: TestsFinding | null = exampleFinding()) =>
    act(async () => waiting.shift()?.resolve(finding));
  const fail = () => act(async () => waiting.shift()?.reject(new Error("planted")));
  return { engine, asked, answer, fail };
}
