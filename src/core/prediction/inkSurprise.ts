/** The part of a surprise that an ink's films depend on, and whether two are the same: what was made of one serves the other. */
import type { Surprise } from "./unknowns.ts";

export type InkSurprise = Required<
  Pick<Surprise, "lnPartStrength" | "lnPartScattering" | "closedFractionShift" | "lnDeposit">
>;

const isSame = (one: readonly number[], other: readonly number[]): boolean =>
  one.every((value, i) => value === other[i]);

/** Whether `one` and `other`, of one mix, lay the same film. */
export function isSameInkSurprise(one: InkSurprise, other: InkSurprise): boolean {
  return (
    one.lnDeposit === other.lnDeposit &&
    isSame(one.lnPartStrength, other.lnPartStrength) &&
    isSame(one.lnPartScattering, other.lnPartScattering) &&
    isSame(one.closedFractionShift, other.closedFractionShift)
  );
}
