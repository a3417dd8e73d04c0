/** A job's garments and choices, with what evidence knows of them, as the problem that `planTests` takes. */
import type { Viewing } from "../../colorimetry/viewing.ts";
import type { Posterior } from "../../evidence/posterior.ts";
import type { EvidencePrint } from "../../evidence/record.ts";
import { driverCovariances, type PrintDriver, printDriver, sharedFactor } from "./evidenceDrivers.ts";
import type { TestCandidate, TestPlanProblem } from "./testBenefit.ts";
import { scoredCell } from "./uncertainCell.ts";

/** One way of printing a garment. */
export interface PlanChoice {
  readonly choiceId: string;
  readonly print: EvidencePrint;
  /** Chances of today's spread: darker than the band's dark end, and within it; 0..1. */
  readonly chanceBelow: number;
  readonly chanceInBand: number;
  /** Chance of today's spread to be lighter than the band's light end; where left out, whatever misses and is not darker. */
  readonly chanceAbove?: number;
  /** Money. */
  readonly lossIfOutOfBand: number;
  readonly otherCost: number;
  /** Whether a test print with it may be proposed. */
  readonly testable: boolean;
}

export interface PlanGarment {
  readonly garmentId: string;
  readonly choices: readonly PlanChoice[];
  /** How a test on it is read, where that differs from the plan's terms: a heather's places differ. */
  readonly terms?: TestTerms;
}

/** How a test print is read and what it costs. */
export interface TestTerms {
  /** Money. */
  readonly cost: number;
  readonly pieceCount: number;
  readonly pairCount: number;
  /** Standard deviation of one pair difference in L*. */
  readonly pairSd: number;
}

/** Id of the test print of a garment with a choice. */
export const testIdOf = (garmentId: string, choiceId: string): string => `${garmentId}\u0001${choiceId}`;

/**
 * The problem in standard scores of each cell's own spread: its driver is where the print lands in it, linear in the unknowns
 * around today's mean; the covariance between cells is that of their delta-L* under `posterior`. A cell that nothing moves
 * is left as sure as it is.
 * @throws RangeError as `scoredCell` and `examine`.
 */
export function evidencePlanProblem(
  posterior: Posterior,
  garments: readonly PlanGarment[],
  viewing: Viewing,
  terms: TestTerms,
): TestPlanProblem {
  const shared = sharedFactor(posterior);
  const drivers: PrintDriver[] = [];
  const scales: number[] = [];
  const cells: TestPlanProblem["cells"][number][] = [];
  const tests: TestCandidate[] = [];
  for (const { garmentId, choices, terms: own } of garments) {
    const { cost, pieceCount, pairCount, pairSd } = own ?? terms;
    const readingVariance = pairSd ** 2 / pairCount;
    for (const choice of choices) {
      const { choiceId, print, chanceBelow, chanceInBand, chanceAbove, lossIfOutOfBand, otherCost } = choice;
      // Pieces of a run scatter around its mean, and each is accepted or refused by itself.
      const driver = printDriver(shared, print, viewing, 1);
      const variance = driver.settleableVariance + driver.residualVariance;
      const scale = variance > 0 ? 1 / Math.sqrt(variance) : 0;
      const settleableShare = Math.min(1, driver.settleableVariance * scale * scale);
      if (choice.testable && scale > 0) {
        const noise = printDriver(shared, print, viewing, pieceCount).residualVariance;
        tests.push({
          id: testIdOf(garmentId, choiceId),
          cell: cells.length,
          noiseSd: Math.sqrt(noise + readingVariance) * scale,
          cost,
          pieceCount,
        });
      }
      drivers.push(driver);
      scales.push(scale);
      cells.push(
        scoredCell(
          { garmentId, choiceId, lossIfOutOfBand, otherCost },
          {
            chanceBelow,
            chanceInBand,
            settleableShare,
            ...(chanceAbove === undefined ? {} : { chanceAbove }),
          },
        ),
      );
    }
  }
  const covariance = driverCovariances(
    drivers,
    tests.map(({ cell }) => cell),
  );
  tests.forEach(({ cell }, t) => {
    for (let c = 0; c < cells.length; c++) covariance[t * cells.length + c]! *= scales[cell]! * scales[c]!;
  });
  return { cells, tests, covariance };
}
