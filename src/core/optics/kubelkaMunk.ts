/**
 * The relation between the reflectance of an opaque layer and its absorption over scattering, both ways.
 * P. Kubelka & F. Munk, "Ein Beitrag zur Optik der Farbanstriche", Z. tech. Phys. 12 (1931) 593-601 (cited from
 * memory; the equations are in every textbook).
 */

/**
 * Below this reflectance Kubelka-Munk on textiles is known to be weak; callers widen their spread and warn.
 * Published: Allen et al., J. Appl. Polym. Sci. (1973), "breaks down completely" below 0.05 (abstract read).
 */
export const DARK_LIMIT_REFLECTANCE = 0.05;

/**
 * K/S = (1-R)^2 / (2R) of an opaque layer of reflectance R (Kubelka & Munk 1931); dimensionless.
 * @param reflectance R, in (0, 1].
 * @throws RangeError for R <= 0, R > 1 or NaN: no opaque Kubelka-Munk layer has such a reflectance.
 */
export function absorptionOverScattering(reflectance: number): number {
  if (!(reflectance > 0 && reflectance <= 1)) {
    throw new RangeError(`reflectance must be in 0..1, above 0; got ${reflectance}`);
  }
  const absorptance = 1 - reflectance;
  return (absorptance * absorptance) / (2 * reflectance);
}

/**
 * R = 1 + q - sqrt(q^2 + 2q), the reflectance of an opaque layer of K/S = q (Kubelka & Munk 1931), written as
 * 1 / (1 + q + sqrt(q^2 + 2q)): the same number, but the textbook form subtracts two nearly equal ones once q is
 * large (at q = 1e8 no digit is left) and this one keeps all digits.
 * @param ks q = K/S, >= 0; infinite gives 0.
 * @throws RangeError for a negative or NaN K/S.
 */
export function reflectanceFromAbsorptionOverScattering(ks: number): number {
  if (!(ks >= 0)) throw new RangeError(`absorption over scattering must be >= 0; got ${ks}`);
  return 1 / (1 + ks + Math.sqrt(ks * (ks + 2)));
}
