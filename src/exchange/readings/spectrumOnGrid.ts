/** Brings the spectrum of one sample onto our grid, or says why it cannot be. */

import { resampleSpectrum } from "../../core/spectrum/resample.ts";
import { FIRST_NM, STEP_NM } from "../../core/spectrum/spectrum.ts";
import type { Problem } from "../../job/problem.ts";
import type { RawSpectrum } from "./rawSample.ts";
import type { ReadSpectrum, ReflectanceScale } from "./readSample.ts";

/** Brightened white cloth reflects up to 1.5 times (model.md §3); larger values are percents. */
export const LARGEST_FACTOR = 1.5;

const STEPS_NM = [5, 10, 20];
const NEEDED_FIRST_NM = 400;
const NEEDED_LAST_NM = 700;

type Outcome =
  | { readonly ok: true; readonly spectrum: ReadSpectrum }
  | { readonly ok: false; readonly code: string; readonly values: NonNullable<Problem["values"]> };

const refuse = (code: string, values: NonNullable<Problem["values"]>): Outcome => ({
  ok: false,
  code,
  values,
});

/** The wavelengths in order and evenly apart, or what is wrong with them. */
function raster(wavelengthsNm: readonly number[]): { firstNm: number; stepNm: number } | Outcome {
  const firstNm = wavelengthsNm[0] ?? Number.NaN;
  const lastNm = wavelengthsNm.at(-1) ?? Number.NaN;
  const stepNm = (wavelengthsNm[1] ?? Number.NaN) - firstNm;
  if (wavelengthsNm.length < 2 || firstNm > NEEDED_FIRST_NM || lastNm < NEEDED_LAST_NM)
    return refuse("readings-spectrum-range", {
      firstNm: firstNm || 0,
      lastNm: lastNm || 0,
      count: wavelengthsNm.length,
    });
  const uneven = wavelengthsNm.findIndex((nm, i) => Math.abs(nm - firstNm - i * stepNm) > 1e-6);
  if (uneven > 0)
    return refuse("readings-spectrum-uneven", { afterNm: wavelengthsNm[uneven - 1] ?? 0, stepNm });
  if (!STEPS_NM.includes(stepNm)) return refuse("readings-spectrum-step", { stepNm });
  if (firstNm % Math.min(stepNm, STEP_NM) !== 0) return refuse("readings-spectrum-raster", { firstNm });
  return { firstNm, stepNm };
}

/** `raw` as reflectance factors on the grid; `scale` as stated or found for its table. */
export function spectrumOnGrid(raw: RawSpectrum, scale: ReflectanceScale): Outcome {
  const order = raw.wavelengthsNm.map((_, i) => i);
  order.sort((i, j) => (raw.wavelengthsNm[i] ?? 0) - (raw.wavelengthsNm[j] ?? 0));
  const placed = raster(order.map((i) => raw.wavelengthsNm[i] ?? 0));
  if ("ok" in placed) return placed;
  const { firstNm, stepNm } = placed;
  const values = order.map((i) => (raw.values[i] ?? Number.NaN) / (scale === "percent" ? 100 : 1));
  const wrong = values.findIndex((value) => !(value >= 0 && value <= LARGEST_FACTOR));
  if (wrong >= 0)
    return refuse("readings-spectrum-value", {
      value: raw.values[order[wrong] ?? 0] ?? 0,
      nm: firstNm + wrong * stepNm,
      scale,
    });
  const { spectrum, warnings } = resampleSpectrum({ firstNm, stepNm, values });
  const reflectance = Array.from(spectrum);
  const outside = reflectance.findIndex((value) => !(value >= 0 && value <= LARGEST_FACTOR));
  if (outside >= 0)
    return refuse("readings-spectrum-value", {
      value: reflectance[outside] ?? 0,
      nm: FIRST_NM + outside * STEP_NM,
      scale: "fraction",
    });
  const assumptions = warnings.map(({ code, fromNm, toNm }) => `${code}:${fromNm}-${toNm}`);
  if (scale === "percent" && raw.scale === null) assumptions.unshift("read-as-percent");
  return { ok: true, spectrum: { reflectance, assumptions } };
}
