/**
 * The cured ink film on the wetted cloth: what one layer lets through and throws back, and what is seen of both.
 * P. Kubelka, "New contributions to the optics of intensely light-scattering materials", part I, JOSA 38 (1948)
 * 448-457, and part II (inhomogeneous layers), JOSA 44 (1954) 330-335 (cited from memory).
 */
import { requireReflectance } from "./brightener.ts";

/** A homogeneous layer without a substrate: diffuse transmittance T and own reflectance R0 (over black), 0..1. */
export interface FilmLayer {
  readonly transmittance: number;
  readonly reflectance: number;
}

/**
 * Below this (m X)^2 both hyperbolic functions are summed as series in (m X)^2, which needs no m, no exp and no 0/0.
 * The first terms dropped, z^8/16! and z^7/15!, are under 1e-16 at the limit.
 */
const SERIES_LIMIT = 0.25;

/** cosh(sqrt(z)), 0 <= z <= SERIES_LIMIT. */
function coshSeries(z: number): number {
  const tail = C5 + z * (C6 + z * C7);
  return 1 + z * (0.5 + z * (C2 + z * (C3 + z * (C4 + z * tail))));
}

/** sinh(sqrt(z)) / sqrt(z), 0 <= z <= SERIES_LIMIT. */
function sinhSeries(z: number): number {
  return 1 + z * (S1 + z * (S2 + z * (S3 + z * (S4 + z * (S5 + z * S6)))));
}

/** 1/(2k)! and 1/(2k+1)!, as factors because a division costs four multiplications. */
const [C2, C3, C4, C5, C6, C7] = [1 / 24, 1 / 720, 1 / 40320, 1 / 3628800, 1 / 479001600, 1 / 87178291200];
const [S1, S2, S3, S4, S5, S6] = [1 / 6, 1 / 120, 1 / 5040, 1 / 362880, 1 / 39916800, 1 / 6227020800];

function requireFilm(absorptionPerUm: number, scatteringPerUm: number, depositUm: number): void {
  if (!(absorptionPerUm >= 0 && absorptionPerUm < Infinity)) {
    throw new RangeError(`absorptionPerUm must be >= 0 and finite; got ${absorptionPerUm}`);
  }
  if (!(scatteringPerUm >= 0 && scatteringPerUm < Infinity)) {
    throw new RangeError(`scatteringPerUm must be >= 0 and finite; got ${scatteringPerUm}`);
  }
  if (!(depositUm >= 0 && depositUm < Infinity)) {
    throw new RangeError(`depositUm must be >= 0 and finite; got ${depositUm}`);
  }
}

function requireComputable(z: number): void {
  if (!(z < Infinity)) throw new RangeError(`film must have KX and SX below 1e150; got (mX)^2 = ${z}`);
}

/**
 * Transmittance and own reflectance of a film (Kubelka 1948): with m = sqrt(K(K+2S)) and s = sinh(mX)/m,
 * T = 1 / ((K+S) s + cosh mX), R0 = S s T. Kubelka's a, b and coth(bSX) are 0/0 at S = 0 and at K = 0; this form
 * is not. In a thick film numerator and denominator are multiplied by 2 exp(-mX) and cannot overflow.
 * @param absorptionPerUm K, 1/um, >= 0. @param scatteringPerUm S, 1/um, >= 0. @param depositUm X, um, >= 0.
 * @throws RangeError for a negative, infinite or NaN argument, or KX or SX above about 1e150.
 */
export function filmLayer(absorptionPerUm: number, scatteringPerUm: number, depositUm: number): FilmLayer {
  requireFilm(absorptionPerUm, scatteringPerUm, depositUm);
  const absorbed = absorptionPerUm * depositUm;
  const scattered = scatteringPerUm * depositUm;
  const z = absorbed * (absorbed + 2 * scattered);
  if (z <= SERIES_LIMIT) {
    const sinh = sinhSeries(z);
    const denominator = (absorbed + scattered) * sinh + coshSeries(z);
    return { transmittance: 1 / denominator, reflectance: (scattered * sinh) / denominator };
  }
  requireComputable(z);
  const y = Math.sqrt(z);
  const decay = Math.exp(-y);
  const f = (1 - decay * decay) / y;
  const denominator = (absorbed + scattered) * f + 1 + decay * decay;
  return { transmittance: (2 * decay) / denominator, reflectance: (scattered * f) / denominator };
}

