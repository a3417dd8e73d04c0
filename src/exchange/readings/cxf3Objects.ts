/** Turns one object of a CxF3 file into samples: which of its values belong together, and their numbers. */
import type { Problem } from "../../job/problem.ts";
import { type ColourSpecification, joinedConditions, wholeNm } from "./cxf3Conditions.ts";
import { MOST_COLUMNS, quoted } from "./limits.ts";
import type { RawSample, RawSpectrum } from "./rawSample.ts";
import { writtenNumber } from "./writtenNumber.ts";
import { childOf, type XmlElement } from "./xmlTree.ts";

/** The elements that hold readings, as ISO 17972-1 names them (from memory and public files). */
export const SPECTRUM = "ReflectanceSpectrum";
export const LAB = "ColorCIELab";
export const XYZ = "ColorCIEXYZ";

export interface ObjectSamples {
  readonly samples: readonly RawSample[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
  /** How many of the object's values were judged, whether they became samples or were said to be left out. */
  readonly valueCount: number;
}

type Trouble = (code: string, values?: Problem["values"]) => void;
type SpecificationOf = (element: XmlElement) => ColourSpecification;

/** The three numbers of a Lab or XYZ; null, with the trouble said, where one is missing or no number. */
function three(element: XmlElement, names: readonly [string, string, string], trouble: Trouble) {
  const read = (name: string): number => {
    const text = childOf(element, name)?.text ?? "";
    const value = writtenNumber(text, ".");
    if (value === null && text === "") trouble("readings-value-missing", { heading: name });
    else if (value === null) trouble("readings-not-a-number", { heading: name, text: quoted(text) });
    return value ?? Number.NaN;
  };
  const [first, second, third] = [read(names[0]), read(names[1]), read(names[2])];
  return Number.isNaN(first + second + third) ? null : ([first, second, third] as const);
}

function spectrumFrom(
  element: XmlElement,
  specification: ColourSpecification,
  trouble: Trouble,
): RawSpectrum | null {
  const firstNm = wholeNm(element.attributes.get("StartWL")) ?? specification.firstNm;
  const stepNm = wholeNm(element.attributes.get("Increment")) ?? specification.stepNm;
  if (firstNm === null || stepNm === null) {
    trouble("readings-wavelengths-missing");
    return null;
  }
  const words = element.text.split(/\s+/).filter((word) => word !== "");
  if (words.length > MOST_COLUMNS) {
    trouble("readings-too-many-columns", { most: MOST_COLUMNS });
    return null;
  }
  const values = words.map((word) => writtenNumber(word, "."));
  const wrong = values.indexOf(null);
  if (wrong >= 0) {
    const heading = `${firstNm + wrong * stepNm} nm`;
    trouble("readings-not-a-number", { heading, text: quoted(words[wrong] ?? "") });
    return null;
  }
  return {
    wavelengthsNm: values.map((_, i) => firstNm + i * stepNm),
    values: values.map((value) => value ?? Number.NaN),
    scale: null,
  };
}

/**
 * Which values of an object make a sample. Every spectrum is one, joined by the object's Lab (or XYZ) where there is
 * one of each and their specifications agree; further Lab beside spectra is left out, which a warning says. Without a
 * spectrum every Lab is a sample, and without Lab every XYZ.
 */
function grouped(values: readonly XmlElement[], specificationOf: SpecificationOf) {
  const of = (name: string) => values.filter((value) => value.name === name);
  const spectra = of(SPECTRUM);
  const colours = of(LAB).length > 0 ? of(LAB) : of(XYZ);
  if (spectra.length === 0) return { groups: colours.map((colour) => [colour]), leftOut: 0 };
  if (spectra.length === 1 && colours.length === 1) {
    const joined = [...spectra, ...colours];
    if (joinedConditions(joined.map(specificationOf)).contradicts.length === 0)
      return { groups: [joined], leftOut: 0 };
  }
  return { groups: spectra.map((spectrum) => [spectrum]), leftOut: colours.length };
}

/** The samples of the object at place `index`. */
export function objectSamples(
  object: XmlElement,
  index: number,
  specificationOf: SpecificationOf,
): ObjectSamples {
  const where = `objects[${index}]`;
  const ownName = object.attributes.get("Name") ?? object.attributes.get("Id") ?? "";
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const trouble: Trouble = (code, values = {}) =>
    problems.push({ code, where, values: { name: quoted(ownName), ...values } });
  const values = object.children
    .filter((child) => child.name === "ColorValues")
    .flatMap(({ children }) => children.filter(({ name }) => [SPECTRUM, LAB, XYZ].includes(name)));
  const { groups, leftOut } = grouped(values, specificationOf);
  if (leftOut > 0)
    warnings.push({
      code: "readings-lab-beside-spectra",
      where,
      values: { name: quoted(ownName), count: leftOut },
    });
  const samples: RawSample[] = [];
  for (const group of groups) {
    const one = (name: string) => group.find((value) => value.name === name);
    const [spectrum, lab, xyz] = [one(SPECTRUM), one(LAB), one(XYZ)];
    const labValues = lab === undefined ? null : three(lab, ["L", "A", "B"], trouble);
    const xyzValues = xyz === undefined ? null : three(xyz, ["X", "Y", "Z"], trouble);
    const id = group[0]?.attributes.get("ColorSpecification") ?? "";
    samples.push({
      name: groups.length > 1 ? `${ownName} ${id}`.trim() : ownName,
      where,
      line: null,
      table: 0,
      lab: labValues === null ? null : { L: labValues[0], a: labValues[1], b: labValues[2] },
      tristimulus: xyzValues === null ? null : { X: xyzValues[0], Y: xyzValues[1], Z: xyzValues[2] },
      spectrum: spectrum === undefined ? null : spectrumFrom(spectrum, specificationOf(spectrum), trouble),
      conditions: joinedConditions(group.map(specificationOf)),
    });
  }
  return { samples, problems, warnings, valueCount: values.length };
}
