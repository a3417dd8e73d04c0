/**
 * How much diffuse light a smooth surface throws back from outside and from inside: the reason why Saunderson's k2 is
 * 0.6. J. W. T. Walsh 1926; S. Q. Duntley, "The optical properties of diffusing materials", JOSA 32 (1942) 61-70
 * (cited from memory; equal to the Fresnel integral, see the tests).
 */

/**
 * r_e, share of diffuse light reflected on entering a medium of refractive index n from air (Duntley 1942).
 * @param refractiveIndex n, 1.01..4: below, the closed form is a difference of huge terms and digits are lost.
 * @throws RangeError outside that range.
 */
export function externalDiffuseReflection(refractiveIndex: number): number {
  const n = refractiveIndex;
  if (!(n >= 1.01 && n <= 4)) throw new RangeError(`refractiveIndex must be in 1.01..4; got ${n}`);
  const n2 = n * n;
  const n4 = n2 * n2;
  return (
    1 / 2 +
    ((n - 1) * (3 * n + 1)) / (6 * (n + 1) ** 2) +
    ((n2 * (n2 - 1) ** 2) / (n2 + 1) ** 3) * Math.log((n - 1) / (n + 1)) -
    (2 * n * n2 * (n2 + 2 * n - 1)) / ((n2 + 1) * (n4 - 1)) +
    ((8 * n4 * (n4 + 1)) / ((n2 + 1) * (n4 - 1) ** 2)) * Math.log(n)
  );
}

/**
 * r_i = 1 - (1 - r_e) / n^2, share of diffuse light thrown back on leaving the medium to air; exact, by reciprocity
 * (Duntley 1942). At n = 1.5 it is 0.59635.
 * @param refractiveIndex n, 1.01..4. @throws RangeError outside that range.
 */
export function internalDiffuseReflection(refractiveIndex: number): number {
  return 1 - (1 - externalDiffuseReflection(refractiveIndex)) / (refractiveIndex * refractiveIndex);
}
