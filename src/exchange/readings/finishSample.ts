/** Judges one sample: its spectrum onto the grid, its numbers within limits, XYZ into Lab where the light is known. */
import { labFromReflectance, labFromTristimulus } from "../../core/colorimetry/cielab.ts";
import { deltaEab } from "../../core/colorimetry/difference.ts";
import type { Lab, Tristimulus } from "../../core/colorimetry/viewing.ts";
import { weightsFor } from "../../core/colorimetry/weights.ts";
import { labSchema } from "../../job/colourDocument.ts";
import type { Problem } from "../../job/problem.ts";
import { LONGEST_NAME, quoted } from "./limits.ts";
import type { RawSample } from "./rawSample.ts";
import type { ReadSample, ReflectanceScale } from "./readSample.ts";
import { spectrumOnGrid } from "./spectrumOnGrid.ts";

export interface FinishedSample {
  readonly sample: ReadSample;
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** Above it, X, Y and Z are not on the scale where white has Y = 100 (invented; a brightened white reaches 150). */
const LARGEST_TRISTIMULUS = 200;
/**
 * A sample's Lab and spectrum may differ by this much, in CIE 1976 units: bandwidth and weights explain some tenths, a
 * wrong light or scale explains more (invented limit).
 */
const LARGEST_DISAGREEMENT = 1;

const isLab = (lab: Lab): boolean => labSchema.safeParse(lab).success;

function isTristimulus({ X, Y, Z }: Tristimulus): boolean {
  return [X, Y, Z].every((value) => value >= 0 && value <= LARGEST_TRISTIMULUS);
}

/** The sample with its XYZ turned into Lab, once light and observer are known. */
export function withLab(sample: ReadSample): ReadSample {
  const { tristimulus, light, observer } = sample;
  if (tristimulus === null || light === null || observer === null) return sample;
  const lab = labFromTristimulus(tristimulus, weightsFor({ illuminant: light, observer }).white);
  return { ...sample, lab, tristimulus: null };
}

/** How far the Lab lies from that of the spectrum; null where that cannot be told. */
function disagreement({ lab, spectrum, light, observer }: ReadSample): number | null {
  if (lab === null || spectrum === null || light === null || observer === null) return null;
  const weights = weightsFor({ illuminant: light, observer });
  return deltaEab(lab, labFromReflectance(Float64Array.from(spectrum.reflectance), weights));
}

/** Instruments write zeros for what was not read; no cloth is that black. */
function isAllZero({ lab, tristimulus, spectrum }: RawSample): boolean {
  if (spectrum !== null) return spectrum.values.every((value) => value === 0);
  if (lab !== null) return lab.L === 0 && lab.a === 0 && lab.b === 0;
  return tristimulus !== null && isTristimulus(tristimulus) && tristimulus.Y === 0;
}

/** One sample judged; where there are problems the file is refused, and the sample is not to be used. */
export function finishSample(raw: RawSample, scale: ReflectanceScale): FinishedSample {
  const { where, line, conditions } = raw;
  const at = line === null ? { name: quoted(raw.name) } : { line };
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const add = (list: Problem[], code: string, values: Problem["values"] = {}) =>
    list.push({ code, where, values: { ...at, ...values } });

  const onGrid = raw.spectrum === null ? null : spectrumOnGrid(raw.spectrum, scale);
  if (onGrid?.ok === false) add(problems, onGrid.code, onGrid.values);
  const spectrum = onGrid?.ok === true ? onGrid.spectrum : null;

  let lab = raw.lab;
  let tristimulus = lab === null ? raw.tristimulus : null;
  if (lab !== null && !isLab(lab)) add(problems, "readings-lab-value", { ...lab });
  if (tristimulus !== null && !isTristimulus(tristimulus))
    add(problems, "readings-tristimulus-value", { ...tristimulus });
  if (conditions.otherLight !== null && (lab !== null || tristimulus !== null)) {
    const light = conditions.otherLight;
    if (raw.spectrum === null) add(problems, "readings-light-not-offered", { light });
    else add(warnings, "readings-lab-left-out", { light });
    lab = null;
    tristimulus = null;
  }
  for (const what of conditions.contradicts) add(problems, "readings-contradiction", { what });
  if (raw.name.length > LONGEST_NAME) add(warnings, "readings-name-cut", { most: LONGEST_NAME });
  if (isAllZero(raw)) add(warnings, "readings-all-zero");

  const { light, observer, geometry } = conditions;
  const name = raw.name.slice(0, LONGEST_NAME);
  const unfinished = { name, where, line, lab, tristimulus, light, observer, geometry, spectrum };
  if (problems.length > 0) return { sample: unfinished, problems, warnings };
  const sample = withLab(unfinished);
  if (tristimulus !== null && sample.lab !== null && !isLab(sample.lab))
    add(problems, "readings-tristimulus-value", { ...tristimulus });
  const deltaE = disagreement(sample);
  if (deltaE !== null && deltaE > LARGEST_DISAGREEMENT)
    add(warnings, "readings-lab-unlike-spectrum", { deltaE });
  return { sample, problems, warnings };
}
