/** How many test prints may be made, and of which garments: by the time before the run and the spare pieces. */
import type { TestPlanProblem } from "./testBenefit.ts";

export interface TestPlanLimits {
  /** As many as the time until the deadline allows. */
  readonly atMostTests: number | null;
  /** Spare pieces by garment; a garment that is not named has enough. */
  readonly sparePieces: ReadonlyMap<string, number>;
}

export const NO_LIMITS: TestPlanLimits = { atMostTests: null, sparePieces: new Map() };

/** Whether the tests `chosen` (positions in the problem) may be made together. */
export function areAllowed(
  { tests, cells }: TestPlanProblem,
  { atMostTests, sparePieces }: TestPlanLimits,
  chosen: readonly number[],
): boolean {
  if (atMostTests !== null && chosen.length > atMostTests) return false;
  const left = new Map(sparePieces);
  return chosen.every((t) => {
    const { cell, pieceCount } = tests[t]!;
    const { garmentId } = cells[cell]!;
    const spare = left.get(garmentId);
    if (spare === undefined) return true;
    left.set(garmentId, spare - pieceCount);
    return spare >= pieceCount;
  });
}
