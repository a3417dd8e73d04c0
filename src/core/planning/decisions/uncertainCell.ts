/** One garment on one mix as a test plan sees it: in band exactly while a hidden driver lies between two values. */
import { normalCumulative, normalCumulativeFast, quantileOf } from "../../prediction/normalDistribution.ts";

/**
 * The driver is whatever decides the print and tests can settle (in ln wet-out, or in standard scores of the cell's own
 * spread: `scoredCell`). It is normal; cells that share unknowns have drivers that vary together.
 */
export interface UncertainCell {
  readonly garmentId: string;
  /** Mix, set-up or both, opaque. */
  readonly choiceId: string;
  readonly mean: number;
  readonly sd: number;
  /** Standard deviation of what no test print settles, in the driver's unit: print to print, the model's own miss. */
  readonly residualSd: number;
  /** The print is in band while driver plus residual lie within; either end may be infinite. */
  readonly lower: number;
  readonly upper: number;
  /**
   * Chance that such a print is in band, 0..1; 1 where left out. What is missing fails by something else than the driver
   * (its hue): a test of the driver is not taken to settle that.
   */
  readonly chanceWithin?: number;
  /** Money. */
  readonly lossIfOutOfBand: number;
  /** Money it costs besides: ink, its share of an opening. */
  readonly otherCost: number;
}

/** Expected money of choosing `cell`, by the mean of its driver, with the driver known to `variance`. */
export function expectedCellCost(cell: UncertainCell, variance: number): (mean: number) => number {
  const { lower, upper, otherCost, lossIfOutOfBand, residualSd, chanceWithin = 1 } = cell;
  const sd = Math.sqrt(Math.max(0, variance) + residualSd ** 2);
  const worst = otherCost + lossIfOutOfBand;
  const saved = lossIfOutOfBand * chanceWithin;
  if (sd === 0) return (mean) => worst - (mean >= lower && mean <= upper ? saved : 0);
  return (mean) =>
    worst - saved * (normalCumulativeFast((upper - mean) / sd) - normalCumulativeFast((lower - mean) / sd));
}

/** What a spread says of one cell, for `scoredCell`. */
export interface CellChances {
  /** Chance of landing below the band (darker than its dark end), and within; 0..1. */
  readonly chanceBelow: number;
  readonly chanceInBand: number;
  /** Chance of landing above the band (lighter), 0..1; all that is left where left out. Else the rest misses by its hue. */
  readonly chanceAbove?: number;
  /** Part of the cell's variance that test prints could settle, 0..1: all but print to print and the model's own. */
  readonly settleableShare: number;
}

/** A chance nearer to 0 or 1 than this is taken as never or always: the ends of a spread are not known that far. */
const SURE = 1e-9;

function scoreOf(chance: number): number {
  if (chance < SURE) return Number.NEGATIVE_INFINITY;
  return chance > 1 - SURE ? Infinity : quantileOf(normalCumulative, chance);
}

/**
 * A cell from its chances alone, whatever the shape of its spread: the driver is the standard score of where the print lands
 * in that spread (a Gaussian copula between cells), so that today's chance in band is kept exactly. A hue that may miss while
 * the lightness holds is a chance of its own, the same wherever in the band the print lands: were it counted as too light, a
 * test would seem to settle it.
 * @throws RangeError for a chance or share outside 0..1.
 */
export function scoredCell(
  cell: Pick<UncertainCell, "garmentId" | "choiceId" | "lossIfOutOfBand" | "otherCost">,
  { chanceBelow, chanceInBand, chanceAbove, settleableShare }: CellChances,
): UncertainCell {
  const above = chanceAbove ?? Math.max(0, 1 - chanceBelow - chanceInBand);
  for (const [name, value] of Object.entries({
    chanceBelow,
    chanceInBand,
    chanceAbove: above,
    settleableShare,
  })) {
    if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be in 0..1; got ${value}`);
  }
  // Two readings of one spread may differ by rounding: the band is never less likely by lightness alone.
  const byLightness = Math.max(chanceInBand, 1 - chanceBelow - above);
  return {
    ...cell,
    mean: 0,
    sd: Math.sqrt(settleableShare),
    residualSd: Math.sqrt(1 - settleableShare),
    lower: scoreOf(chanceBelow),
    upper: scoreOf(Math.min(1, chanceBelow + byLightness)),
    chanceWithin: byLightness > 0 ? chanceInBand / byLightness : 1,
  };
}
