/** The test prints worth making for a job, from its documents: candidates, what each could tell, and the plan. */
import { learn } from "../../core/evidence/learn.ts";
import type { Posterior } from "../../core/evidence/posterior.ts";
import {
  evidencePlanProblem,
  type PlanChoice,
  type PlanGarment,
  testIdOf,
} from "../../core/planning/decisions/evidencePlan.ts";
import { planTests } from "../../core/planning/decisions/testPlan.ts";
import { pairCountFor95, testsBefore, testTermsOf } from "../../job/decisions/testTerms.ts";
import type { Documents } from "../../job/documents.ts";
import { evidencePrintOf } from "../cellPrediction.ts";
import type { LineRisk, TestsFinding, WorthwhileTest } from "./decisionProtocol.ts";
import { type WeighedGarment, weighedGarments } from "./weighedGarments.ts";

/** Of the ways of printing a garment that are weighed, so many are tested, and the chosen one. Invented default. */
const TESTED = 2;

const leastOtherCost = ({ choices }: WeighedGarment) =>
  Math.min(...choices.map(({ otherCost }) => otherCost));

/** What the best way of printing a garment costs above the cheapest: money of the plan's that is no loss. */
const dearerBy = (garment: WeighedGarment) => garment.choices[0]!.otherCost - leastOtherCost(garment);

/** A garment as the plan takes it: what all its choices cost alike is left out, so that the plan speaks of risk. */
function planGarment(documents: Documents, garment: WeighedGarment): PlanGarment {
  const { id, line, lossIfOutOfBand, choices, chosen } = garment;
  const least = leastOtherCost(garment);
  const { ready } = line;
  return {
    garmentId: id,
    terms: testTermsOf(ready.lot, ready.band, documents.library.shelf.defaults),
    choices: choices.flatMap((choice, rank): PlanChoice[] => {
      const print = evidencePrintOf(ready.row, choice.column.print.column);
      if (print === null) return [];
      return [
        {
          choiceId: choice.column.candidateId,
          print,
          chanceBelow: choice.outlook.chanceBelow,
          chanceAbove: choice.outlook.chanceAbove,
          chanceInBand: choice.outlook.chanceInBand,
          lossIfOutOfBand,
          otherCost: choice.otherCost - least,
          testable: rank < TESTED || choice === chosen,
        },
      ];
    }),
  };
}

/**
 * The plan for the whole job: each garment at each place on its likeliest mixes of the matrix, tested while a test saves
 * more than it costs, within the spare pieces and the days before the run.
 * @param today YYYY-MM-DD
 * @param onPick told of each test as it is taken, the best first
 */
export function plannedTests(
  documents: Documents,
  posterior: Posterior | null,
  today: string,
  onPick: (test: { readonly lineId: string; readonly placeId: string }) => void = () => {},
): TestsFinding {
  const { job, library } = documents;
  const { defaults } = library.shelf;
  const { garments, left } = weighedGarments(documents, posterior);
  const known = posterior ?? learn([]);
  const viewing = job.viewing;
  const problem = evidencePlanProblem(
    known,
    garments.map((garment) => planGarment(documents, garment)),
    viewing,
    { cost: defaults.prices.testPrint, pieceCount: 1, pairCount: 1, pairSd: 0 },
  );
  const byTest = new Map(
    garments.flatMap((garment) =>
      garment.choices.map(
        (choice) => [testIdOf(garment.id, choice.column.candidateId), { garment, choice }] as const,
      ),
    ),
  );
  const byId = new Map(garments.map((garment) => [garment.id, garment]));
  const nameOf = (id: string) => {
    const { line, place } = byId.get(id)!;
    return { lineId: line.ready.line.id, placeId: place.id };
  };
  const atMostTests = testsBefore(job, defaults.testing, today);
  // Counted at each place by itself: front and back can be tested on one piece.
  const sparePieces = new Map(
    garments.flatMap(({ id, line }) => {
      const spare = line.ready.line.sparePieceCount;
      return spare === null ? [] : [[id, spare] as const];
    }),
  );
  const plan = planTests(problem, { atMostTests, sparePieces }, (testId) => {
    onPick(nameOf(byTest.get(testId)!.garment.id));
  });
  const tests = plan.tests.map((test): WorthwhileTest => {
    const { garment, choice } = byTest.get(test.testId)!;
    const { ready } = garment.line;
    const { mix, setUp } = choice.column.print;
    return {
      ...nameOf(garment.id),
      recipe: mix.recipe,
      setUpId: setUp.id,
      candidateId: choice.column.candidateId,
      cost: test.cost,
      riskRemoved: test.riskRemoved,
      informs: test.informs.map(({ garmentId: id, riskRemoved }) => ({ ...nameOf(id), riskRemoved })),
      shareSettled: test.shareSettled,
      pieceCount: defaults.testing.pieceCount,
      pairCount: Math.max(defaults.testing.pairCount, pairCountFor95(ready.lot, ready.band)),
      deltaL5: choice.outlook.deltaL5,
      deltaL95: choice.outlook.deltaL95,
    };
  });
  const costs = new Map(plan.garments.map((each) => [each.garmentId, each]));
  const lines = garments.map((garment): LineRisk => {
    const { choices, chosen } = garment;
    const best = choices[0]!;
    const cost = costs.get(garment.id);
    const loss = (counted: number | undefined) =>
      counted === undefined ? best.expectedLoss : counted - dearerBy(garment);
    return {
      ...nameOf(garment.id),
      lossNow: loss(cost?.costNow),
      lossIfKnown: loss(cost?.costIfKnown),
      best: {
        recipe: best.column.print.mix.recipe,
        setUpId: best.column.print.setUp.id,
        candidateId: best.column.candidateId,
        chanceInBand: best.outlook.chanceInBand,
        evidence: best.outlook.evidence,
      },
      chosen:
        chosen === null
          ? null
          : { expectedLoss: chosen.expectedLoss, chanceInBand: chosen.outlook.chanceInBand },
    };
  });
  const next = plan.next;
  return {
    tests,
    candidateCount: problem.tests.length,
    lossNow: lines.reduce((sum, { lossNow }) => sum + lossNow, 0),
    avoidable: plan.avoidable,
    netWorth: plan.netWorth,
    next:
      next === null
        ? null
        : {
            ...nameOf(byTest.get(next.testId)!.garment.id),
            cost: next.cost,
            riskRemoved: next.riskRemoved,
          },
    lines,
    atMostTests,
    left,
  };
}
