/** How many pairs of readings make a mean sure enough. */

/** 95 of 100 means lie within the wanted error. Published: standard normal quantile. */
export const Z_95 = 1.959963984540054;
/** ASTM E122: practically all means (997 of 1000) lie within it. Published: ASTM E122, "z = 3". */
export const Z_ASTM_E122 = 3;

/**
 * Number of pairs n = (z sd / E)^2, rounded up, at least 1 (ASTM E122 with its z stated; trade.md §2). sd is that of one
 * pair difference, never of single readings: cloth and drift that both readings share cancel in it.
 * @param sdPairDifference standard deviation of the pair difference in L*, >= 0. @param wantedError E, in L*, above 0.
 * @param z how many standard errors the wanted error is to be: 1.96 for 95 %, 3 in ASTM E122.
 * @throws RangeError outside these ranges.
 */
export function pairCountFor(sdPairDifference: number, wantedError: number, z: number): number {
  if (!(sdPairDifference >= 0))
    throw new RangeError(`sdPairDifference must be >= 0; got ${sdPairDifference}`);
  if (!(wantedError > 0)) throw new RangeError(`wantedError must be above 0; got ${wantedError}`);
  if (!(z > 0)) throw new RangeError(`z must be above 0; got ${z}`);
  // A product that is a whole number but for rounding is that number.
  return Math.max(1, Math.ceil(((z * sdPairDifference) / wantedError) ** 2 - 1e-9));
}