/**
 * R = R0 + T^2 Rg / (1 - R0 Rg), a layer over a substrate (Kubelka 1948). A substrate above 1 (brightener) counts
 * as 1 in the denominator: emitted light is not reflected again (brightener.ts).
 * @param layer T in 0..1, R0 in 0 up to but not 1. @param substrateReflectance Rg, 0..1.5.
 * @throws RangeError outside these ranges.
 */
export function reflectanceOverSubstrate(layer: FilmLayer, substrateReflectance: number): number {
  const { transmittance, reflectance } = layer;
  requireLayer(layer);
  requireReflectance("substrateReflectance", substrateReflectance);
  const returned = Math.min(substrateReflectance, 1);
  return reflectance + (transmittance * transmittance * substrateReflectance) / (1 - reflectance * returned);
}

/**
 * `reflectanceOverSubstrate(filmLayer(K, S, X), Rg)` in one step without an object, for the inner loop; every term
 * is positive, so no digit is lost however strongly the film scatters.
 * @param absorptionPerUm K, 1/um, >= 0. @param scatteringPerUm S, 1/um, >= 0. @param depositUm X, um, >= 0.
 * @param substrateReflectance Rg, 0..1.5; above 1 as in `reflectanceOverSubstrate`.
 * @throws RangeError outside these ranges, or for KX or SX above about 1e150.
 */
export function filmReflectance(
  absorptionPerUm: number,
  scatteringPerUm: number,
  depositUm: number,
  substrateReflectance: number,
): number {
  requireFilm(absorptionPerUm, scatteringPerUm, depositUm);
  requireReflectance("substrateReflectance", substrateReflectance);
  const unreturned = substrateReflectance < 1 ? 1 - substrateReflectance : 0;
  let absorbed = absorptionPerUm * depositUm;
  let scattered = scatteringPerUm * depositUm;
  const z = absorbed * (absorbed + 2 * scattered);
  let passed = substrateReflectance;
  let cosh: number;
  if (z <= SERIES_LIMIT) {
    const sinh = sinhSeries(z);
    absorbed *= sinh;
    scattered *= sinh;
    cosh = coshSeries(z);
  } else {
    requireComputable(z);
    // every term times 2 exp(-mX)
    const y = Math.sqrt(z);
    const decaySquared = Math.exp(-2 * y);
    const f = (1 - decaySquared) / y;
    absorbed *= f;
    scattered *= f;
    cosh = 1 + decaySquared;
    passed *= 4 * decaySquared;
  }
  const lossless = absorbed + cosh;
  return (scattered + passed / (lossless + scattered * unreturned)) / (lossless + scattered);
}

/**
 * Two layers laid on each other (Kubelka 1954): T = T1 T2 / (1 - R1 R2), R = R1 + T1^2 R2 / (1 - R1 R2), each of
 * them alike from both sides. The result's reflectance is the one seen from the top; seen from below it differs
 * unless both layers are of one material.
 * @throws RangeError for a layer with T outside 0..1 or R outside 0 up to but not 1.
 */
export function composeLayers(top: FilmLayer, bottom: FilmLayer): FilmLayer {
  requireLayer(top);
  requireLayer(bottom);
  const once = 1 - top.reflectance * bottom.reflectance;
  return {
    transmittance: (top.transmittance * bottom.transmittance) / once,
    reflectance: top.reflectance + (top.transmittance * top.transmittance * bottom.reflectance) / once,
  };
}

function requireLayer(layer: FilmLayer): void {
  if (!(layer.transmittance >= 0 && layer.transmittance <= 1)) {
    throw new RangeError(`transmittance of a layer must be in 0..1; got ${layer.transmittance}`);
  }
  if (!(layer.reflectance >= 0 && layer.reflectance < 1)) {
    throw new RangeError(`reflectance of a layer must be in 0..1, below 1; got ${layer.reflectance}`);
  }
}
