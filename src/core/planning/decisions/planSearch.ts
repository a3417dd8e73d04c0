/** The search for a set of test prints: grown one by one and in pairs, and in a small problem bettered by exchange. */
import { guessedGain, type SettledWorths, settledWorths } from "./guessedGains.ts";
import { type Benefit, type BenefitModel, benefitOf, gainOf, withTest } from "./testBenefit.ts";
import { areAllowed, type TestPlanLimits } from "./testLimits.ts";

/** Up to this many candidates all are counted anew after each pick, and all are tried in exchange. Invented default. */
const SMALL_PROBLEM = 24;
/** Gains of a garment that are counted for the order of a list at most: about a second's work. Invented default. */
const MOST_COUNTINGS = 80_000;
/**
 * Candidates that are tried in pairs in a larger problem, best first, and those tried before it is taken that none pays.
 * Invented default.
 */
const LOOKED_AT = 8;

/** A test as it was taken: the garments' costs with it and all before it. */
export interface Step {
  readonly t: number;
  readonly costs: readonly number[];
  readonly worth: number;
}

const stepOf = ({ chosen, costs, worth }: Benefit): Step => ({ t: chosen.at(-1)!, costs, worth });

interface Pick {
  readonly t: number;
  readonly gain: number;
  readonly net: number;
}

/**
 * One search: the problem, its limits and the gains known last. In a small problem each candidate is counted anew after each
 * pick; in a large one its gain is guessed, and only the best guess is counted before it is taken.
 */
export class PlanSearch {
  /** Gains as they were counted or guessed last; those not counted yet count as endless. */
  private readonly lastGain: number[];
  /** For guesses in a large problem; null in a small one. */
  private readonly worths: SettledWorths | null;
  /** The tests as they were taken in a large problem. */
  private readonly taken: Step[] = [];

  constructor(
    private readonly model: BenefitModel,
    private readonly limits: TestPlanLimits,
    private readonly onPick: (testId: string) => void,
  ) {
    this.lastGain = model.problem.tests.map(() => Infinity);
    this.worths = model.problem.tests.length > SMALL_PROBLEM ? settledWorths(model) : null;
  }

  private costOf(t: number): number {
    return this.model.problem.tests[t]!.cost;
  }

  private net(benefit: Benefit): number {
    return benefit.worth - benefit.chosen.reduce((sum, t) => sum + this.costOf(t), 0);
  }

  private isAllowed(chosen: readonly number[]): boolean {
    return areAllowed(this.model.problem, this.limits, chosen);
  }

  private candidates(benefit: Benefit): number[] {
    return this.model.problem.tests
      .map((_, t) => t)
      .filter((t) => !benefit.chosen.includes(t) && this.isAllowed([...benefit.chosen, t]));
  }

  private gainNow(benefit: Benefit, t: number): number {
    return this.worths === null
      ? gainOf(this.model, benefit, t)
      : guessedGain(this.model, this.worths, benefit, t);
  }

  /**
   * The candidate with the largest gain less cost, but for those of `refused`. In a large problem candidates are taken by
   * what they gained last, and none is guessed anew whose last gain is below the best: gains mostly fall as tests are added.
   */
  private best(benefit: Benefit, refused: ReadonlySet<number> = new Set()): Pick | null {
    const lastNet = (t: number): number => this.lastGain[t]! - this.costOf(t);
    const byLast = this.candidates(benefit)
      .filter((t) => !refused.has(t))
      .sort((a, b) => lastNet(b) - lastNet(a));
    let best: Pick | null = null;
    for (const t of byLast) {
      if (this.worths !== null && best !== null && lastNet(t) < best.net) break;
      const gain = this.gainNow(benefit, t);
      this.lastGain[t] = gain;
      const net = gain - this.costOf(t);
      if (best === null || net > best.net) best = { t, gain, net };
    }
    return best;
  }

  /** The best candidate left, its gain counted as it is before a test is taken. */
  next(benefit: Benefit): Pick | null {
    const best = this.best(benefit);
    if (best === null || this.worths === null) return best;
    const gain = withTest(this.model, benefit, best.t).worth - benefit.worth;
    return { t: best.t, gain, net: gain - this.costOf(best.t) };
  }

  /** `benefit` with the test that pays most; null where none of those looked at does, whatever a guess says. */
  private withBest(benefit: Benefit): Benefit | null {
    const refused = new Set<number>();
    for (;;) {
      const best = this.best(benefit, refused);
      if (best === null || (this.worths === null && !(best.net > 0))) return null;
      const grown = withTest(this.model, benefit, best.t);
      if (this.worths === null || this.net(grown) > this.net(benefit)) return grown;
      refused.add(best.t);
      if (refused.size === LOOKED_AT) return null;
    }
  }

  private take(grown: Benefit): void {
    if (this.worths !== null) this.taken.push(stepOf(grown));
    this.onPick(this.model.problem.tests[grown.chosen.at(-1)!]!.id);
  }

  /** `benefit` with tests added while one, or two together, pay. */
  grow(benefit: Benefit): Benefit {
    let grown = benefit;
    for (;;) {
      const better = this.withBest(grown);
      if (better !== null) {
        grown = better;
        this.take(grown);
        continue;
      }
      const pair = this.bestPair(grown);
      if (pair === null) return grown;
      for (const t of pair) {
        grown = withTest(this.model, grown, t);
        this.take(grown);
      }
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
  private bestPair(benefit: Benefit): readonly [number, number] | null {
    const candidates = this.lookedAt(benefit);
    let best: readonly [number, number] | null = null;
    let bestNet = this.net(benefit) + 1e-9;
    candidates.forEach((one, i) => {
      const first = withTest(this.model, benefit, one);
      for (const other of candidates.slice(i + 1)) {
        if (!this.isAllowed([...first.chosen, other])) continue;
        const net = this.net(first) + gainOf(this.model, first, other) - this.costOf(other);
        if (net > bestNet) {
          best = [one, other];
          bestNet = net;
        }
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

  /** The chosen in the order in which each adds most, counted; as they were taken where that would be too many to count. */
  steps({ chosen }: Benefit): readonly Step[] {
    const countings = chosen.length ** 2 * this.model.garments.length;
    if (this.worths !== null && countings > MOST_COUNTINGS) return this.taken;
    const steps: Step[] = [];
    const left = new Set(chosen);
    let benefit = this.model.nothing;
    while (left.size > 0) {
      let best: { readonly t: number; readonly net: number } | null = null;
      for (const t of left) {
        const net = gainOf(this.model, benefit, t) - this.costOf(t);
        if (best === null || net > best.net) best = { t, net };
      }
      left.delete(best!.t);
      benefit = withTest(this.model, benefit, best!.t);
      steps.push(stepOf(benefit));
    }
    return steps;
  }
}
