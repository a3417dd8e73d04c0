// Invented test-plan problems with unknowns that garments share: style, mill, lot, base. The full covariance is kept, so that
// a simulation can draw what the planner never sees.
import type { TestPlanProblem } from "../../../../src/core/planning/decisions/testBenefit.ts";
import type { UncertainCell } from "../../../../src/core/planning/decisions/uncertainCell.ts";
import { seededRandom } from "../../prediction/seededRandom.ts";

export interface SharedShop {
  readonly problem: TestPlanProblem;
  /** Loadings of each cell on independent standard unknowns, by name. */
  readonly loadings: readonly ReadonlyMap<string, number>[];
}

function covarianceOf(one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>): number {
  let sum = 0;
  for (const [name, loading] of one) sum += loading * (other.get(name) ?? 0);
  return sum;
}

/** A shop of `garments` garments with `choices` mixes each; one candidate test per garment, on its first choice. */
export function sharedShop(
  seed: number,
  { garments, choices, testCost }: { garments: number; choices: number; testCost: number },
): SharedShop {
  const random = seededRandom(seed);
  const cells: UncertainCell[] = [];
  const loadings: ReadonlyMap<string, number>[] = [];
  for (let g = 0; g < garments; g++) {
    const style = Math.floor(random.uniform() * (1 + garments / 4));
    const mill = Math.floor(random.uniform() * 3);
    const strength = 0.4 * random.normal();
    const lossIfOutOfBand = 20 + 2500 * random.uniform() ** 3;
    for (let c = 0; c < choices; c++) {
      // Ln of what the print does over what is wanted: each choice weaker than the one before.
      const own = new Map([
        [`style ${style}`, 0.18],
        [`mill ${style} ${mill}`, 0.3],
        [`lot ${g}`, 0.15],
        [`colourway ${g}`, 0.15],
        [`base ${c}`, 0.25],
        [`base ${c} on ${style}`, 0.15],
      ]);
      loadings.push(own);
      cells.push({
        garmentId: `garment ${g}`,
        choiceId: `choice ${c}`,
        mean: strength - 0.35 * c,
        sd: Math.sqrt(covarianceOf(own, own)),
        residualSd: 0.1,
        lower: -0.47,
        upper: 0.32,
        lossIfOutOfBand,
        otherCost: 2 * c,
      });
    }
  }
  const tests = Array.from({ length: garments }, (_, g) => ({
    id: `test ${g}`,
    cell: g * choices,
    noiseSd: 0.12,
    cost: testCost,
    pieceCount: 1,
  }));
  const covariance = Float64Array.from({ length: tests.length * cells.length }, (_, i) =>
    covarianceOf(loadings[tests[Math.floor(i / cells.length)]!.cell]!, loadings[i % cells.length]!),
  );
  return { problem: { cells, tests, covariance }, loadings };
}
