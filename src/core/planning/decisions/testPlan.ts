/** Which test prints are worth making: the set, ranked, with what each removes, and what no test can. */
import { PlanSearch, type Step } from "./planSearch.ts";
import {
  type Benefit,
  type BenefitModel,
  benefitModel,
  benefitOf,
  type TestPlanProblem,
} from "./testBenefit.ts";
import { NO_LIMITS, type TestPlanLimits } from "./testLimits.ts";

export interface PlannedTest {
  readonly testId: string;
  readonly cost: number;
  /** Money it saves in expectation, made after those before it in the list. */
  readonly riskRemoved: number;
  /** Money saved by garment, largest first. */
  readonly informs: readonly { readonly garmentId: string; readonly riskRemoved: number }[];
  /** Part of the avoidable risk that is gone with it and all before it, 0..1. */
  readonly shareSettled: number;
}

export interface TestPlan {
  /** In the order in which they are worth most. */
  readonly tests: readonly PlannedTest[];
  /** Expected cost of the best choices today, money. */
  readonly costNow: number;
  /** What knowing everything would save: the most that tests can. */
  readonly avoidable: number;
  /** What the plan saves, tests' own cost taken off. */
  readonly netWorth: number;
  /** By garment: its expected cost today, and were all known that tests can tell; money. */
  readonly garments: readonly {
    readonly garmentId: string;
    readonly costNow: number;
    readonly costIfKnown: number;
  }[];
  /** The best test that is left, and what it would save: less than it costs. Null where none is left. */
  readonly next: { readonly testId: string; readonly cost: number; readonly riskRemoved: number } | null;
}

/**
 * The set of tests with the largest expected value of sample information less its cost (Raiffa & Schlaifer 1961), built
 * greedily with the gains counted anew after each pick (above 24 candidates they are guessed, and the best guesses counted:
 * guessedGains.ts); where no single test pays, the best pair that pays together is taken;
 * at the end, up to 24 candidates, tests are swapped and dropped while that pays, and always those are dropped that no longer
 * pay beside the others. Value of information is not submodular, so no bound on how far this is from the best set holds
 * (Krause & Guestrin, "Optimal value of information in graphical models", JAIR 35, 2009).
 * @param onPick told of each test as it is taken, the best first; a later exchange may take one back
 * @throws RangeError as `benefitModel`.
 */
export function planTests(
  problem: TestPlanProblem,
  limits: TestPlanLimits = NO_LIMITS,
  onPick: (testId: string) => void = () => {},
): TestPlan {
  const model = benefitModel(problem);
  const search = new PlanSearch(model, limits, onPick);
  let benefit = search.grow(model.nothing);
  for (let round = 0; round < problem.tests.length; round++) {
    const better = search.improved(benefit);
    if (better === null) break;
    benefit = search.grow(better);
  }
  return planOf(model, search, benefit);
}

/** `steps` up to where they are worth most, their cost off: what was taken early may no longer pay beside what came later. */
function payingSteps({ problem }: BenefitModel, steps: readonly Step[]): readonly Step[] {
  let cost = 0;
  let best = { net: 0, count: 0 };
  steps.forEach(({ t, worth }, index) => {
    cost += problem.tests[t]!.cost;
    if (worth - cost > best.net) best = { net: worth - cost, count: index + 1 };
  });
  return steps.slice(0, best.count);
}

function planOf(model: BenefitModel, search: PlanSearch, grown: Benefit): TestPlan {
  const { problem, garments, avoidable } = model;
  const all = search.steps(grown);
  const paying = payingSteps(model, all);
  const isWhole = paying.length === all.length;
  const found = isWhole
    ? grown
    : benefitOf(
        model,
        paying.map(({ t }) => t),
      );
  let before = model.nothing.costs;
  const tests = paying.map(({ t, costs, worth }): PlannedTest => {
    const gains = costs.map((cost, g) => ({ g, riskRemoved: before[g]! - cost }));
    before = costs;
    const informs = gains
      .filter(({ riskRemoved }) => riskRemoved > 0)
      .sort((one, other) => other.riskRemoved - one.riskRemoved)
      .map(({ g, riskRemoved }) => ({ garmentId: garments[g]!.garmentId, riskRemoved }));
    return {
      testId: problem.tests[t]!.id,
      cost: problem.tests[t]!.cost,
      riskRemoved: gains.reduce((sum, { riskRemoved }) => sum + riskRemoved, 0),
      informs,
      shareSettled: avoidable > 0 ? Math.min(1, worth / avoidable) : 0,
    };
  });
  const saved = tests.reduce((sum, { riskRemoved, cost }) => sum + riskRemoved - cost, 0);
  const next = search.next(found);
  return {
    tests,
    costNow: garments.reduce((sum, { costNow }) => sum + costNow, 0),
    avoidable,
    netWorth: saved,
    garments: garments.map(({ garmentId, costNow, costIfKnown }) => ({ garmentId, costNow, costIfKnown })),
    next:
      next === null
        ? null
        : {
            testId: problem.tests[next.t]!.id,
            cost: problem.tests[next.t]!.cost,
            riskRemoved: next.gain,
          },
  };
}
