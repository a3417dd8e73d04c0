// What a set of tests leads to, by drawing: prints and answers from the unknowns themselves, choices by the normal's conditional.
import { expectedCellCost } from "../../../../src/core/planning/decisions/uncertainCell.ts";
import { seededRandom } from "../../prediction/seededRandom.ts";
import type { SharedShop } from "./sharedShops.ts";

/** Solves A x = b by Gauss's elimination with row exchange: not the code under test. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    const pivot = rows
      .slice(k)
      .reduce((at, row, i) => (Math.abs(row[k]!) > Math.abs(rows[at]![k]!) ? k + i : at), k);
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < n; i++) {
      const factor = rows[i]![k]! / rows[k]![k]!;
      for (let j = k; j <= n; j++) rows[i]![j]! -= factor * rows[k]![j]!;
    }
  }
  const x = Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    const known = x.reduce((sum, value, j) => sum + (j > i ? rows[i]![j]! * value : 0), 0);
    x[i] = (rows[i]![n]! - known) / rows[i]![i]!;
  }
  return x;
}

const inner = (one: ReadonlyMap<string, number>, other: ReadonlyMap<string, number>) =>
  [...one].reduce((sum, [name, loading]) => sum + loading * (other.get(name) ?? 0), 0);

/**
 * Mean cost of all garments where `tests` are made, each garment then gets the choice that is best by their answers, and the
 * print comes out as drawn.
 */
export function simulatedCost(
  { problem, loadings }: SharedShop,
  tests: readonly number[],
  draws: number,
  seed: number,
): { mean: number; standardError: number } {
  const random = seededRandom(seed);
  const made = tests.map((t) => problem.tests[t]!);
  const answers = made.map((one, i) =>
    made.map(
      (other, j) => inner(loadings[one.cell]!, loadings[other.cell]!) + (i === j ? one.noiseSd ** 2 : 0),
    ),
  );
  // Weights of the answers in each cell's mean after them, and what is left of its variance.
  const cells = problem.cells.map((cell, c) => {
    const shared = made.map((test) => inner(loadings[c]!, loadings[test.cell]!));
    const weights = solve(answers, shared);
    const taken = weights.reduce((sum, weight, i) => sum + weight * shared[i]!, 0);
    return { cell, weights, costAt: expectedCellCost(cell, cell.sd ** 2 - taken) };
  });
  const names = [...new Set(loadings.flatMap((each) => [...each.keys()]))];
  const indexed = loadings.map((own) =>
    [...own].map(([name, loading]) => [names.indexOf(name), loading] as const),
  );
  const byGarment = [...new Set(problem.cells.map(({ garmentId }) => garmentId))].map((id) =>
    problem.cells.flatMap(({ garmentId }, c) => (garmentId === id ? [c] : [])),
  );
  let sum = 0;
  let squares = 0;
  for (let draw = 0; draw < draws; draw++) {
    const drawn = names.map(() => random.normal());
    const off = indexed.map((own) => own.reduce((total, [i, loading]) => total + loading * drawn[i]!, 0));
    const said = made.map((test) => off[test.cell]! + test.noiseSd * random.normal());
    let cost = 0;
    for (const own of byGarment) {
      let best = own[0]!;
      let least = Infinity;
      for (const c of own) {
        const { cell, weights, costAt } = cells[c]!;
        const expected = costAt(
          cell.mean + weights.reduce((total, weight, i) => total + weight * said[i]!, 0),
        );
        if (expected < least) {
          least = expected;
          best = c;
        }
      }
      const { cell } = cells[best]!;
      const value = cell.mean + off[best]! + cell.residualSd * random.normal();
      cost += cell.otherCost + (value >= cell.lower && value <= cell.upper ? 0 : cell.lossIfOutOfBand);
    }
    sum += cost;
    squares += cost * cost;
  }
  const mean = sum / draws;
  return { mean, standardError: Math.sqrt((squares / draws - mean * mean) / draws) };
}
