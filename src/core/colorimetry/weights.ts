/**
 * Thirty-six weights per light and observer, so that tristimulus values are one weighted sum over the 10 nm bands.
 */
import { BAND_COUNT, FIRST_NM, STEP_NM } from "../spectrum/spectrum.ts";
import { X_BAR_2_DEG, Y_BAR_2_DEG, Z_BAR_2_DEG } from "../tables/observer2Deg.ts";
import { X_BAR_10_DEG, Y_BAR_10_DEG, Z_BAR_10_DEG } from "../tables/observer10Deg.ts";
import { TABLE_COUNT, TABLE_FIRST_NM, TABLE_STEP_NM } from "../tables/tableGrid.ts";
import { relativePower } from "./illuminants.ts";
import type { Tristimulus, Viewing } from "./viewing.ts";

export interface WeightSet {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Tristimulus values of the perfect reflecting diffuser: the weights' own sums, Y = 100. */
  readonly white: Tristimulus;
}

const OBSERVERS = {
  "2deg": { x: X_BAR_2_DEG, y: Y_BAR_2_DEG, z: Z_BAR_2_DEG },
  "10deg": { x: X_BAR_10_DEG, y: Y_BAR_10_DEG, z: Z_BAR_10_DEG },
} as const;

/** Cubic Lagrange at the middle of four equidistant points, and quadratic at the middle of the first two of three. */
const FOUR_POINT_MIDDLE = [-1 / 16, 9 / 16, 9 / 16, -1 / 16] as const;
const THREE_POINT_END = [3 / 8, 6 / 8, -1 / 8] as const;

/** The bands a wavelength is interpolated from, and the share of each; beyond the last band, that band alone. */
function interpolationAt(wavelengthNm: number): readonly (readonly [band: number, share: number])[] {
  const last = BAND_COUNT - 1;
  const position = (wavelengthNm - FIRST_NM) / STEP_NM;
  if (position >= last) return [[last, 1]];
  const below = Math.floor(position);
  if (position === below) return [[below, 1]];
  if (below === 0) return THREE_POINT_END.map((share, i) => [i, share]);
  if (below === last - 1) return THREE_POINT_END.map((share, i) => [last - i, share]);
  return FOUR_POINT_MIDDLE.map((share, i) => [below - 1 + i, share]);
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

function deriveWeights(viewing: Viewing): WeightSet {
  const power = relativePower(viewing.illuminant);
  const observer = OBSERVERS[viewing.observer];
  const x = new Float64Array(BAND_COUNT);
  const y = new Float64Array(BAND_COUNT);
  const z = new Float64Array(BAND_COUNT);
  let luminous = 0;
  for (let i = 0; i < TABLE_COUNT; i++) luminous += power[i]! * observer.y[i]!;
  const k = 100 / luminous;
  for (let i = 0; i < TABLE_COUNT; i++) {
    for (const [band, share] of interpolationAt(TABLE_FIRST_NM + i * TABLE_STEP_NM)) {
      const amount = k * power[i]! * share;
      x[band] = x[band]! + amount * observer.x[i]!;
      y[band] = y[band]! + amount * observer.y[i]!;
      z[band] = z[band]! + amount * observer.z[i]!;
    }
  }
  return { x, y, z, white: { X: sum(x), Y: sum(y), Z: sum(z) } };
}

/** Derived once per viewing: the result depends on nothing else. */
const derived = new Map<string, WeightSet>();

/**
 * Weights that turn a reflectance on the 10 nm grid into tristimulus values under `viewing`.
 * X = k sum S R xbar over 380-780 nm at 5 nm, k = 100 / sum S ybar (CIE 015:2018); R between the bands by four-point
 * cubic Lagrange, three-point at the ends; R beyond 730 nm taken as R(730), the idea of ASTM E308. The white point
 * is the weights' own sum, not a rounded published one, so that the perfect diffuser is exactly L* = 100.
 */
export function weightsFor(viewing: Viewing): WeightSet {
  const key = `${viewing.illuminant}/${viewing.observer}`;
  let weights = derived.get(key);
  if (weights === undefined) {
    weights = deriveWeights(viewing);
    derived.set(key, weights);
  }
  return weights;
}
