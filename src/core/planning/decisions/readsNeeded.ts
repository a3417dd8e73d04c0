/** How many pair readings a test print needs for a wanted precision. */

/** Of a normal, two-sided 95 %. */
const COVERAGE_95 = 1.959963984540054;

/**
 * Pairs until the mean is within `wantedHalfWidth` with 95 %: n = (1.96 sd/E)^2 rounded up, at least 1 (trade.md §2; the
 * principle is that of ASTM E1345). Both in delta-L*.
 * @throws RangeError for a negative sd or a half-width that is not positive.
 */
export function readsNeeded(pairSd: number, wantedHalfWidth: number): number {
  if (!(pairSd >= 0 && pairSd < Infinity)) throw new RangeError(`pairSd must be >= 0; got ${pairSd}`);
  if (!(wantedHalfWidth > 0)) throw new RangeError(`wantedHalfWidth must be > 0; got ${wantedHalfWidth}`);
  return Math.max(1, Math.ceil(((COVERAGE_95 * pairSd) / wantedHalfWidth) ** 2 - 1e-9));
}
