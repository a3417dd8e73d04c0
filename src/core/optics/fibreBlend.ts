/**
 * The colour of cloth spun from fibres of different colours (heather), and the colour of one fibre back from it.
 * E. I. Stearns & F. Noechel, "Spectrophotometric prediction of color of wool blends", Am. Dyestuff Rep. 33 (1944)
 * 177-180 (cited from memory).
 */
import { HIGHEST_REFLECTANCE, requireFraction, requireReflectance } from "./brightener.ts";

/** M of Stearns & Noechel. Published (from memory): 0.15 in the original; 0.136 fits viscose melange knit better. */
export const STEARNS_NOECHEL_CONSTANT = 0.15;

/** Reflectance of an undyed fibre in every band. Invented default (model.md §3). */
export const UNDYED_FIBRE_REFLECTANCE = 0.8;

/** 0.01, the second constant of Stearns & Noechel's formula. Published (from memory). */
export const STEARNS_NOECHEL_FLOOR = 0.01;

/**
 * f(R) = (1-R) / (M (R - 0.01) + 0.01), which adds by mass in a blend (Stearns & Noechel 1944).
 * @param reflectance R, 0..1.5 (above 1, brightener, f is negative). @param constant M, above 0, at most 1.
 * @throws RangeError outside these ranges.
 */
export function blendValue(reflectance: number, constant: number = STEARNS_NOECHEL_CONSTANT): number {
  requireReflectance("fibre reflectance", reflectance);
  requireConstant(constant);
  return (1 - reflectance) / (constant * (reflectance - STEARNS_NOECHEL_FLOOR) + STEARNS_NOECHEL_FLOOR);
}

/**
 * R = (1 + f (0.01 M - 0.01)) / (1 + f M), the inverse of `blendValue`. Rounding (1e-12) at
 * the ends of the range is taken off, nothing more.
 * @param value f, from f(1.5) to f(0). @throws RangeError for an f outside what R = 0..1.5 gives, or a bad constant.
 */
export function reflectanceFromBlendValue(
  value: number,
  constant: number = STEARNS_NOECHEL_CONSTANT,
): number {
  requireConstant(constant);
  const reflectance = invert(value, constant);
  if (!(reflectance >= -ROUNDING && reflectance <= HIGHEST_REFLECTANCE + ROUNDING)) {
    throw new RangeError(
      `blend value must be that of a reflectance in 0..${HIGHEST_REFLECTANCE}; got ${value}`,
    );
  }
  return Math.min(Math.max(reflectance, 0), HIGHEST_REFLECTANCE);
}

/**
 * Reflectance of a blend of two fibres: f averaged by mass (Stearns & Noechel 1944).
 * @param firstReflectance 0..1.5. @param secondReflectance 0..1.5. @param firstMassFraction 0..1, the rest is the
 * second fibre. @throws RangeError outside these ranges.
 */
export function blendPairReflectance(
  firstReflectance: number,
  secondReflectance: number,
  firstMassFraction: number,
  constant: number = STEARNS_NOECHEL_CONSTANT,
): number {
  requireFraction("firstMassFraction", firstMassFraction);
  const first = blendValue(firstReflectance, constant);
  const second = blendValue(secondReflectance, constant);
  return reflectanceFromBlendValue(second + firstMassFraction * (first - second), constant);
}

/**
 * Reflectance of a blend of any number of fibres: f averaged by mass (Stearns & Noechel 1944).
 * @param reflectances one per fibre, 0..1.5. @param massFractions as many, sum 1 within 1e-6.
 * @throws RangeError for unequal lengths, a sum other than 1, or values out of range.
 */
export function blendReflectance(
  reflectances: ArrayLike<number>,
  massFractions: ArrayLike<number>,
  constant: number = STEARNS_NOECHEL_CONSTANT,
): number {
  if (reflectances.length !== massFractions.length) {
    throw new RangeError(
      `massFractions must be as many as reflectances (${reflectances.length}); got ${massFractions.length}`,
    );
  }
  let sum = 0;
  let value = 0;
  for (let i = 0; i < reflectances.length; i++) {
    const fraction = massFractions[i]!;
    requireFraction("massFraction", fraction);
    sum += fraction;
    value += fraction * blendValue(reflectances[i]!, constant);
  }
  if (!(Math.abs(sum - 1) <= 1e-6)) throw new RangeError(`massFractions must sum to 1; got ${sum}`);
  return reflectanceFromBlendValue(value / sum, constant);
}

/**
 * Reflectance of the other fibre of a two-fibre blend, or null where no fibre could give this blend (R <= 0, or
 * above 1.5): the caller then falls back to dye share (model.md §3).
 * @param blend reflectance of the blend, 0..1.5. @param knownReflectance of the known fibre, 0..1.5.
 * @param knownMassFraction of the known fibre, 0..1, below 1. @throws RangeError outside these ranges.
 */
export function unmixReflectance(
  blend: number,
  knownReflectance: number,
  knownMassFraction: number,
  constant: number = STEARNS_NOECHEL_CONSTANT,
): number | null {
  if (!(knownMassFraction >= 0 && knownMassFraction < 1)) {
    throw new RangeError(`knownMassFraction must be in 0..1, below 1; got ${knownMassFraction}`);
  }
  const known = blendValue(knownReflectance, constant);
  const value = (blendValue(blend, constant) - knownMassFraction * known) / (1 - knownMassFraction);
  const reflectance = invert(value, constant);
  return reflectance > 0 && reflectance <= HIGHEST_REFLECTANCE ? reflectance : null;
}

/** A reflectance this little outside its range is the rounding of a blend value at the end of its range. */
const ROUNDING = 1e-12;

function invert(value: number, constant: number): number {
  return (1 + value * (STEARNS_NOECHEL_FLOOR * constant - STEARNS_NOECHEL_FLOOR)) / (1 + value * constant);
}

function requireConstant(constant: number): void {
  if (!(constant > 0 && constant <= 1)) {
    throw new RangeError(`Stearns-Noechel constant must be in 0..1, above 0; got ${constant}`);
  }
}
