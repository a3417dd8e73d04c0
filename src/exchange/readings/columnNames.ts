/** What a column's heading says it holds, whatever the file's habit of naming: wavelengths, Lab, XYZ, name, conditions. */
import { geometryFrom, lightFrom, observerFrom } from "./conditionWords.ts";

export type ColourAxis = "L" | "a" | "b" | "X" | "Y" | "Z";

/** A role is a plain word, so that a matching can be stored: "nm:400" is the reflectance at 400 nm. */
export type ColumnRole =
  | ColourAxis
  | `nm:${number}`
  | "name"
  | "light"
  | "observer"
  | "geometry"
  | "left-out";

const LONGEST_HEADING = 80;

/**
 * What may stand before a wavelength: the habits seen in public files beside those of the standard (NM, SPECTRAL_NM);
 * common practice, no source.
 */
const BEFORE_WAVELENGTH = new Set([
  "",
  "NM",
  "R",
  "RNM",
  "REF",
  "REFL",
  "REFLECTANCE",
  "SPEC",
  "SPECTRAL",
  "SPECTRALNM",
  "SPECTRALR",
  "SPECTRALPCT",
  "SPECTRALDEC",
  "SPECTRUM",
  "WL",
  "LAMBDA",
]);

/** The wavelength, in nm, whose reflectance a column of this heading holds; null where it is another column. */
export function wavelengthOf(heading: string): number | null {
  if (heading.length > LONGEST_HEADING) return null;
  const match = /^([A-Z_ .%[(-]*)(\d{3})(?:\.0+)?[ _]?(?:NM)?[ _]?(?:\(%\)|\[%\]|%|PCT)?[)\]]?$/i.exec(
    heading.trim(),
  );
  if (match === null) return null;
  const before = (match[1] ?? "").toUpperCase().replace(/[^A-Z]/g, "");
  const nm = Number(match[2]);
  return BEFORE_WAVELENGTH.has(before) && nm >= 300 && nm <= 900 ? nm : null;
}

/** Whether the heading says that its reflectances are percents. */
export function saysPercent(heading: string): boolean {
  return /%|\bPCT\b|_PCT|PERCENT/i.test(heading);
}

/** The axis a heading names and what it says of the conditions: "L*(D65/10°)" gives L and "D65/10°". */
export function axisOf(heading: string): { readonly axis: ColourAxis; readonly conditions: string } | null {
  if (heading.length > LONGEST_HEADING) return null;
  const match =
    /^(?:CIE[ _-]?)?(?:L\*?a\*?b\*?[ _-]|XYZ[ _-])?([LABXYZ])\s?\*?(?:[ _([/-]+(.*?)[)\]]?)?$/i.exec(
      heading.trim(),
    );
  if (match === null) return null;
  const conditions = match[2] ?? "";
  const isSaid =
    lightFrom(conditions)?.kind === "known" ||
    observerFrom(conditions) !== null ||
    geometryFrom(conditions) !== null;
  if (conditions !== "" && !isSaid) return null;
  const letter = (match[1] ?? "").toUpperCase();
  return {
    axis: (letter === "A" || letter === "B" ? letter.toLowerCase() : letter) as ColourAxis,
    conditions,
  };
}

/** Headings of a sample's name, best first; compared without case and without what parts words. */
const NAME_HEADINGS = [
  "SAMPLENAME",
  "NAME",
  "SAMPLE",
  "LABEL",
  "DESCRIPTION",
  "SAMPLEID",
  "ID",
  "NO",
  "NR",
  "SAMPLELOC",
];
/** Some name the observer in the same column: "D65/10°". */
const LIGHT_HEADINGS = [
  "LIGHT",
  "ILLUMINANT",
  "ILLUMINATION",
  "ILLUMINATIONNAME",
  "ILLUMINANTOBSERVER",
  "LIGHTOBSERVER",
  "ILLOBS",
];
const OBSERVER_HEADINGS = ["OBSERVER", "OBSERVERANGLE"];
const GEOMETRY_HEADINGS = ["GEOMETRY", "MEASUREMENTGEOMETRY", "MODE", "SPECULAR"];

function plain(heading: string): string {
  return heading
    .slice(0, LONGEST_HEADING)
    .toUpperCase()
    .replace(/[^A-Z0-9]/g, "");
}

/** How good a name a column gives: 0 is the best, null where it is no name. */
export function nameRank(heading: string): number | null {
  const rank = NAME_HEADINGS.indexOf(plain(heading));
  return rank < 0 ? null : rank;
}

/** The condition whose column this is. */
export function conditionOf(heading: string): "light" | "observer" | "geometry" | null {
  const word = plain(heading);
  if (LIGHT_HEADINGS.includes(word)) return "light";
  if (OBSERVER_HEADINGS.includes(word)) return "observer";
  return GEOMETRY_HEADINGS.includes(word) ? "geometry" : null;
}
