/** What must hold of a reader whatever the bytes: no throw, no hang, all of the file or nothing, a sentence for each code. */
import fc from "fast-check";
import { readCgats } from "../../../src/exchange/readings/cgats.ts";
import { readCsv } from "../../../src/exchange/readings/csv.ts";
import { readCxf3 } from "../../../src/exchange/readings/cxf3.ts";
import { decodeText } from "../../../src/exchange/readings/decodeText.ts";
import { askedFor } from "../../../src/exchange/readings/finishSamples.ts";
import { readReadingsFile } from "../../../src/exchange/readings/readReadingsFile.ts";
import {
  NOTHING_ANSWERED,
  type ReadingsResult,
  type ReadSample,
} from "../../../src/exchange/readings/readSample.ts";
import {
  geometrySchema,
  labSchema,
  reflectanceSchema,
  viewingSchema,
} from "../../../src/job/colourDocument.ts";
import type { Problem } from "../../../src/job/problem.ts";
import { READINGS_CODES, readingsSentence } from "../../../src/planner/words/readingsSentences.ts";
import { type Format, spoiled } from "./spoiledFiles.ts";

const READERS: Readonly<Record<Format, (text: string) => ReadingsResult>> = {
  cgats: (text) => readCgats(text, NOTHING_ANSWERED),
  csv: (text) => readCsv(text, null, NOTHING_ANSWERED),
  cxf3: (text) => readCxf3(text, NOTHING_ANSWERED),
};

/** What the issue allows a reader to take. */
export const LONGEST_MILLISECONDS = 1000;

/** How often each thing happened: a fuzzer all of whose files are refused at the door tests nothing. */
export interface Tally {
  taken: number;
  refused: number;
  longestMilliseconds: number;
}

export const newTally = (): Tally => ({ taken: 0, refused: 0, longestMilliseconds: 0 });

function require(holds: boolean, what: string): void {
  if (!holds) throw new Error(what);
}

function requireSentence(problem: Problem): void {
  require(READINGS_CODES.includes(problem.code), `no such code: ${problem.code}`);
  const sentence = readingsSentence(problem);
  require(!/undefined|NaN|\bnull\b/.test(
    sentence.replace(/“.*”/s, ""),
  ), `no sentence: ${JSON.stringify(problem)}`);
}

function requireSample(sample: ReadSample): void {
  const { lab, tristimulus, spectrum, light, observer, geometry } = sample;
  require(lab !== null || tristimulus !== null || spectrum !== null, "a sample without a reading");
  require(lab === null || labSchema.safeParse(lab).success, "a Lab that no document takes");
  require(spectrum === null ||
    reflectanceSchema.safeParse(spectrum.reflectance).success, "a spectrum no document takes");
  require(light === null || viewingSchema.shape.illuminant.safeParse(light).success, "an unknown light");
  require(observer === null ||
    viewingSchema.shape.observer.safeParse(observer).success, "an unknown observer");
  require(geometry === null || geometrySchema.safeParse(geometry).success, "an unknown geometry");
}

/** Rows that a warning says were passed over. */
function passedOver(warnings: readonly Problem[]): number {
  return warnings.reduce((sum, { code, values }) => {
    if (code === "readings-row-without-readings") return sum + 1;
    return code === "readings-table-passed-over" ? sum + Number(values?.rows) : sum;
  }, 0);
}

/** Lines of data of a CGATS text, counted without its reader: between the marks, neither empty nor a comment. */
function cgatsRowCount(text: string): number {
  let isData = false;
  let count = 0;
  for (const line of text.split(/\r\n|\r|\n/)) {
    const bare = line.trim();
    if (/^"?BEGIN_DATA"?(?:[\s#"]|$)/i.test(bare)) isData = true;
    else if (/^"?END_DATA"?(?:[\s#"]|$)/i.test(bare)) isData = false;
    else if (isData && bare !== "" && !bare.startsWith("#")) count++;
  }
  return count;
}

/** Lines below the headings with anything in them but separators; only for a text without quotes. */
function csvRowCount(text: string, before: number): number {
  return text
    .split(/\r\n|\r|\n/)
    .slice(before + 1)
    .filter((line) => /[^\s;,|]/.test(line)).length;
}

/** Elements with readings in a CxF text, counted without its reader: comments and literal text taken out first. */
function cxf3ValueCount(text: string): number {
  const bare = text.replace(/<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>/g, "");
  return [...bare.matchAll(/<(?:[^\s<>/:]+:)?(?:ReflectanceSpectrum|ColorCIELab|ColorCIEXYZ)(?=[\s/>])/g)]
    .length;
}

/** That no row of a taken file is unaccounted for. */
function requireWhole(format: Format, text: string, result: Extract<ReadingsResult, { ok: true }>): void {
  const { samples, warnings } = result;
  const countOf = (code: string) => warnings.find((warning) => warning.code === code)?.values?.count;
  const accounted = samples.length + passedOver(warnings);
  if (format === "cgats") {
    const rows = cgatsRowCount(text);
    require(accounted === rows, `${rows} rows of data, ${accounted} accounted for`);
  } else if (format === "csv" && !text.includes('"')) {
    const rows = csvRowCount(text, Number(countOf("readings-lines-before-headings") ?? 0));
    require(accounted >= rows, `${rows} rows, ${accounted} accounted for`);
  } else if (format === "cxf3") {
    const left = warnings.reduce((sum, { code, values }) => {
      if (code === "readings-lab-left-out") return sum + 1;
      return code === "readings-lab-beside-spectra" ? sum + Number(values?.count) : sum;
    }, 0);
    const elsewhere = Number(countOf("readings-values-elsewhere") ?? 0);
    const used = samples.reduce(
      (sum, { lab, tristimulus, spectrum }) =>
        sum + Number(spectrum !== null) + Number(lab !== null || tristimulus !== null),
      0,
    );
    const values = cxf3ValueCount(text);
    const read = used + left + elsewhere;
    require(read === values, `${values} values in the text, ${read} accounted for`);
  }
}

/** Judges one result; throws with the reason where it does not hold. */
export function judge(format: Format, text: string, result: ReadingsResult): void {
  if (!result.ok) {
    const { length } = result.problems;
    require(length > 0 && length <= 50, "refused without a reason, or with too many");
    result.problems.forEach(requireSentence);
    return;
  }
  require(result.samples.length > 0, "taken without a sample");
  result.samples.forEach(requireSample);
  result.warnings.forEach(requireSentence);
  require(JSON.stringify(result.toAsk) === JSON.stringify(askedFor(result.samples)), "asks for other things");
  requireWhole(format, text, result);
}

/** Holds for every spoiled file of a format, read by its own reader and through the one entry. */
export function neverInPart(format: Format, tally: Tally) {
  return fc.asyncProperty(spoiled(format), async (bytes) => {
    const started = performance.now();
    const entered = (await readReadingsFile("file", bytes)).result;
    const decoded = decodeText(bytes);
    const own = decoded.ok ? READERS[format](decoded.text) : null;
    const milliseconds = (performance.now() - started) / 2;
    tally.longestMilliseconds = Math.max(tally.longestMilliseconds, milliseconds);
    require(milliseconds < LONGEST_MILLISECONDS, `took ${milliseconds} ms`);
    if (own !== null && decoded.ok) judge(format, decoded.text, own);
    judge(entered.ok ? entered.format : format, decoded.ok ? decoded.text : "", entered);
    if (own?.ok === true) tally.taken++;
    else tally.refused++;
  });
}
