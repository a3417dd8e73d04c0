/** Rates and quantiles over many shops with their standard errors, taking each shop as one draw: its garments share effects. */
import { drawsFor } from "./draws.ts";

export interface Figure {
  readonly value: number;
  readonly standardError: number;
  /** How many single values it is made of, and over how many shops. */
  readonly count: number;
  readonly shopCount: number;
}

const RESAMPLE_COUNT = 200;
const NOTHING: Figure = { value: Number.NaN, standardError: Number.NaN, count: 0, shopCount: 0 };

/**
 * Share of ones among all values; its standard error by the ratio estimator over clusters (Cochran, Sampling
 * Techniques, 1977, section 6; from memory): sqrt(m / (m - 1) sum (hits - rate n)^2) / sum n.
 * @param byShop 0 or 1 (or true and false), a list per shop; empty lists are left out.
 */
export function rateOver(byShop: readonly (readonly (0 | 1 | boolean)[])[]): Figure {
  const shops = byShop.filter((values) => values.length > 0);
  if (shops.length === 0) return NOTHING;
  const hitsOf = (values: readonly (0 | 1 | boolean)[]): number => values.filter(Boolean).length;
  const count = shops.reduce((sum, values) => sum + values.length, 0);
  const value = shops.reduce((sum, values) => sum + hitsOf(values), 0) / count;
  const squares = shops.reduce((sum, values) => sum + (hitsOf(values) - value * values.length) ** 2, 0);
  const m = shops.length;
  const standardError = m < 2 ? Number.NaN : Math.sqrt((m / (m - 1)) * squares) / count;
  return { value, standardError, count, shopCount: m };
}

/** The value below which `share` of `sorted` lie, between neighbours in proportion. */
function quantileOf(sorted: readonly number[], share: number): number {
  const position = share * (sorted.length - 1);
  const below = Math.floor(position);
  const low = sorted[below]!;
  const high = sorted[Math.min(below + 1, sorted.length - 1)]!;
  return low + (position - below) * (high - low);
}

/**
 * A quantile of all values; its standard error by drawing whole shops anew, 200 times (Efron's bootstrap, by cluster).
 * @param byShop a list per shop; empty lists are left out. @param seed of the resampling.
 */
export function quantileOver(byShop: readonly (readonly number[])[], share: number, seed: number): Figure {
  const shops = byShop.filter((values) => values.length > 0);
  if (shops.length === 0) return NOTHING;
  const quantile = (chosen: readonly (readonly number[])[]): number =>
    quantileOf(
      chosen.flat().sort((a, b) => a - b),
      share,
    );
  const draws = drawsFor(seed, "resampling");
  const resampled = Array.from({ length: RESAMPLE_COUNT }, () =>
    quantile(shops.map(() => draws.pick(shops))),
  );
  const mean = resampled.reduce((sum, value) => sum + value, 0) / RESAMPLE_COUNT;
  const squares = resampled.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    value: quantile(shops),
    standardError: shops.length < 2 ? Number.NaN : Math.sqrt(squares / (RESAMPLE_COUNT - 1)),
    count: shops.reduce((sum, values) => sum + values.length, 0),
    shopCount: shops.length,
  };
}

/** `value +- standard error (count over shops)`, each with `digits` decimals. */
export function figureText({ value, standardError, count, shopCount }: Figure, digits = 3): string {
  if (count === 0) return "no case";
  return `${value.toFixed(digits)} +- ${standardError.toFixed(digits)} (${count} over ${shopCount} shops)`;
}

/** `figureText` of a rate, in per cent. */
export function rateText(figure: Figure): string {
  return `${figureText({ ...figure, value: 100 * figure.value, standardError: 100 * figure.standardError }, 1)} %`;
}
