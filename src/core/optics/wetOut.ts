/**
 * Why a clear base darkens dyed polyester: the filled cloth scatters less, its dye absorbs as before, so K/S rises by
 * one factor in every band (model.md §3). The law is this project's own, empirical; its numbers come from test prints.
 */
import { BRIGHTENER_LIMIT_REFLECTANCE, requireReflectance } from "./brightener.ts";
import { absorptionOverScattering, reflectanceFromAbsorptionOverScattering } from "./kubelkaMunk.ts";

export type FibreName = "cotton" | "viscose" | "polyester-spun" | "polyester-filament" | "nylon" | "elastane";

/**
 * gamma, ln(K/S) that the reference clear adds at the reference deposit. Invented defaults for every fibre: no
 * published figure was found, and a shop's own test prints replace them. Viscose stands for modal too.
 */
export const WET_OUT_GAIN: Readonly<Record<FibreName, number>> = {
  cotton: 0.02,
  viscose: 0.05,
  "polyester-spun": 0.5,
  "polyester-filament": 0.2,
  nylon: 0.25,
  elastane: 0.1,
};

/** X0, the deposit over which wet-out saturates, um. Invented default. */
export const DEPOSIT_REACH_UM = 20;

/** X_ref, the deposit at which a gain holds, um. Invented default. */
export const REFERENCE_DEPOSIT_UM = 20;

/** beta of the reference clear, by definition. */
export const REFERENCE_BASE_STRENGTH = 1;

const REACH_AT_REFERENCE = -Math.expm1(-REFERENCE_DEPOSIT_UM / DEPOSIT_REACH_UM);

/**
 * F(X) = (1 - exp(-X/X0)) / (1 - exp(-X_ref/X0)): how far a deposit wets out, 0 at none, 1 at 20 um, 1.582 at most.
 * Ours; that a partial fill scales smoothly rests on Textile Res. J. 2004, doi 10.1177/004051750407400315 (abstract
 * read): K/S of nylon and polyester cloth is linear in the liquid taken up to about 60 % of saturation.
 * @param depositUm X, um, >= 0. @throws RangeError for a negative or NaN deposit.
 */
export function depositReach(depositUm: number): number {
  if (!(depositUm >= 0)) throw new RangeError(`depositUm must be >= 0; got ${depositUm}`);
  return -Math.expm1(-depositUm / DEPOSIT_REACH_UM) / REACH_AT_REFERENCE;
}

/**
 * g = gamma beta F(X) exp(epsilon), ln(K/S) gained by one fibre (model.md §3).
 * @param gamma wet-out gain, >= 0. @param baseStrength beta of the mix, >= 0. @param depositUm X, um, >= 0.
 * @param lnSurprise epsilon, what no label tells; 0 expected. @throws RangeError outside these ranges.
 */
export function wetOutGain(gamma: number, baseStrength: number, depositUm: number, lnSurprise = 0): number {
  if (!(gamma >= 0 && gamma < Infinity)) {
    throw new RangeError(`gamma must be >= 0 and finite; got ${gamma}`);
  }
  if (!(baseStrength >= 0 && baseStrength < Infinity)) {
    throw new RangeError(`baseStrength must be >= 0 and finite; got ${baseStrength}`);
  }
  if (!Number.isFinite(lnSurprise)) throw new RangeError(`lnSurprise must be finite; got ${lnSurprise}`);
  return gamma * baseStrength * depositReach(depositUm) * Math.exp(lnSurprise);
}

/**
 * D = sum d_i exp(g_i): K/S of the wetted cloth over K/S of the bare cloth (model.md §3).
 * @param dyeShares d_i, each 0..1, sum 1 within 1e-6. @param gains g_i of the same fibres, finite.
 * @throws RangeError for unequal lengths, a sum other than 1, or values out of range.
 */
export function darkeningFactor(dyeShares: ArrayLike<number>, gains: ArrayLike<number>): number {
  if (dyeShares.length !== gains.length) {
    throw new RangeError(`gains must be as many as dyeShares (${dyeShares.length}); got ${gains.length}`);
  }
  let sum = 0;
  let factor = 0;
  for (let i = 0; i < dyeShares.length; i++) {
    const share = dyeShares[i]!;
    const gain = gains[i]!;
    if (!(share >= 0)) throw new RangeError(`dyeShare must be in 0..1; got ${share}`);
    if (!Number.isFinite(gain)) throw new RangeError(`gain must be finite; got ${gain}`);
    sum += share;
    factor += share * Math.exp(gain);
  }
  if (!(Math.abs(sum - 1) <= 1e-6)) throw new RangeError(`dyeShares must sum to 1; got ${sum}`);
  return factor;
}

/**
 * Reflectance of the cloth once wetted: K/S times D, back through Kubelka & Munk 1931 (model.md §3). A band above
 * 0.99 (brightener) has no absorption to deepen and comes back as it is; the caller adds the warning.
 * @param bareReflectance R of the bare cloth, above 0, at most 1.5. @param factor D, above 0 and finite.
 * @throws RangeError outside these ranges.
 */
export function wettedReflectance(bareReflectance: number, factor: number): number {
  if (!(factor > 0 && factor < Infinity)) {
    throw new RangeError(`darkening factor must be above 0 and finite; got ${factor}`);
  }
  if (bareReflectance > BRIGHTENER_LIMIT_REFLECTANCE) {
    requireReflectance("bareReflectance", bareReflectance);
    return bareReflectance;
  }
  return reflectanceFromAbsorptionOverScattering(factor * absorptionOverScattering(bareReflectance));
}
