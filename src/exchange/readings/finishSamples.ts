/** Judges all that a reader found: every sample comes out, or the file is refused with every wrong row named. */
import type { Problem } from "../../job/problem.ts";
import { finishSample } from "./finishSample.ts";
import { MOST_SAMPLES } from "./limits.ts";
import type { RawSample } from "./rawSample.ts";
import {
  type Asked,
  type ReadingsFormat,
  type ReadingsOptions,
  type ReadingsResult,
  type ReadSample,
  type ReflectanceScale,
  refuse,
  refuseAll,
} from "./readSample.ts";
import { LARGEST_FACTOR } from "./spectrumOnGrid.ts";

/** XYZ of every sample below this: Y = 1 for white, or darker than any cloth (L* 12.5). Which, nobody can tell. */
const LEAST_TRISTIMULUS = 1.5;

/**
 * How each table writes its reflectances where it does not say so: as answered, or else percents where any of its
 * values is above 1.5 (with a warning) and fractions where none is.
 */
function scales(
  raws: readonly RawSample[],
  options: ReadingsOptions,
): { readonly scale: ReadonlyMap<number, ReflectanceScale>; readonly warnings: readonly Problem[] } {
  const largest = new Map<number, number>();
  for (const { table, spectrum } of raws) {
    if (spectrum === null || spectrum.scale !== null) continue;
    const most = spectrum.values.reduce((high, value) => Math.max(high, value), 0);
    largest.set(table, Math.max(largest.get(table) ?? 0, most));
  }
  const scale = new Map<number, ReflectanceScale>();
  const warnings: Problem[] = [];
  for (const [table, value] of largest) {
    const found = options.scale ?? (value > LARGEST_FACTOR ? "percent" : "fraction");
    scale.set(table, found);
    if (options.scale === null && found === "percent")
      warnings.push({ code: "readings-as-percent", where: `tables[${table}]`, values: { largest: value } });
  }
  return { scale, warnings };
}

/** Words about conditions that nobody understood, each once. */
function unclearWords(raws: readonly RawSample[]): Problem[] {
  const said = new Map<string, Problem>();
  for (const { conditions, where } of raws) {
    for (const { what, text } of conditions.unclear) {
      const key = `${what} ${text}`;
      if (!said.has(key)) said.set(key, { code: "readings-unclear", where, values: { what, text } });
    }
  }
  return [...said.values()];
}

/** What has to be asked before the samples can be used: only what some sample needs and does not say. */
export function askedFor(samples: readonly ReadSample[]): Asked[] {
  const asked: Asked[] = [];
  const needsViewing = samples.filter((sample) => sample.spectrum === null);
  if (needsViewing.some((sample) => sample.light === null)) asked.push("light");
  if (needsViewing.some((sample) => sample.observer === null)) asked.push("observer");
  if (samples.some((sample) => sample.geometry === null)) asked.push("geometry");
  return asked;
}

/** The result of a file that gave these samples, each of them or none. */
export function finishSamples(
  format: ReadingsFormat,
  raws: readonly RawSample[],
  noticed: readonly Problem[],
  options: ReadingsOptions,
): ReadingsResult {
  if (raws.length === 0) return refuse("readings-none", "");
  if (raws.length > MOST_SAMPLES)
    return refuse("readings-too-many-samples", "", { count: raws.length, most: MOST_SAMPLES });
  const xyz = raws.flatMap(({ lab, tristimulus }) =>
    lab === null && tristimulus !== null ? [tristimulus] : [],
  );
  const largest = xyz.reduce((high, { X, Y, Z }) => Math.max(high, X, Y, Z), 0);
  if (xyz.length > 0 && largest <= LEAST_TRISTIMULUS)
    return refuse("readings-tristimulus-scale", "", { largest });

  const { scale, warnings } = scales(raws, options);
  const finished = raws.map((raw) =>
    finishSample(raw, raw.spectrum?.scale ?? scale.get(raw.table) ?? "fraction"),
  );
  const problems = finished.flatMap((each) => each.problems);
  if (problems.length > 0) return refuseAll(problems);
  const samples = finished.map((each) => each.sample);
  return {
    ok: true,
    format,
    samples,
    toAsk: askedFor(samples),
    warnings: [...noticed, ...warnings, ...unclearWords(raws), ...finished.flatMap((each) => each.warnings)],
  };
}
