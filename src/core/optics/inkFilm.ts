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

/** Below this m X the quotient (1 - exp(-2mX)) / m is summed as a series, good to the last digit. */
const SERIES_LIMIT = 0.3;

/**
 * (1 - exp(-2y)) / m for y = m X and decay = exp(-y): tends to 2X where m does to 0, never 0/0.
 * = 2 X exp(-y) sinh(y)/y; the first term dropped from sinh(y)/y is y^12/13!, 9e-17 at the limit.
 */
function interactionUm(y: number, decay: number, depositUm: number): number {
  if (y > SERIES_LIMIT) return (depositUm * (1 - decay * decay)) / y;
  const z = y * y;
  const sinhOverY = 1 + (z / 6) * (1 + (z / 20) * (1 + (z / 42) * (1 + (z / 72) * (1 + z / 110))));
  return 2 * depositUm * decay * sinhOverY;
}

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

/**
 * Transmittance and own reflectance of a film (Kubelka 1948): with m = sqrt(K(K+2S)) and s = sinh(mX)/m,
 * T = 1 / ((K+S) s + cosh mX), R0 = S s T. Kubelka's a, b and coth(bSX) are 0/0 at S = 0 and at K = 0; this form
 * is not. Numerator and denominator are multiplied by 2 exp(-mX), so that a thick film cannot overflow.
 * @param absorptionPerUm K, 1/um, >= 0. @param scatteringPerUm S, 1/um, >= 0. @param depositUm X, um, >= 0.
 * @throws RangeError for a negative, infinite or NaN argument.
 */
export function filmLayer(absorptionPerUm: number, scatteringPerUm: number, depositUm: number): FilmLayer {
  requireFilm(absorptionPerUm, scatteringPerUm, depositUm);
  const y = Math.sqrt(absorptionPerUm * (absorptionPerUm + 2 * scatteringPerUm)) * depositUm;
  const decay = Math.exp(-y);
  const f = interactionUm(y, decay, depositUm);
  const denominator = (absorptionPerUm + scatteringPerUm) * f + 1 + decay * decay;
  return { transmittance: (2 * decay) / denominator, reflectance: (scatteringPerUm * f) / denominator };
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
 * @throws RangeError outside these ranges.
 */
export function filmReflectance(
  absorptionPerUm: number,
  scatteringPerUm: number,
  depositUm: number,
  substrateReflectance: number,
): number {
  requireFilm(absorptionPerUm, scatteringPerUm, depositUm);
  requireReflectance("substrateReflectance", substrateReflectance);
  const y = Math.sqrt(absorptionPerUm * (absorptionPerUm + 2 * scatteringPerUm)) * depositUm;
  const decay = Math.exp(-y);
  const decaySquared = decay * decay;
  const f = interactionUm(y, decay, depositUm);
  const absorbed = absorptionPerUm * f;
  const scattered = scatteringPerUm * f;
  const unreturned = substrateReflectance < 1 ? 1 - substrateReflectance : 0;
  const overBlack = absorbed + scattered + 1 + decaySquared;
  const overSubstrate = absorbed + scattered * unreturned + 1 + decaySquared;
  return (scattered + (4 * decaySquared * substrateReflectance) / overSubstrate) / overBlack;
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
