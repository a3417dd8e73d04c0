/** The true cloth: a population of fibres per material, each with its own reflectance and its own wetting, seen as one blend. */
import { BAND_COUNT, type Spectrum } from "../../src/core/spectrum/spectrum.ts";
import type { FibreName } from "./trueEffects.ts";

/** The fibres of one material in a cloth. */
export interface Population {
  readonly fibre: FibreName;
  readonly massFraction: number;
  readonly reflectance: Spectrum;
}

/** f of Stearns & Noechel 1944 (from memory): the quantity that adds by mass. */
function additive(reflectance: number, m: number): number {
  return (1 - reflectance) / (m * (reflectance - 0.01) + 0.01);
}

/** The reflectance that has this f: solved from f (m R - 0.01 m + 0.01) = 1 - R. */
function fromAdditive(f: number, m: number): number {
  return (1 - f * 0.01 * (1 - m)) / (1 + f * m);
}

/** What is seen of the populations together, blended by Stearns & Noechel with constant `m`. */
export function blended(populations: readonly Population[], m: number): Spectrum {
  const seen = new Float64Array(BAND_COUNT);
  for (let i = 0; i < BAND_COUNT; i++) {
    let f = 0;
    for (const { massFraction, reflectance } of populations) f += massFraction * additive(reflectance[i]!, m);
    seen[i] = fromAdditive(f, m);
  }
  return seen;
}

/** One fibre's reflectance once a medium fills it: scattering falls by exp(-`gain`), absorption stays. */
export function wettedFibre(reflectance: Spectrum, gain: number): Spectrum {
  const factor = Math.exp(gain);
  return reflectance.map((r) => {
    const ratio = (factor * (1 - r) ** 2) / (2 * r);
    return 1 + ratio - Math.sqrt(ratio * ratio + 2 * ratio);
  });
}

/** The cloth wetted fibre by fibre, `gainOf` each. */
export function wettedCloth(
  populations: readonly Population[],
  m: number,
  gainOf: (fibre: FibreName) => number,
): Spectrum {
  const wetted = populations.map((population) => ({
    ...population,
    reflectance: wettedFibre(population.reflectance, gainOf(population.fibre)),
  }));
  return blended(wetted, m);
}
