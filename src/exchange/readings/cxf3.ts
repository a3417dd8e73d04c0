/** Reads CxF3 (ISO 17972-1): the spectra, Lab and XYZ of its objects. Loaded only when such a file is opened. */
import type { Problem } from "../../job/problem.ts";
import { type ColourSpecification, NO_SPECIFICATION, specificationFrom } from "./cxf3Conditions.ts";
import { LAB, objectSamples, SPECTRUM, XYZ } from "./cxf3Objects.ts";
import { finishSamples } from "./finishSamples.ts";
import { LONGEST_XML, quoted } from "./limits.ts";
import type { RawSample } from "./rawSample.ts";
import { type ReadingsOptions, type ReadingsResult, refuse, refuseAll } from "./readSample.ts";
import { allBelow, type XmlElement, xmlTree } from "./xmlTree.ts";

/** The file's specifications by their ids, and the ids that stand twice. */
function specificationsIn(root: XmlElement) {
  const byId = new Map<string, ColourSpecification>();
  const problems: Problem[] = [];
  for (const element of allBelow(root, "ColorSpecification")) {
    const id = element.attributes.get("Id") ?? "";
    if (byId.has(id))
      problems.push({ code: "readings-specification-twice", where: "", values: { name: quoted(id) } });
    byId.set(id, specificationFrom(element));
  }
  return { byId, problems };
}

/** The samples of a CxF3 text, or why none is taken. */
export function readCxf3(text: string, options: ReadingsOptions): ReadingsResult {
  if (text.length > LONGEST_XML)
    return refuse("readings-too-large", "", { bytes: text.length, largestBytes: LONGEST_XML });
  const tree = xmlTree(text);
  if (!tree.ok) return refuse(tree.code, "", tree.line === null ? {} : { line: tree.line });
  const { root } = tree;
  if (root.name !== "CxF") return refuse("readings-xml-not-cxf", "", { name: quoted(root.name) });
  const { byId, problems } = specificationsIn(root);
  const unknown = new Set<string>();
  const specificationOf = (element: XmlElement): ColourSpecification => {
    const id = element.attributes.get("ColorSpecification");
    const found = id === undefined ? undefined : byId.get(id);
    if (id !== undefined && found === undefined) unknown.add(id);
    return found ?? NO_SPECIFICATION;
  };
  const samples: RawSample[] = [];
  const warnings: Problem[] = [];
  let passedOver = 0;
  let valueCount = 0;
  for (const [index, object] of allBelow(root, "Object").entries()) {
    const read = objectSamples(object, index, specificationOf);
    if (read.valueCount === 0) passedOver++;
    valueCount += read.valueCount;
    samples.push(...read.samples);
    problems.push(...read.problems);
    warnings.push(...read.warnings);
  }
  if (problems.length > 0) return refuseAll(problems);
  for (const id of unknown)
    warnings.push({ code: "readings-specification-missing", where: "", values: { name: quoted(id) } });
  if (passedOver > 0)
    warnings.push({ code: "readings-objects-passed-over", where: "", values: { count: passedOver } });
  const elsewhere = [SPECTRUM, LAB, XYZ].flatMap((name) => allBelow(root, name)).length - valueCount;
  if (elsewhere > 0)
    warnings.push({ code: "readings-values-elsewhere", where: "", values: { count: elsewhere } });
  return finishSamples("cxf3", samples, warnings, options);
}
