/** Which test prints are worth making: the set, ranked, with what each removes, and what no test can. */
import {
  type Benefit,
  type BenefitModel,
  benefitModel,
  benefitOf,
  gainOf,
  gainsOf,
  type TestPlanProblem,
  withTest,
} from "./testBenefit.ts";

export interface TestPlanLimits {
  /** As many as the time until the deadline allows. */
  readonly atMostTests: number | null;
  /** Spare pieces by garment; a garment that is not named has enough. */
  readonly sparePieces: ReadonlyMap<string, number>;
}

export const NO_LIMITS: TestPlanLimits = { atMostTests: null, sparePieces: new Map() };

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

/** Up to this many candidates all are counted anew after each pick, and all are tried in exchange. */
const SMALL_PROBLEM = 24;
/** Candidates that are tried in pairs in a larger problem, best first. */
const LOOKED_AT = 8;

/**
 * The set of tests with the largest expected value of sample information less its cost (Raiffa & Schlaifer 1961), built
 * greedily with the gains counted anew after each pick; where no single test pays, the best pair that pays together is taken;
 * at the end, up to 24 candidates, tests are swapped and dropped while that pays. Value of information is not submodular, so no bound on how far
 * this is from the best set holds (Krause & Guestrin, "Optimal value of information in graphical models", JAIR 35, 2009).
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

/** One search: the problem, its limits and the gains known last. */
class PlanSearch {
  /** Gains as they were counted last; those not counted yet count as endless. */
  private readonly lastGain: number[];

  constructor(
    private readonly model: BenefitModel,
    private readonly limits: TestPlanLimits,
    private readonly onPick: (testId: string) => void,
  ) {
    this.lastGain = model.problem.tests.map(() => Infinity);
  }

  private costOf(t: number): number {
    return this.model.problem.tests[t]!.cost;
  }

  net(benefit: Benefit): number {
    return benefit.worth - benefit.chosen.reduce((sum, t) => sum + this.costOf(t), 0);
  }

  /** Whether `chosen` may be made together. */
  private isAllowed(chosen: readonly number[]): boolean {
    const { atMostTests, sparePieces } = this.limits;
    if (atMostTests !== null && chosen.length > atMostTests) return false;
    const left = new Map(sparePieces);
    return chosen.every((t) => {
      const { cell, pieceCount } = this.model.problem.tests[t]!;
      const { garmentId } = this.model.problem.cells[cell]!;
      const spare = left.get(garmentId);
      if (spare === undefined) return true;
      left.set(garmentId, spare - pieceCount);
      return spare >= pieceCount;
    });
  }

  private candidates(benefit: Benefit): number[] {
    return this.model.problem.tests
      .map((_, t) => t)
      .filter((t) => !benefit.chosen.includes(t) && this.isAllowed([...benefit.chosen, t]));
  }

  /**
   * The candidate with the largest gain less cost, counted anew. In a large problem candidates are taken by what they gained
   * last, and none is counted whose last gain is below the best counted now: gains mostly fall as tests are added.
   */
  best(benefit: Benefit): { readonly t: number; readonly gain: number; readonly net: number } | null {
    const byLast = this.candidates(benefit).sort(
      (a, b) => this.lastGain[b]! - this.costOf(b) - (this.lastGain[a]! - this.costOf(a)),
    );
    const isSmall = this.model.problem.tests.length <= SMALL_PROBLEM;
    let best: { t: number; gain: number; net: number } | null = null;
    for (const t of byLast) {
      if (!isSmall && best !== null && this.lastGain[t]! - this.costOf(t) < best.net) break;
      const gain = gainOf(this.model, benefit, t);
      this.lastGain[t] = gain;
      const net = gain - this.costOf(t);
      if (best === null || net > best.net) best = { t, gain, net };
    }
    return best;
  }

