/** The sentences for a file of colour readings: what is wrong with it, and what was noticed in one that was taken. */
import type { Problem } from "../../job/problem.ts";

type Values = NonNullable<Problem["values"]>;
type Sentence = (values: Values) => string;

const WHAT: Readonly<Record<string, string>> = {
  light: "light",
  observer: "observer",
  geometry: "geometry",
  scale: "unit of the reflectances",
  kind: "kind of reading, spectrum or L*a*b*,",
};

/** "Line 14: " where the line is known, else the name of the sample, else nothing. */
function at({ line, name }: Values): string {
  if (typeof line === "number" && line > 0) return `Line ${line}: `;
  return name === undefined || name === "" ? "" : `${name}: `;
}

function figure(value: string | number | undefined): string {
  return typeof value === "number" ? String(Number(value.toFixed(3))) : String(value ?? "");
}

function what(values: Values): string {
  return WHAT[String(values.what)] ?? String(values.what);
}

const largeFile = (bytes: string | number | undefined) => `${figure(Number(bytes) / 1_000_000)} MB`;

const SENTENCES: Readonly<Record<string, Sentence>> = {
  "readings-empty": () => "The file is empty.",
  "readings-too-large": ({ bytes, largestBytes }) =>
    `The file has ${largeFile(bytes)}; up to ${largeFile(largestBytes)} can be read.`,
  "readings-workbook": () =>
    "This is a workbook or an archive, not text. Save the sheet as CSV and open that.",
  "readings-not-text": () => "This is not a text file, so no readings can be in it.",
  "readings-as-latin-1": () => "The text is not UTF-8; it was read as Latin-1. Check the names.",
  "readings-none": () => "There is no reading in the file.",
  "readings-too-many-samples": ({ count, most }) =>
    `The file has ${count} readings; up to ${most} can be read.`,
  "readings-too-many-cells": ({ most }) => `The table has more than ${most} cells.`,
  "readings-too-many-columns": (values) => `${at(values)}there are more than ${values.most} values in a row.`,
  "readings-too-many-lines": ({ most }) => `The file has more than ${most} lines.`,
  "readings-no-headings": () =>
    "No line of headings was found that names readings, such as L*, a*, b* or the wavelengths.",
  "readings-no-columns": () => "No column is matched to a whole L*, a*, b*, to X, Y, Z or to a spectrum.",
  "readings-matching-misses": ({ headings }) =>
    `The remembered columns do not fit this file; it lacks: ${headings}.`,
  "readings-csv-quotes": (values) =>
    `${at(values)}a quotation mark is not closed, or stands in the wrong place.`,
  "readings-row-too-long": (values) =>
    `${at(values)}there are ${values.found} cells for ${values.wanted} headings. Decimal commas in a file parted by commas do that.`,
  "readings-lines-before-headings": ({ count }) =>
    `The ${count === 1 ? "line" : `${count} lines`} above the headings ${count === 1 ? "was" : "were"} not read.`,
  "readings-columns-left-out": ({ headings }) =>
    `These columns hold readings too and were left out: ${headings}.`,
  "readings-column-twice": ({ heading }) => `There are two columns for the same figure: ${heading}.`,
  "readings-row-without-readings": (values) =>
    `${at({ line: values.line ?? 0 })}there is no reading in this row${values.name ? ` (${values.name})` : ""}; it was passed over.`,
  "readings-value-missing": (values) => `${at(values)}the value of ${values.heading} is missing.`,
  "readings-not-a-number": (values) => `${at(values)}${values.heading} is not a number: “${values.text}”.`,
  "readings-lab-value": (values) =>
    `${at(values)}no reading can be L* ${figure(values.L)}, a* ${figure(values.a)}, b* ${figure(values.b)}.`,
  "readings-tristimulus-value": (values) =>
    `${at(values)}no reading can be X ${figure(values.X)}, Y ${figure(values.Y)}, Z ${figure(values.Z)}.`,
  "readings-tristimulus-scale": ({ largest }) =>
    `All X, Y and Z are below ${figure(Number(largest) + 0.001)}. They must be on the scale where white has Y = 100.`,
  "readings-all-zero": (values) =>
    `${at(values)}every value is zero, as instruments write what was not read.`,
  "readings-name-cut": (values) => `${at(values)}the name was cut after ${values.most} characters.`,
  "readings-spectrum-range": (values) =>
    `${at(values)}the spectrum runs from ${values.firstNm} to ${values.lastNm} nm; 400 to 700 nm is needed.`,
  "readings-spectrum-uneven": (values) =>
    `${at(values)}after ${values.afterNm} nm the wavelengths do not go on in steps of ${values.stepNm} nm.`,
  "readings-spectrum-step": (values) =>
    `${at(values)}the wavelengths are ${figure(values.stepNm)} nm apart; 5, 10 or 20 nm can be read.`,
  "readings-spectrum-raster": (values) =>
    `${at(values)}the first wavelength, ${values.firstNm} nm, is not on an even step.`,
  "readings-spectrum-value": (values) =>
    values.scale === "percent"
      ? `${at(values)}${figure(values.value)} at ${values.nm} nm is no reflectance in percent, which runs from 0 to 150.`
      : `${at(values)}${figure(values.value)} at ${values.nm} nm is no reflectance as a fraction, which runs from 0 to 1.5.`,
  "readings-wavelengths-missing": (values) =>
    `${at(values)}the file does not say at which wavelengths the spectrum was measured.`,
  "readings-as-percent": ({ largest }) =>
    `The reflectances were read as percents, because one is ${figure(largest)}.`,
  "readings-lab-unlike-spectrum": (values) =>
    `${at(values)}the L*, a*, b* and the spectrum differ by ΔE*ab ${figure(values.deltaE)}. Check the light, the observer and the unit.`,
  "readings-light-not-offered": (values) =>
    `${at(values)}the reading is for light ${values.light}, which Tonebench does not compute. Export it for another light, or the spectrum.`,
  "readings-lab-left-out": (values) =>
    `${at(values)}the L*, a*, b* are for light ${values.light}, which Tonebench does not compute; the spectrum is used.`,
  "readings-contradiction": (values) =>
    `${at(values)}the file states the ${what(values)} in two different ways.`,
  "readings-unclear": (values) =>
    `The ${what(values)} “${values.text}” was not understood, so it is asked for.`,
  "readings-cgats-order": (values) => `${at(values)}${values.mark} stands where it must not.`,
  "readings-cgats-no-format": (values) => `${at(values)}the data begin without a list of their fields.`,
  "readings-cgats-cut-short": () => "The file is cut short: a table does not end.",
  "readings-cgats-count": (values) =>
    `${at(values)}${values.keyword} must be one whole number; the file says “${values.stated}”.`,
  "readings-cgats-count-differs": ({ keyword, stated, found }) =>
    `${keyword} says ${stated}, but there are ${found}. The file may be cut short.`,
  "readings-cgats-row-length": (values) =>
    `${at(values)}there are ${values.found} values for ${values.wanted} fields.`,
  "readings-cgats-sets-not-stated": () =>
    "The file does not say how many rows it has, so nobody can tell whether some are missing.",
  "readings-table-passed-over": ({ rows }) =>
    `A table of ${rows} ${rows === 1 ? "row" : "rows"} holds no readings and was passed over.`,
  "readings-xml-declares-a-type": (values) =>
    `${at(values)}the file declares a document type of its own. Such files are not opened.`,
  "readings-xml-not-well-formed": (values) =>
    `${at(values)}the file is not well-formed XML; it may be cut short.`,
  "readings-xml-too-deep": () => "The file's elements are nested too deeply for a file of readings.",
  "readings-xml-not-one-root": () => "The file is not well-formed XML: it does not have one root element.",
  "readings-xml-not-cxf": ({ name }) => `This is XML, but not CxF3: its first element is “${name}”.`,
  "readings-specification-twice": ({ name }) => `Two colour specifications have the same id: ${name}.`,
  "readings-specification-missing": ({ name }) =>
    `The colour specification ${name} is named and not in the file, so its conditions are asked for.`,
  "readings-lab-beside-spectra": (values) =>
    `${at(values)}the spectrum is used; ${values.count} other ${values.count === 1 ? "value" : "values"} of colour beside it ${values.count === 1 ? "was" : "were"} left out.`,
  "readings-values-elsewhere": ({ count }) =>
    `${count} ${count === 1 ? "reading stands" : "readings stand"} outside the objects of the file and ${count === 1 ? "was" : "were"} left out.`,
  "readings-not-answered": (values) => `${at(values)}the ${what(values)} of this reading is not known yet.`,
  "readings-unlike": (values) =>
    `${at(values)}the ${what(values)} is not that of the other readings, so they are not compared.`,
  "readings-pair-missing": () => "A pair lacks a reading, or is one reading twice.",
  "readings-used-twice": () => "A reading is part of two pairs.",
  "readings-objects-passed-over": ({ count }) =>
    `${count} ${count === 1 ? "object holds no reading and was" : "objects hold no reading and were"} passed over.`,
};

/** Every code that has a sentence here. */
export const READINGS_CODES: readonly string[] = Object.keys(SENTENCES);

/** A problem or warning of a readings file in one or two sentences. An unknown code is said as it is. */
export function readingsSentence({ code, where, values = {} }: Problem): string {
  const sentence = SENTENCES[code]?.(values);
  if (sentence === undefined) return where === "" ? `${code}.` : `${code}: ${where}.`;
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
