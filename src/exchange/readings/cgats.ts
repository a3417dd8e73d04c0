/** Reads CGATS.17 text (ISO 28178): spectral, Lab or XYZ columns of every table, with the conditions it states. */
import type { Problem } from "../../job/problem.ts";
import { type CgatsTable, cgatsTables } from "./cgatsTables.ts";
import type { ConditionTexts } from "./conditions.ts";
import { finishSamples } from "./finishSamples.ts";
import { guessRoles } from "./guessRoles.ts";
import { MOST_CELLS, quoted } from "./limits.ts";
import type { RawSample } from "./rawSample.ts";
import { type ReadingsOptions, type ReadingsResult, type ReflectanceScale, refuseAll } from "./readSample.ts";
import { rowSamples, type TableRow } from "./rowSamples.ts";
import {
  type ColumnsOrProblems,
  type PairedSpectrum,
  type SpectrumColumn,
  tableColumns,
} from "./tableColumns.ts";

/**
 * Keywords that state each condition. WEIGHTING_FUNCTION and MEASUREMENT_GEOMETRY are the standard's (from memory);
 * the others are habits seen in public files (common practice, no source).
 */
const LIGHT_KEYWORDS = ["ILLUMINATION_NAME", "ILLUMINANT"];
const OBSERVER_KEYWORDS = ["OBSERVER_ANGLE", "OBSERVER"];
const FILTER_KEYWORDS = ["FILTER", "MEASUREMENT_SOURCE", "MEASUREMENT_CONDITION", "POLARIZATION"];
const GEOMETRY_KEYWORDS = ["MEASUREMENT_GEOMETRY", "GEOMETRY"];

/** What the keywords of a table say. A table says it for itself: what stood above another one is not carried over. */
function statedIn({ keywords }: CgatsTable): ConditionTexts {
  const light: string[] = [];
  const observer: string[] = [];
  const geometry: string[] = [];
  for (const { name, value } of keywords) {
    if (LIGHT_KEYWORDS.includes(name)) light.push(value);
    if (OBSERVER_KEYWORDS.includes(name)) observer.push(value);
    if (GEOMETRY_KEYWORDS.includes(name)) geometry.push(value);
    if (name === "WEIGHTING_FUNCTION") {
      if (/ILLUMINANT/i.test(value)) light.push(value.replace(/OBSERVER.*$/i, ""));
      if (/OBSERVER/i.test(value)) observer.push(value.replace(/^.*?OBSERVER/is, ""));
    }
    if (name === "MEASUREMENT_SOURCE") {
      light.push(...[...value.matchAll(/\bIllumination\s*=\s*(\S+)/gi)].map((match) => match[1] ?? ""));
      observer.push(...[...value.matchAll(/\bObserverAngle\s*=\s*(\S+)/gi)].map((match) => match[1] ?? ""));
    }
  }
  const isPolarised = keywords.some(
    ({ name, value }) => FILTER_KEYWORDS.includes(name) && /\bM3\b|\bPOL/i.test(value),
  );
  return { light, observer, geometry: isPolarised ? [`polarising filter ${geometry.join(" ")}`] : geometry };
}

/** Pairs of a wavelength's column and its value's, as the standard's own SPECTRAL_NM, SPECTRAL_PCT (or _DEC). */
function spectralPairs(fields: readonly string[]): PairedSpectrum | "contradicting" | null {
  const names = fields.map((field) => field.toUpperCase());
  const columns: SpectrumColumn[] = [];
  const scales = new Set<ReflectanceScale>();
  for (const [column, name] of names.entries()) {
    const value = names[column + 1];
    if (name !== "SPECTRAL_NM" || (value !== "SPECTRAL_PCT" && value !== "SPECTRAL_DEC")) continue;
    columns.push({ column: column + 1, nm: { column } });
    scales.add(value === "SPECTRAL_PCT" ? "percent" : "fraction");
  }
  const [scale, other] = scales;
  if (other !== undefined) return "contradicting";
  return scale === undefined ? null : { columns, scale };
}

/** The columns of a table; null where it holds no readings. */
function columnsOf(fields: readonly string[], where: string): ColumnsOrProblems | null {
  const pairs = spectralPairs(fields);
  if (pairs === "contradicting")
    return { ok: false, problems: [{ code: "readings-contradiction", where, values: { what: "scale" } }] };
  const { roles, hasReadings } = guessRoles(fields);
  return hasReadings || pairs !== null ? tableColumns(fields, roles, where, pairs) : null;
}

/** The rows as cells: parted by tabs or by blanks, whichever gives one cell for each field. */
function rowsOf(table: CgatsTable, index: number): { rows: TableRow[]; problems: Problem[] } {
  const wanted = table.fields.length;
  const rows: TableRow[] = [];
  const problems: Problem[] = [];
  for (const [row, { line, words, tabbed }] of table.rows.entries()) {
    const where = `tables[${index}].rows[${row}]`;
    const cells = [tabbed, words].find((each) => each?.length === wanted);
    if (cells === undefined || cells === null) {
      const values = { line, found: words.length, wanted };
      problems.push({ code: "readings-cgats-row-length", where, values });
    } else rows.push({ line, where, cells });
  }
  return { rows, problems };
}

/** What a table's own counts contradict. */
function countProblems(table: CgatsTable, where: string): Problem[] {
  const { fields, rows, fieldCount, setCount } = table;
  const problems: Problem[] = [];
  const check = (keyword: string, stated: number | null, found: number) => {
    if (stated !== null && stated !== found)
      problems.push({ code: "readings-cgats-count-differs", where, values: { keyword, stated, found } });
  };
  check("NUMBER_OF_FIELDS", fieldCount, fields.length);
  check("NUMBER_OF_SETS", setCount, rows.length);
  return problems;
}

/** The samples of all tables of a CGATS text, or why none is taken. */
export function readCgats(text: string, options: ReadingsOptions): ReadingsResult {
  const split = cgatsTables(text);
  if (!split.ok) return refuseAll(split.problems);
  const samples: RawSample[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  for (const [index, table] of split.tables.entries()) {
    const where = `tables[${index}]`;
    if (table.rows.length * table.fields.length > MOST_CELLS) {
      problems.push({ code: "readings-too-many-cells", where, values: { most: MOST_CELLS } });
      continue;
    }
    problems.push(...countProblems(table, where));
    const found = columnsOf(table.fields, where);
    if (found === null) {
      warnings.push({ code: "readings-table-passed-over", where, values: { rows: table.rows.length } });
      continue;
    }
    if (!found.ok) {
      problems.push(...found.problems);
      continue;
    }
    const { rows, problems: rowProblems } = rowsOf(table, index);
    problems.push(...rowProblems);
    if (table.setCount === null) warnings.push({ code: "readings-cgats-sets-not-stated", where });
    const { leftOut } = guessRoles(table.fields);
    if (leftOut.length > 0) {
      const headings = quoted(leftOut.join(", "));
      warnings.push({ code: "readings-columns-left-out", where, values: { headings } });
    }
    const read = rowSamples(rows, found.columns, index, statedIn(table));
    samples.push(...read.samples);
    problems.push(...read.problems);
    warnings.push(...read.warnings);
  }
  if (problems.length > 0) return refuseAll(problems);
  return finishSamples("cgats", samples, warnings, options);
}