  /** `benefit` with tests added while one, or two together, pay. */
  grow(benefit: Benefit): Benefit {
    let grown = benefit;
    for (;;) {
      const best = this.best(grown);
      if (best === null) return grown;
      if (best.net > 0) {
        grown = withTest(this.model, grown, best.t);
        this.onPick(this.model.problem.tests[best.t]!.id);
        continue;
      }
      const pair = this.bestPair(grown);
      if (pair === null) return grown;
      for (const t of pair.chosen.slice(-2)) this.onPick(this.model.problem.tests[t]!.id);
      grown = pair;
    }
  }

  private lookedAt(benefit: Benefit): number[] {
    const candidates = this.candidates(benefit);
    if (this.model.problem.tests.length <= SMALL_PROBLEM) return candidates;
    return candidates
      .sort((a, b) => this.lastGain[b]! - this.costOf(b) - (this.lastGain[a]! - this.costOf(a)))
      .slice(0, LOOKED_AT);
  }

  /** Two tests that pay together though neither does alone. */
  private bestPair(benefit: Benefit): Benefit | null {
    const candidates = this.lookedAt(benefit);
    let best: Benefit | null = null;
    candidates.forEach((one, i) => {
      const first = withTest(this.model, benefit, one);
      for (const other of candidates.slice(i + 1)) {
        if (!this.isAllowed([...first.chosen, other])) continue;
        const net = this.net(first) + gainOf(this.model, first, other) - this.costOf(other);
        if (net > this.net(best ?? benefit) + 1e-9) best = withTest(this.model, first, other);
      }
    });
    return best;
  }

  /** The best set that one test dropped, or exchanged for another, makes of `benefit`; null where none is better. */
  improved(benefit: Benefit): Benefit | null {
    if (this.model.problem.tests.length > SMALL_PROBLEM) return null;
    let best: Benefit | null = null;
    // Rounding must not make two orders of one set look like an improvement.
    const isBetter = (other: Benefit) => this.net(other) > this.net(best ?? benefit) + 1e-9;
    for (const out of benefit.chosen) {
      const without = benefitOf(
        this.model,
        benefit.chosen.filter((t) => t !== out),
      );
      if (isBetter(without)) best = without;
      for (const t of this.lookedAt(without)) {
        if (t === out) continue;
        const exchanged = withTest(this.model, without, t);
        if (isBetter(exchanged)) best = exchanged;
      }
    }
    return best;
  }

  /** `chosen` in the order in which each adds most. */
  inOrder(chosen: readonly number[]): number[] {
    const ordered: number[] = [];
    let benefit = this.model.nothing;
    while (ordered.length < chosen.length) {
      const left = chosen.filter((t) => !ordered.includes(t));
      const gains = left.map((t) => gainOf(this.model, benefit, t) - this.costOf(t));
      const next = left[gains.indexOf(Math.max(...gains))]!;
      ordered.push(next);
      benefit = withTest(this.model, benefit, next);
    }
    return ordered;
  }
}

function planOf(model: BenefitModel, search: PlanSearch, found: Benefit): TestPlan {
  const { problem, garments, avoidable } = model;
  let benefit = model.nothing;
  const tests = search.inOrder(found.chosen).map((t): PlannedTest => {
    const gains = gainsOf(model, benefit, t);
    benefit = withTest(model, benefit, t);
    const informs = [...gains]
      .filter(([, riskRemoved]) => riskRemoved > 0)
      .sort(([, one], [, other]) => other - one)
      .map(([g, riskRemoved]) => ({ garmentId: garments[g]!.garmentId, riskRemoved }));
    return {
      testId: problem.tests[t]!.id,
      cost: problem.tests[t]!.cost,
      riskRemoved: [...gains.values()].reduce((sum, gain) => sum + gain, 0),
      informs,
      shareSettled: avoidable > 0 ? Math.min(1, benefit.worth / avoidable) : 0,
    };
  });
  const next = search.best(benefit);
  return {
    tests,
    costNow: garments.reduce((sum, { costNow }) => sum + costNow, 0),
    avoidable,
    netWorth: search.net(benefit),
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
