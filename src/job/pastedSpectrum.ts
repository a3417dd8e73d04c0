/** Reads a spectrum that somebody pasted from an instrument's window or a sheet, and brings it onto our grid. */
import { resampleSpectrum } from "../core/spectrum/resample.ts";
import { readNumbers } from "./pastedNumbers.ts";
import type { Problem } from "./problem.ts";

/** The wavelengths of the first and the last value, where they do not stand in the text. */
export interface PastedRange {
  readonly firstNm: number;
  readonly lastNm: number;
}

export type PastedSpectrum =
  | {
      readonly ok: true;
      readonly reflectance: number[];
      /** Codes of what was assumed, for ColourDocument: "short-end-extended:380-390". */
      readonly assumptions: string[];
      readonly valueCount: number;
      readonly firstNm: number;
      readonly lastNm: number;
      readonly stepNm: number;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The ranges that instruments give, by their number of values (common practice, no source). */
const RANGE_BY_COUNT: ReadonlyMap<number, PastedRange> = new Map([
  [16, { firstNm: 400, lastNm: 700 }],
  [31, { firstNm: 400, lastNm: 700 }],
  [36, { firstNm: 380, lastNm: 730 }],
  [39, { firstNm: 360, lastNm: 740 }],
  [40, { firstNm: 360, lastNm: 750 }],
  [43, { firstNm: 360, lastNm: 780 }],
  [61, { firstNm: 400, lastNm: 700 }],
  [71, { firstNm: 380, lastNm: 730 }],
]);

/** Brightened white cloth reflects up to 1.5 times; more than that are percents. */
const LARGEST_FACTOR = 1.5;
const LARGEST_PERCENT = 150;
const STEPS_NM = [5, 10, 20];
/** Fewer than these cannot cover 400-700 nm at 20 nm. */
const FEWEST_COUNT = 16;

const refuse = (code: string, values: Record<string, string | number> = {}): PastedSpectrum => ({
  ok: false,
  problems: [{ code, where: "spectrum", values }],
});

interface Placed {
  readonly values: readonly number[];
  readonly firstNm: number;
  readonly lastNm: number;
}

/** Two columns, wavelength and value: rising evenly through the visible range, as reflectances never do. */
function fromColumns(numbers: readonly number[]): Placed | null {
  if (numbers.length % 2 !== 0) return null;
  const wavelengths = numbers.filter((_, i) => i % 2 === 0);
  const rises = wavelengths.every(
    (nm, i) => nm >= 300 && nm <= 900 && (i === 0 || nm > (wavelengths[i - 1] ?? 0)),
  );
  if (!rises || wavelengths.length < 2) return null;
  return {
    values: numbers.filter((_, i) => i % 2 === 1),
    firstNm: wavelengths[0] ?? 0,
    lastNm: wavelengths.at(-1) ?? 0,
  };
}

/** The wavelength after which two columns leave their even steps; null where they never do. */
function unevenAfter(numbers: readonly number[], stepNm: number): number | null {
  for (let i = 2; i < numbers.length; i += 2) {
    const before = numbers[i - 2] ?? 0;
    if (Math.abs((numbers[i] ?? 0) - before - stepNm) > 1e-6) return before;
  }
  return null;
}

/**
 * The reflectance in `text`: values alone, in order of wavelength, or two columns of wavelength and value; factors
 * (0-1.5) or percents (told by their size, and said among the assumptions). `range` is asked for only where neither
 * the text nor the number of values tells the wavelengths.
 */
export function readPastedSpectrum(text: string, range: PastedRange | null): PastedSpectrum {
  const read = readNumbers(text);
  if (!read.ok) return refuse("spectrum-not-a-number", { word: read.word, position: read.position });
  const { numbers } = read;
  if (numbers.length === 0) return refuse("spectrum-empty");
  const columns = fromColumns(numbers);
  const values = columns === null ? numbers : columns.values;
  if (values.length < FEWEST_COUNT)
    return refuse("spectrum-too-few", { count: values.length, fewest: FEWEST_COUNT });
  const placed = columns ?? range ?? RANGE_BY_COUNT.get(values.length) ?? null;
  if (placed === null) return refuse("spectrum-range-unknown", { count: values.length });
  const { firstNm, lastNm } = placed;
  const stepNm =
    columns === null ? (lastNm - firstNm) / (values.length - 1) : (numbers[2] ?? 0) - (numbers[0] ?? 0);
  const uneven = columns === null ? null : unevenAfter(numbers, stepNm);
  if (uneven !== null) return refuse("spectrum-uneven", { afterNm: uneven, stepNm });
  if (!STEPS_NM.includes(stepNm)) {
    return refuse("spectrum-step", {
      count: values.length,
      firstNm,
      lastNm,
      stepNm: Number(stepNm.toFixed(2)),
    });
  }
  if (firstNm > 400 || lastNm < 700) return refuse("spectrum-range-short", { firstNm, lastNm });
  if (firstNm % Math.min(stepNm, 10) !== 0) return refuse("spectrum-off-raster", { firstNm });

  const largest = Math.max(...values);
  const percent = largest > LARGEST_FACTOR;
  const wrong = values.findIndex((value) => value < 0 || value > LARGEST_PERCENT);
  if (wrong >= 0) {
    return refuse("spectrum-value", { value: values[wrong] ?? 0, nm: firstNm + wrong * stepNm });
  }
  const factors = percent ? values.map((value) => value / 100) : values;
  const { spectrum, warnings } = resampleSpectrum({ firstNm, stepNm, values: factors });
  const reflectance = Array.from(spectrum);
  const outside = reflectance.findIndex((value) => value < 0 || value > LARGEST_FACTOR);
  if (outside >= 0)
    return refuse("spectrum-value", { value: reflectance[outside] ?? 0, nm: 380 + outside * 10 });
  const assumptions = warnings.map(({ code, fromNm, toNm }) => `${code}:${fromNm}-${toNm}`);
  if (percent) assumptions.unshift("read-as-percent");
  if (columns === null && range === null) assumptions.unshift(`range-from-count:${firstNm}-${lastNm}`);
  return { ok: true, reflectance, assumptions, valueCount: values.length, firstNm, lastNm, stepNm };
}
