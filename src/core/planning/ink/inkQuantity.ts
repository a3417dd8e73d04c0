/** How much ink one print takes: printed area times film thickness times density. */
import {
  depositUm,
  depositUmFromGsm,
  type Mesh,
  MIX_TRANSFER_FRACTION,
  type Pull,
} from "../../screen/mesh.ts";

const SQUARE_MM_PER_SQUARE_M = 1e6;

/** The size of a print and how much of it carries ink. */
export interface PrintedSize {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Part of the rectangle that the artwork covers, 0..1. */
  readonly coverFraction: number;
  /** Halftone area within the artwork, 0..1; 1 is a solid. */
  readonly halftoneFraction: number;
}

/** Film thickness for which ink is mixed, um, and whether it rests on a weighing. */
export interface InkToMix {
  readonly inkToMixUm: number;
  readonly weighed: boolean;
}

/**
 * Area that carries ink, m2: width x height x cover x halftone.
 * @throws RangeError for a length not above 0 or a fraction outside 0..1.
 */
export function printedAreaM2({ widthMm, heightMm, coverFraction, halftoneFraction }: PrintedSize): number {
  requireAboveZero("widthMm", widthMm);
  requireAboveZero("heightMm", heightMm);
  requireFraction("coverFraction", coverFraction);
  requireFraction("halftoneFraction", halftoneFraction);
  return ((widthMm * heightMm) / SQUARE_MM_PER_SQUARE_M) * coverFraction * halftoneFraction;
}

/**
 * The film that ink is mixed for: the weighed one where there is one; otherwise all that the mesh holds (transfer 1.0)
 * times strokes and blade, so that a batch does not run short before the set-up was weighed (model.md §8; ours).
 * @param weighed mean weight on the inked area, g/m2, and the density of the ink that was weighed.
 * @throws RangeError as `depositUm` and `depositUmFromGsm`.
 */
export function inkToMix(
  mesh: Mesh,
  pull: Omit<Pull, "transferFraction">,
  weighed: { readonly meanGsm: number; readonly densityGramsPerCm3: number } | null,
): InkToMix {
  if (weighed !== null) {
    return { inkToMixUm: depositUmFromGsm(weighed.meanGsm, weighed.densityGramsPerCm3), weighed: true };
  }
  const inkToMixUm = depositUm(mesh, { ...pull, transferFraction: MIX_TRANSFER_FRACTION });
  return { inkToMixUm, weighed: false };
}

/**
 * Grams of ink in one print: area (m2) x film (um = cm3/m2) x density (g/cm3). A set-up weighed with an ink of the same
 * density gives the weighed g/m2 back; with another density the mesh meters the same volume.
 * @throws RangeError for a negative area or film, or a density not above 0.
 */
export function gramsPerPrint(areaM2: number, filmUm: number, densityGramsPerCm3: number): number {
  requireNotNegative("areaM2", areaM2);
  requireNotNegative("filmUm", filmUm);
  requireAboveZero("densityGramsPerCm3", densityGramsPerCm3);
  return areaM2 * filmUm * densityGramsPerCm3;
}

/**
 * Density of a mix, g/cm3: 1 / sum (mass fraction / density), volumes taken to add up (ours; plastisols mix without
 * shrinking as far as anyone weighs). @throws RangeError for a density not above 0 or no mass at all.
 */
export function mixDensityGramsPerCm3(
  parts: readonly { readonly massFraction: number; readonly densityGramsPerCm3: number }[],
): number {
  let mass = 0;
  let volume = 0;
  for (const { massFraction, densityGramsPerCm3 } of parts) {
    requireFraction("massFraction", massFraction);
    requireAboveZero("densityGramsPerCm3", densityGramsPerCm3);
    mass += massFraction;
    volume += massFraction / densityGramsPerCm3;
  }
  if (mass === 0) throw new RangeError("a mix must hold something; got a mass fraction of 0");
  return mass / volume;
}

function requireAboveZero(name: string, value: number): void {
  if (!(value > 0 && value < Infinity))
    throw new RangeError(`${name} must be above 0 and finite; got ${value}`);
}

function requireNotNegative(name: string, value: number): void {
  if (!(value >= 0 && value < Infinity))
    throw new RangeError(`${name} must be >= 0 and finite; got ${value}`);
}

function requireFraction(name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${name} must be in 0..1; got ${value}`);
}
