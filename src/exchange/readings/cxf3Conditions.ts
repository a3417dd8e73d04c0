/** What a CxF3 colour specification states: light, observer, geometry, wavelengths (ISO 17972-1). */
import { type Conditions, type ConditionTexts, conditionsFrom, NOTHING_STATED } from "./conditions.ts";
import { childOf, type XmlElement } from "./xmlTree.ts";

export interface ColourSpecification {
  readonly stated: ConditionTexts;
  /** Start and step of its spectra; null where they are not stated. */
  readonly firstNm: number | null;
  readonly stepNm: number | null;
}

export const NO_SPECIFICATION: ColourSpecification = { stated: NOTHING_STATED, firstNm: null, stepNm: null };

/** A whole number of nanometres; null where it is anything else. */
export function wholeNm(text: string | undefined): number | null {
  return text !== undefined && /^\s*\d{1,4}(?:\.0+)?\s*$/.test(text) ? Number(text) : null;
}

/** SphereGeometry or SingleAngle as the words that `conditionWords` knows; several angles stay unclear. */
function geometryTexts(measurement: XmlElement | undefined): string[] {
  const choice = childOf(measurement, "GeometryChoice");
  const [kind] = choice?.children ?? [];
  const polarised = childOf(childOf(measurement, "Device"), "DevicePolarization")?.text ?? "";
  if (/^(?:true|yes|1)$/i.test(polarised)) return ["polarising filter"];
  if (kind === undefined) return [];
  if (kind.name === "SingleAngle") {
    const lit = childOf(kind, "IlluminationAngle")?.text ?? "";
    const seen = childOf(kind, "MeasurementAngle")?.text ?? "";
    return [`${lit}:${seen}`];
  }
  if (kind.name === "SphereGeometry")
    return [[kind.text, ...kind.children.map((child) => child.text)].join(" ")];
  return [kind.name];
}

/** The specification that an element describes. */
export function specificationFrom(element: XmlElement): ColourSpecification {
  const tristimulus = childOf(element, "TristimulusSpec");
  const measurement = childOf(element, "MeasurementSpec");
  const range = childOf(measurement, "WavelengthRange");
  const light = childOf(tristimulus, "Illuminant")?.text;
  const observer = childOf(tristimulus, "Observer")?.text;
  return {
    stated: {
      light: light === undefined ? [] : [light],
      observer: observer === undefined ? [] : [observer],
      geometry: geometryTexts(measurement),
    },
    firstNm: wholeNm(range?.attributes.get("StartWL")),
    stepNm: wholeNm(range?.attributes.get("Increment")),
  };
}

/** What several specifications state together, for a sample that has values under each. */
export function joinedConditions(specifications: readonly ColourSpecification[]): Conditions {
  return conditionsFrom({
    light: specifications.flatMap(({ stated }) => stated.light),
    observer: specifications.flatMap(({ stated }) => stated.observer),
    geometry: specifications.flatMap(({ stated }) => stated.geometry),
  });
}
