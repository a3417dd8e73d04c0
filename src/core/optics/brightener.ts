/**
 * The one rule for readings above a perfect white, which optical brighteners give: such light is emitted once and
 * is not reflected again, so wherever a formula sends light back and forth the reflectance counts as at most 1.
 */

/** A bare band above this is taken as brightened: no absorption is read from it. Invented default (model.md §3). */
export const BRIGHTENER_LIMIT_REFLECTANCE = 0.99;

/** The highest reflectance factor accepted anywhere. Invented default: well above brightened white cotton. */
export const HIGHEST_REFLECTANCE = 1.5;

/** An intermediate of 1.5 may have been rounded up on its way; it is not a mistake of the caller. */
const ROUNDING = 1e-9;

/** @throws RangeError unless 0 <= reflectance <= HIGHEST_REFLECTANCE, give or take its rounding (so also for NaN). */
export function requireReflectance(name: string, reflectance: number): void {
  if (!(reflectance >= 0 && reflectance <= HIGHEST_REFLECTANCE + ROUNDING)) {
    throw new RangeError(`${name} must be in 0..${HIGHEST_REFLECTANCE}; got ${reflectance}`);
  }
}

/** @throws RangeError unless 0 <= fraction <= 1 (so also for NaN). */
export function requireFraction(name: string, fraction: number): void {
  if (!(fraction >= 0 && fraction <= 1)) {
    throw new RangeError(`${name} must be in 0..1; got ${fraction}`);
  }
}
