/** What one more test would gain, guessed from what each garment's variance is worth: for problems too large to count each. */
import { type Benefit, type BenefitModel, costWith, forEachMoved } from "./testBenefit.ts";

/**
 * Parts of what is knowable of a garment at which its worth is counted; between them it is interpolated. Invented: finer near
 * 0, where most tests leave a garment that they only touch.
 */
const PARTS = [0, 1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 3 / 4, 1] as const;

/** By garment, money that settling a share of its variance saves, at the nodes of `PARTS`. */
export interface SettledWorths {
  readonly tables: readonly (readonly number[])[];
  /** Largest share that tests can settle, 0..1. */
  readonly knowableShares: readonly number[];
}

/**
 * The worth of settling parts of each garment's variance in the proportions in which all tests together would: exact where
 * the answers of a set of tests move a garment's options as those do, near where they do not.
 */
export function settledWorths({ problem, garments, precision }: BenefitModel): SettledWorths {
  const knowableShares = garments.map(({ cells, knowable }) =>
    cells.reduce((largest, c, o) => Math.max(largest, knowable[o * cells.length + o]! * precision[c]!), 0),
  );
  const tables = garments.map(({ cells, means, costNow, costIfKnown, knowable }) => {
    if (!(costNow > costIfKnown)) return [];
    return PARTS.map((part) =>
      part === 0
        ? 0
        : costNow -
          costWith(
            problem,
            cells,
            means,
            knowable.map((each) => part * each),
          ),
    );
  });
  return { tables, knowableShares };
}

function worthAt({ tables, knowableShares }: SettledWorths, g: number, share: number): number {
  const table = tables[g]!;
  const knowable = knowableShares[g]!;
  if (table.length === 0 || !(knowable > 0)) return 0;
  const part = Math.min(1, share / knowable);
  let i = 1;
  while (PARTS[i]! < part) i++;
  const within = (part - PARTS[i - 1]!) / (PARTS[i]! - PARTS[i - 1]!);
  return table[i - 1]! + within * (table[i]! - table[i - 1]!);
}

/**
 * A guess at `gainOf` (testBenefit.ts), at a small part of its cost: the tested garment's own gain is counted, the others'
 * are read off their worths.
 */
export function guessedGain(model: BenefitModel, worths: SettledWorths, benefit: Benefit, t: number): number {
  const { tests, cells } = model.problem;
  const own = cells[tests[t]!.cell]!.garmentId;
  let sum = 0;
  forEachMoved(model, benefit, t, (g, share, settledAfter) => {
    const { garmentId, cells: options, means } = model.garments[g]!;
    if (garmentId === own) {
      sum += benefit.costs[g]! - costWith(model.problem, options, means, settledAfter());
      return;
    }
    const settled = benefit.settledShares[g]!;
    sum += worthAt(worths, g, settled + share) - worthAt(worths, g, settled);
  });
  return sum;
}
