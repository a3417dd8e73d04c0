/** Which pots a batch goes into, and how much a pot may hold. */

/** A size of pot at hand. */
export interface PotSize {
  readonly id: string;
  readonly volumeCm3: number;
}

/** How full a pot is filled when mixed, and how full it may get by a correction. Invented defaults. */
export const FILLED_FRACTION = 0.7;
export const BRIM_FRACTION = 0.9;

/** Usual sizes, cm3: a litre, a US quart, five litres, a US gallon, five US gallons. Invented selection. */
export const USUAL_POT_SIZES: readonly PotSize[] = [
  { id: "quart", volumeCm3: 946 },
  { id: "litre", volumeCm3: 1000 },
  { id: "gallon", volumeCm3: 3785 },
  { id: "five-litres", volumeCm3: 5000 },
  { id: "five-gallons", volumeCm3: 18927 },
];

export interface Pots {
  readonly size: PotSize;
  readonly potCount: number;
  /** The batch in equal shares: every pot is weighed by the same sheet. */
  readonly gramsPerPot: number;
  /** The most that one of them may hold after a correction. */
  readonly potLimitGrams: number;
}

/** The most that a pot may hold, grams. @throws RangeError for a volume or density not above 0. */
export function potLimitGrams(size: PotSize, densityGramsPerCm3: number): number {
  if (!(size.volumeCm3 > 0)) throw new RangeError(`volumeCm3 must be above 0; got ${size.volumeCm3}`);
  if (!(densityGramsPerCm3 > 0)) {
    throw new RangeError(`densityGramsPerCm3 must be above 0; got ${densityGramsPerCm3}`);
  }
  return size.volumeCm3 * BRIM_FRACTION * densityGramsPerCm3;
}

/**
 * The smallest pot that takes the batch with room to stir and correct, or equal shares of it in the fewest of the
 * largest. @throws RangeError for no sizes, a negative batch, or as `potLimitGrams`.
 */
export function potsFor(batchGrams: number, sizes: readonly PotSize[], densityGramsPerCm3: number): Pots {
  if (!(batchGrams >= 0 && batchGrams < Infinity)) {
    throw new RangeError(`batchGrams must be >= 0 and finite; got ${batchGrams}`);
  }
  const bySize = sizes
    .map((size) => ({ size, limit: potLimitGrams(size, densityGramsPerCm3) }))
    .sort((one, other) => one.limit - other.limit);
  const largest = bySize.at(-1);
  if (largest === undefined) throw new RangeError("sizes must have a pot; got none");
  const filled = FILLED_FRACTION / BRIM_FRACTION;
  const { size, limit } = bySize.find((pot) => batchGrams <= pot.limit * filled) ?? largest;
  const potCount = Math.max(1, Math.ceil(batchGrams / (limit * filled)));
  return { size, potCount, gramsPerPot: batchGrams / potCount, potLimitGrams: limit };
}
