/** Reflectances of invented dyed fibres: absorption bands with shoulders and tails on a natural fibre, nothing smooth by construction. */
import { type Spectrum, spectrumFrom } from "../../src/core/spectrum/spectrum.ts";

interface Band {
  readonly centreNm: number;
  readonly sdNm: number;
  readonly height: number;
}

const band = (centreNm: number, sdNm: number, height: number): Band => ({ centreNm, sdNm, height });

/**
 * Invented dyes: a main band, its vibronic shoulder, a tail from the ultraviolet. Their widths make a smoothest
 * reconstruction miss a relit colour by as much as it misses measured pigments and dyed cottons (physics.md §5; a test).
 */
const DYES = {
  yellow: [band(422, 42, 1), band(452, 24, 0.45), band(365, 35, 0.4)],
  orange: [band(458, 41, 1), band(490, 22, 0.6), band(370, 42, 0.35)],
  red: [band(508, 36, 1), band(542, 21, 0.85), band(375, 39, 0.3)],
  violet: [band(536, 38, 0.8), band(577, 24, 1), band(380, 49, 0.25)],
  blue: [band(588, 43, 0.85), band(637, 27, 1), band(385, 42, 0.3)],
  turquoise: [band(612, 34, 0.5), band(671, 24, 1), band(392, 34, 0.2)],
  black: [band(585, 87, 1), band(455, 67, 0.7), band(380, 56, 0.5)],
} as const satisfies Record<string, readonly Band[]>;

export type DyeName = keyof typeof DYES;

/** How much of each dye, relative; the depth of shade multiplies all of it. */
export type Recipe = Readonly<Partial<Record<DyeName, number>>>;

/** Shades by family: the recipe, and the L* such cloth is sold at. Invented. */
export const FAMILIES: readonly {
  readonly name: string;
  readonly recipe: Recipe;
  readonly lightness: readonly [number, number];
}[] = [
  { name: "navy", recipe: { blue: 0.5, black: 0.7, violet: 0.15 }, lightness: [14, 30] },
  { name: "black", recipe: { black: 1, orange: 0.25, blue: 0.3 }, lightness: [12, 22] },
  { name: "forest", recipe: { turquoise: 0.5, yellow: 0.6, black: 0.45 }, lightness: [20, 40] },
  { name: "maroon", recipe: { red: 0.9, violet: 0.2, black: 0.35 }, lightness: [20, 36] },
  { name: "brown", recipe: { orange: 0.8, red: 0.35, black: 0.5 }, lightness: [24, 50] },
  { name: "royal", recipe: { blue: 1, violet: 0.25 }, lightness: [26, 48] },
  { name: "red", recipe: { red: 1, orange: 0.4 }, lightness: [34, 52] },
  { name: "purple", recipe: { violet: 0.8, blue: 0.35 }, lightness: [26, 60] },
  { name: "teal", recipe: { turquoise: 0.9, blue: 0.15, yellow: 0.12 }, lightness: [32, 66] },
  { name: "denim", recipe: { blue: 0.6, black: 0.3 }, lightness: [32, 62] },
  { name: "grey", recipe: { black: 1, blue: 0.08, orange: 0.1 }, lightness: [30, 76] },
  { name: "olive", recipe: { yellow: 0.7, black: 0.4, orange: 0.2 }, lightness: [30, 58] },
  { name: "sand", recipe: { orange: 0.35, yellow: 0.25, black: 0.12 }, lightness: [60, 84] },
  { name: "orange", recipe: { orange: 0.9, yellow: 0.5 }, lightness: [54, 70] },
  { name: "yellow", recipe: { yellow: 1, orange: 0.1 }, lightness: [70, 86] },
  { name: "sky", recipe: { blue: 0.3, turquoise: 0.35 }, lightness: [62, 82] },
];

/** Absorption over scattering of `recipe` at depth 1, its bands moved by `shiftNm`. */
export function dyeAbsorption(recipe: Recipe, shiftNm = 0): Spectrum {
  const dyes = Object.entries(recipe) as [DyeName, number][];
  return spectrumFrom((nm) => {
    let sum = 0;
    for (const [name, amount] of dyes) {
      for (const { centreNm, sdNm, height } of DYES[name]) {
        sum += amount * height * Math.exp(-(((nm - centreNm - shiftNm) / sdNm) ** 2) / 2);
      }
    }
    return sum;
  });
}

/** Absorption over scattering of the fibre without dye: cleaner at the red end; bleached cellulose is the yellower. Invented. */
export function naturalAbsorption(isSynthetic: boolean): Spectrum {
  const [floor, blue] = isSynthetic ? [0.004, 0.014] : [0.006, 0.03];
  return spectrumFrom((nm) => floor + blue * Math.exp(-(nm - 380) / 55));
}

/**
 * Reflectance of an opaque heap of fibres whose absorption over scattering is `ratio`: 1 + q - sqrt(q^2 + 2 q)
 * (Kubelka & Munk 1931), above what the fibres' own surfaces always throw back.
 */
export function heapReflectance(ratio: number, surfaceReflectance: number): number {
  return surfaceReflectance + (1 - surfaceReflectance) * (1 + ratio - Math.sqrt(ratio * ratio + 2 * ratio));
}
