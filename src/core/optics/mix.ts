/**
 * What a mix of inks absorbs, scatters and how strongly its base wets out, from its components.
 * D. R. Duncan, "The colour of pigment mixtures", Proc. Phys. Soc. 52 (1940) 390-401 (cited from memory).
 */
import { BAND_COUNT, type Spectrum } from "../spectrum/spectrum.ts";

/** One component: K and S in 1/um per unit mass fraction, and its mass fraction in the mix, 0..1. */
export interface MixComponent {
  readonly absorptionPerUm: Spectrum;
  readonly scatteringPerUm: Spectrum;
  readonly massFraction: number;
}

/** K and S of a film, 1/um in every band. */
export interface AbsorptionScattering {
  readonly absorptionPerUm: Spectrum;
  readonly scatteringPerUm: Spectrum;
}

/** One base or additive (a ready-made ink counts as its own base): mass fraction c and strength beta. */
export interface BasePart {
  readonly massFraction: number;
  readonly baseStrength: number;
}

/** How far the mass fractions of a mix may miss 1: the rounding of a typed percentage, no more. */
export const MASS_FRACTION_TOLERANCE = 1e-6;

/**
 * K = sum c_j K_j, S = sum c_j S_j (Duncan 1940). Duncan counts by volume; by mass is exact only for components of
 * one density, which inks of one plastisol family nearly are.
 * @throws RangeError for a mass fraction outside 0..1, a sum other than 1, or a spectrum of another length.
 */
export function mixAbsorptionScattering(components: readonly MixComponent[]): AbsorptionScattering {
  const absorptionPerUm = new Float64Array(BAND_COUNT);
  const scatteringPerUm = new Float64Array(BAND_COUNT);
  let sum = 0;
  for (const component of components) {
    const { massFraction } = component;
    requireMassFraction(massFraction);
    requireBands("absorptionPerUm", component.absorptionPerUm);
    requireBands("scatteringPerUm", component.scatteringPerUm);
    sum += massFraction;
    for (let i = 0; i < BAND_COUNT; i++) {
      absorptionPerUm[i]! += massFraction * component.absorptionPerUm[i]!;
      scatteringPerUm[i]! += massFraction * component.scatteringPerUm[i]!;
    }
  }
  if (!(Math.abs(sum - 1) <= MASS_FRACTION_TOLERANCE)) {
    throw new RangeError(`mass fractions of a mix must sum to 1; got ${sum}`);
  }
  return { absorptionPerUm, scatteringPerUm };
}

/**
 * beta = sum c beta / sum c over the bases and additives of a mix (model.md, symbols; ours).
 * @throws RangeError for a mass fraction outside 0..1, a negative strength, or no base at all.
 */
export function mixBaseStrength(parts: readonly BasePart[]): number {
  let mass = 0;
  let strength = 0;
  for (const part of parts) {
    requireMassFraction(part.massFraction);
    if (!(part.baseStrength >= 0 && part.baseStrength < Infinity)) {
      throw new RangeError(`baseStrength must be >= 0 and finite; got ${part.baseStrength}`);
    }
    mass += part.massFraction;
    strength += part.massFraction * part.baseStrength;
  }
  if (mass === 0) throw new RangeError("a mix must hold some base; got a mass fraction of 0");
  return strength / mass;
}

function requireMassFraction(massFraction: number): void {
  if (!(massFraction >= 0 && massFraction <= 1)) {
    throw new RangeError(`massFraction must be in 0..1; got ${massFraction}`);
  }
}

function requireBands(name: string, spectrum: Spectrum): void {
  if (spectrum.length !== BAND_COUNT) {
    throw new RangeError(`${name} must have ${BAND_COUNT} bands; got ${spectrum.length}`);
  }
}
