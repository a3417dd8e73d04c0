/** Reads CxF3 (ISO 17972-1): the spectra, Lab and XYZ of its objects. Loaded only when such a file is opened. */
import type { Problem } from "../../job/problem.ts";
import {
  type ColourSpecification,
  joinedConditions,
  NO_SPECIFICATION,
  specificationFrom,
  wholeNm,
} from "./cxf3Conditions.ts";
import { finishSamples } from "./finishSamples.ts";
import { MOST_COLUMNS, quoted } from "./limits.ts";
import type { RawSample, RawSpectrum } from "./rawSample.ts";
import { type ReadingsOptions, type ReadingsResult, refuse, refuseAll } from "./readSample.ts";
import { writtenNumber } from "./writtenNumber.ts";
import { allBelow, childOf, type XmlElement, type XmlTree, xmlTree } from "./xmlTree.ts";

type Trouble = (code: string, values?: Problem["values"]) => void;

const SPECTRUM = "ReflectanceSpectrum";
const LAB = "ColorCIELab";
const XYZ = "ColorCIEXYZ";

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
 * Which values of an object make one sample: a spectrum and a Lab (or XYZ) where there is one of each at most and
 * their specifications do not contradict one another; else every value is a sample of its own.
 */
function grouped(values: readonly XmlElement[], specificationOf: (e: XmlElement) => ColourSpecification) {
  const of = (name: string) => values.filter((value) => value.name === name);
  const spectra = of(SPECTRUM);
  const labs = of(LAB).length > 0 ? of(LAB) : of(XYZ);
  const joined = [...spectra, ...labs];
  const agree = joinedConditions(joined.map(specificationOf)).contradicts.length === 0;
  return spectra.length <= 1 && labs.length <= 1 && agree ? [joined] : joined.map((value) => [value]);
}

function refusedTree(tree: Extract<XmlTree, { ok: false }>): ReadingsResult {
  return refuse(tree.code, "", tree.line === null ? {} : { line: tree.line });
}

/** The samples of a CxF3 text, or why none is taken. */
export function readCxf3(text: string, options: ReadingsOptions): ReadingsResult {
  const tree = xmlTree(text);
  if (!tree.ok) return refusedTree(tree);
  if (tree.root.name !== "CxF") return refuse("readings-xml-not-cxf", "", { name: quoted(tree.root.name) });
  const specifications = new Map<string, ColourSpecification>();
  const problems: Problem[] = [];
  for (const element of allBelow(tree.root, "ColorSpecification")) {
    const id = element.attributes.get("Id") ?? "";
    if (specifications.has(id))
      problems.push({ code: "readings-specification-twice", where: "", values: { name: quoted(id) } });
    specifications.set(id, specificationFrom(element));
  }
  const warnings: Problem[] = [];
  const samples: RawSample[] = [];
  const unknown = new Set<string>();
  const specificationOf = (element: XmlElement): ColourSpecification => {
    const id = element.attributes.get("ColorSpecification");
    const found = id === undefined ? undefined : specifications.get(id);
    if (id !== undefined && found === undefined) unknown.add(id);
    return found ?? NO_SPECIFICATION;
  };
  let passedOver = 0;
  for (const [index, object] of allBelow(tree.root, "Object").entries()) {
    const where = `objects[${index}]`;
    const ownName = object.attributes.get("Name") ?? object.attributes.get("Id") ?? "";
    const trouble: Trouble = (code, values = {}) =>
      problems.push({ code, where, values: { name: quoted(ownName), ...values } });
    const groups = grouped(childOf(object, "ColorValues")?.children ?? [], specificationOf);
    if (groups.every((group) => group.length === 0)) passedOver++;
    for (const group of groups) {
      const [first] = group;
      if (first === undefined) continue;
      const one = (name: string) => group.find((value) => value.name === name);
      const spectrum = one(SPECTRUM);
      const lab = one(LAB);
      const xyz = one(XYZ);
      const labValues = lab === undefined ? null : three(lab, ["L", "A", "B"], trouble);
      const xyzValues = xyz === undefined ? null : three(xyz, ["X", "Y", "Z"], trouble);
      samples.push({
        name:
          groups.length > 1
            ? `${ownName} ${first.attributes.get("ColorSpecification") ?? ""}`.trim()
            : ownName,
        where,
        line: null,
        table: 0,
        lab: labValues === null ? null : { L: labValues[0], a: labValues[1], b: labValues[2] },
        tristimulus: xyzValues === null ? null : { X: xyzValues[0], Y: xyzValues[1], Z: xyzValues[2] },
        spectrum: spectrum === undefined ? null : spectrumFrom(spectrum, specificationOf(spectrum), trouble),
        conditions: joinedConditions(group.map(specificationOf)),
      });
    }
  }
  if (problems.length > 0) return refuseAll(problems);
  for (const id of unknown)
    warnings.push({ code: "readings-specification-missing", where: "", values: { name: quoted(id) } });
  if (passedOver > 0 && samples.length > 0)
    warnings.push({ code: "readings-objects-passed-over", where: "", values: { count: passedOver } });
  return finishSamples("cxf3", samples, warnings, options);
}
