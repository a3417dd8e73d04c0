/**
 * What a closed, glossy surface does to the light that enters and leaves: J. L. Saunderson, "Calculation of the
 * color of pigmented plastics", JOSA 32 (1942) 727-736 (cited from memory; forward and inverse form as E. Allen 1980,
 * eq. 24 and 26, quoted in published code).
 */
import { requireFraction, requireReflectance } from "./brightener.ts";
import type { Geometry } from "./geometry.ts";

/** k1: share mirrored on the way in. Published: Fresnel at normal incidence, ((n-1)/(n+1))^2 = 0.04 at n = 1.5. */
export const EXTERNAL_REFLECTION = 0.04;

/** k2: share thrown back inside. Published: 0.4..0.6 in use; 0.596 by Fresnel at n = 1.5 (diffuseReflection.ts). */
export const INTERNAL_REFLECTION = 0.6;

/** Closed fraction of the surface of an unsmoothed clear. Invented default (model.md §4). */
export const CLOSED_FRACTION_AS_PRINTED = 0.02;

/** Closed fraction after a smoothing screen or heat press. Invented default (model.md §4). */
export const CLOSED_FRACTION_SMOOTHED = 0.2;

/**
 * Reflectance measured outside a surface over a body of internal reflectance R: Rm = (1-k1)(1-k2) R / (1 - k2 R),
 * plus k1 with the specular part included (Saunderson 1942). The entry loss (1-k1) stays either way. Departure: an R
 * above 1 (brightener) counts as 1 in the denominator, which would else run away at R = 1/k2.
 * @param reflectance internal R, 0..1.5. @param externalReflection k1, 0..1. @param internalReflection k2, 0..1,
 * below 1. @throws RangeError outside these ranges.
 */
export function measuredFromInternal(
  reflectance: number,
  specularIncluded: boolean,
  externalReflection: number = EXTERNAL_REFLECTION,
  internalReflection: number = INTERNAL_REFLECTION,
): number {
  requireReflectance("internal reflectance", reflectance);
  requireSurface(externalReflection, internalReflection);
  const returned = Math.min(reflectance, 1);
  const body =
    ((1 - externalReflection) * (1 - internalReflection) * reflectance) / (1 - internalReflection * returned);
  return specularIncluded ? externalReflection + body : body;
}

/**
 * Inverse of `measuredFromInternal`: R = (Rm - k1) / (1 - k1 - k2 + k2 Rm) with the specular part included, and the
 * same with Rm + k1 for Rm when it is not (Saunderson 1942).
 * @param measured Rm, at least k1 with the specular part included; its R must not exceed 1.5.
 * @throws RangeError for a reading no body of R in 0..1.5 gives under this surface.
 */
export function internalFromMeasured(
  measured: number,
  specularIncluded: boolean,
  externalReflection: number = EXTERNAL_REFLECTION,
  internalReflection: number = INTERNAL_REFLECTION,
): number {
  requireSurface(externalReflection, internalReflection);
  const body = specularIncluded ? measured - externalReflection : measured;
  const entered = 1 - externalReflection;
  const reflectance =
    body > entered ? body / entered : body / (entered * (1 - internalReflection) + internalReflection * body);
  requireReflectance(`internal reflectance under a measured ${measured}`, reflectance);
  return reflectance;
}

/**
 * Reflectance of a print whose surface is closed over the fraction phi and open (no interface) elsewhere:
 * (1 - phi) R + phi Rm(R), with k1 = 0.04, k2 = 0.6 (model.md §4; the blend by area is ours).
 * @param reflectance R of the print without a surface, 0..1.5. @param closedFraction phi, 0..1.
 * @throws RangeError outside these ranges.
 */
export function withClosedSurface(reflectance: number, closedFraction: number, geometry: Geometry): number {
  requireFraction("closedFraction", closedFraction);
  const closed = measuredFromInternal(reflectance, geometry === "specular-included");
  return reflectance + closedFraction * (closed - reflectance);
}

function requireSurface(externalReflection: number, internalReflection: number): void {
  if (!(externalReflection >= 0 && externalReflection < 1)) {
    throw new RangeError(`externalReflection must be in 0..1, below 1; got ${externalReflection}`);
  }
  if (!(internalReflection >= 0 && internalReflection < 1)) {
    throw new RangeError(`internalReflection must be in 0..1, below 1; got ${internalReflection}`);
  }
}
