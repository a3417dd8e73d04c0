/**
 * What tints and inks absorb and scatter, per unit mass fraction in the mix, and what a stated percentage is of.
 * A colourant's strength means nothing until it is said whether the percentage is of ready-made ink, concentrate or
 * dry pigment, so that definition is a required field (model.md §4).
 */
import {
  BAND_COUNT,
  constantSpectrum,
  type Spectrum,
  spectrumFrom,
  wavelengthNmAt,
} from "../spectrum/spectrum.ts";
import { absorptionOverScattering } from "./kubelkaMunk.ts";

export type StrengthDefinition = "ready-made-ink" | "pigment-concentrate" | "dry-pigment";

/**
 * Strength of a black or coloured tint relative to ready-made ink. From memory, no source: a concentrate about ten
 * times, dry pigment 20 to 50 times (30 taken). Not for white, whose ready-made ink is already largely pigment.
 */
export const RELATIVE_STRENGTH: Readonly<Record<StrengthDefinition, number>> = {
  "ready-made-ink": 1,
  "pigment-concentrate": 10,
  "dry-pigment": 30,
};

/** K and S in 1/um per unit mass fraction of the colourant, counted as `strengthDefinition` says. */
export interface Colourant {
  readonly strengthDefinition: StrengthDefinition;
  readonly absorptionPerUm: Spectrum;
  readonly scatteringPerUm: Spectrum;
}

/** K of ready-made black ink at 560 nm, 1/um. Invented default, of the order that carbon's optical depth gives. */
export const BLACK_ABSORPTION_PER_UM = 1.1;

/** Wavelength at which the strength of black is stated, nm. */
export const BLACK_STRENGTH_NM = 560;

/** Black's own scattering as a share of its absorption. Invented default. */
export const BLACK_SCATTERING_FRACTION = 0.025;

/** S of white ink, 1/um. Invented default: what about 29 % TiO2 would give at 0.55 m2/g and 1.15 g/cm3. */
export const WHITE_SCATTERING_PER_UM = 0.18;

/** K of white ink, 1/um. Invented default: an opaque layer of it reflects 0.936. */
export const WHITE_ABSORPTION_PER_UM = 0.0004;

/**
 * Ready-made black ink: K = 1.1 (560/lambda) 1/um, S = 0.025 K. The slope is published: light absorption of carbon
 * goes about as 1/lambda (Bond & Bergstrom, Aerosol Sci. Tech. 40 (2006) 27; exponent 1.03 in You et al., Environ. Sci.
 * Technol. 2016).
 */
export function blackInk(): Colourant {
  const absorptionAt = (nm: number) => (BLACK_ABSORPTION_PER_UM * BLACK_STRENGTH_NM) / nm;
  return {
    strengthDefinition: "ready-made-ink",
    absorptionPerUm: spectrumFrom(absorptionAt),
    scatteringPerUm: spectrumFrom((nm) => BLACK_SCATTERING_FRACTION * absorptionAt(nm)),
  };
}

/** Ready-made white ink: S = 0.18 1/um, K = 0.0004 1/um, both alike in every band (invented defaults). */
export function whiteInk(): Colourant {
  return {
    strengthDefinition: "ready-made-ink",
    absorptionPerUm: constantSpectrum(WHITE_ABSORPTION_PER_UM),
    scatteringPerUm: constantSpectrum(WHITE_SCATTERING_PER_UM),
  };
}

/**
 * A coloured tint: K shaped like K/S of its own masstone (Kubelka & Munk 1931), scaled so that the band where the
 * masstone absorbs most (`strengthNm`, the first of equals) has `strengthPerUm`. The peak, not a mean, because it is
 * what the tint does to the band it works in. S = 0, a transparent pigment (invented default).
 * @param masstone reflectance of the tint itself, opaque; BAND_COUNT bands in (0, 1].
 * @param strengthPerUm K per unit mass fraction at the peak, 1/um, > 0 and finite.
 * @param strengthDefinition what the mass fraction is a fraction of.
 * @throws RangeError for a band out of range, a masstone that absorbs nowhere, or a strength out of range.
 */
export function tintFromMasstone(
  masstone: Spectrum,
  strengthPerUm: number,
  strengthDefinition: StrengthDefinition,
): Colourant & { readonly strengthNm: number } {
  if (!(strengthPerUm > 0 && strengthPerUm < Infinity)) {
    throw new RangeError(`strengthPerUm must be above 0 and finite; got ${strengthPerUm}`);
  }
  if (masstone.length !== BAND_COUNT) {
    throw new RangeError(`masstone must have ${BAND_COUNT} bands; got ${masstone.length}`);
  }
  const shape = masstone.map(absorptionOverScattering);
  let peak = 0;
  for (let i = 1; i < BAND_COUNT; i++) if (shape[i]! > shape[peak]!) peak = i;
  const highest = shape[peak]!;
  if (highest === 0) throw new RangeError("masstone must absorb in some band; got a perfect white");
  return {
    strengthDefinition,
    strengthNm: wavelengthNmAt(peak),
    absorptionPerUm: shape.map((value) => (strengthPerUm * value) / highest),
    scatteringPerUm: constantSpectrum(0),
  };
}

/**
 * The same tint counted under another strength definition: K and S times the ratio of RELATIVE_STRENGTH. For tints
 * whose strength under the new definition is not known better. @throws nothing.
 */
export function colourantCountedAs(colourant: Colourant, strengthDefinition: StrengthDefinition): Colourant {
  const ratio = RELATIVE_STRENGTH[strengthDefinition] / RELATIVE_STRENGTH[colourant.strengthDefinition];
  return {
    strengthDefinition,
    absorptionPerUm: colourant.absorptionPerUm.map((value) => ratio * value),
    scatteringPerUm: colourant.scatteringPerUm.map((value) => ratio * value),
  };
}
