/** How far the mean of a few pair readings may be off from what the run prints: the u of the decision at the press. */

/** What was read: change of L* of each pair, bare and print on one piece, in CIELAB units. */
export interface PairReadings {
  readonly deltaL: readonly number[];
  /** Pieces that the pairs were spread over. */
  readonly pieceCount: number;
}

export interface ReadingNoise {
  /** Usual standard deviation of one pair difference in L*: instrument and cloth. */
  readonly pairSd: number;
  /** Standard deviation from piece to piece in delta-L*. */
  readonly pieceSd: number;
  /** Of what is compared with: the approved print's own mean; 0 where the band is a figure. */
  readonly referenceSd: number;
}

export interface MeanReading {
  readonly mean: number;
  readonly pairCount: number;
  readonly pieceCount: number;
  /** Standard deviation of one pair, drawn from the usual one towards what these pairs show. */
  readonly pairSd: number;
  /** The part of the standard uncertainty that further pairs and pieces shrink. */
  readonly randomUncertainty: number;
  /** The part that they do not. */
  readonly referenceUncertainty: number;
  readonly standardUncertainty: number;
}

/** What is usual of a pair's standard deviation counts as this many pairs. Invented default, as in core/evidence. */
const USUAL_DEGREES_OF_FREEDOM = 4;

function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
}

/**
 * Mean of the pairs and its standard uncertainty: u^2 = s^2/n + s_piece^2/m + u_reference^2. s is drawn from the usual
 * standard deviation towards the pairs' own as a scaled inverse chi-square prior draws it (Gelman et al., Bayesian Data
 * Analysis, 3rd ed., 2.6, from memory). The Student-t that this leaves of the mean is taken as a normal of its variance,
 * s^2 nu/(nu - 2) with nu = 4 + n - 1: few pairs count as less sure than their scatter says (JCGM 101:2008, 6.4.9, from
 * memory; the departure from the t is below 0.01 in probability from 8 pairs on).
 * @throws RangeError without a reading, for a reading that is not a number, fewer pieces than 1 or more than pairs, or a
 *   negative standard deviation.
 */
export function meanReading(
  { deltaL, pieceCount }: PairReadings,
  { pairSd, pieceSd, referenceSd }: ReadingNoise,
): MeanReading {
  const pairCount = deltaL.length;
  if (pairCount === 0) throw new RangeError("deltaL must hold at least one reading");
  const wrong = deltaL.find((value) => !Number.isFinite(value));
  if (wrong !== undefined) throw new RangeError(`deltaL must be finite; got ${wrong}`);
  if (!(Number.isInteger(pieceCount) && pieceCount >= 1 && pieceCount <= pairCount)) {
    throw new RangeError(`pieceCount must be an integer in 1..${pairCount}; got ${pieceCount}`);
  }
  requireNotNegative("pairSd", pairSd);
  requireNotNegative("pieceSd", pieceSd);
  requireNotNegative("referenceSd", referenceSd);
  const mean = deltaL.reduce((sum, value) => sum + value, 0) / pairCount;
  const squares = deltaL.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const freedom = USUAL_DEGREES_OF_FREEDOM + pairCount - 1;
  const variance = (USUAL_DEGREES_OF_FREEDOM * pairSd ** 2 + squares) / freedom;
  const widened = (variance * freedom) / (freedom - 2);
  const randomUncertainty = Math.sqrt(widened / pairCount + pieceSd ** 2 / pieceCount);
  return {
    mean,
    pairCount,
    pieceCount,
    pairSd: Math.sqrt(variance),
    randomUncertainty,
    referenceUncertainty: referenceSd,
    standardUncertainty: Math.hypot(randomUncertainty, referenceSd),
  };
}
