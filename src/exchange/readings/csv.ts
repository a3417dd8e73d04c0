/** Reads a plain table of Lab, XYZ or spectra: one row a sample, headings above, any usual separator. */
import Papa from "papaparse";
import type { Problem } from "../../job/problem.ts";
import { NOTHING_STATED } from "./conditions.ts";
import { applyMatching, type ColumnMatching } from "./csvColumns.ts";
import { finishSamples } from "./finishSamples.ts";
import { guessRoles } from "./guessRoles.ts";
import { MOST_CELLS, MOST_COLUMNS, quoted } from "./limits.ts";
import { type ReadingsOptions, type ReadingsResult, refuse, refuseAll } from "./readSample.ts";
import { rowSamples, type TableRow } from "./rowSamples.ts";
import { tableColumns } from "./tableColumns.ts";

/**
 * Tried in this order; the first under which a heading line is found is taken. The comma is last, since it may also be
 * the decimal sign in a file parted by anything else.
 */
const SEPARATORS = ["\t", ";", "|", ","] as const;
/** Instruments write some lines about themselves above the headings (common practice, no source). */
const LAST_HEADING_ROW = 30;

export interface FoundHeadings {
  readonly separator: string;
  /** Row of the headings, counted from 0. */
  readonly row: number;
  readonly headings: readonly string[];
}

const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");

/** The first lines of a text, as far as headings are looked for; a quoted cell may break over several. */
function beginningOf(text: string): string {
  let at = 0;
  for (let i = 0; i < LAST_HEADING_ROW && at >= 0; i++) at = text.indexOf("\n", at + 1);
  return at < 0 ? text : text.slice(0, at);
}

/** Cells of a line without the empty ones at its end, which spreadsheets add. */
function withoutTail(cells: readonly string[]): string[] {
  let length = cells.length;
  while (length > 0 && (cells[length - 1] ?? "").trim() === "") length--;
  return cells.slice(0, length);
}

/** The line of headings: the first that has readings by its names, or all that the matching wants. */
export function findHeadings(text: string, matching: ColumnMatching | null): FoundHeadings | null {
  const beginning = beginningOf(text.replace(/\r\n?/g, "\n"));
  for (const separator of SEPARATORS) {
    const { data } = Papa.parse<string[]>(beginning, { delimiter: separator, newline: "\n" });
    for (const [row, cells] of data.entries()) {
      const headings = withoutTail(cells).map((cell) => cell.trim());
      if (headings.length > MOST_COLUMNS) continue;
      const fits =
        matching === null
          ? guessRoles(headings).hasReadings
          : applyMatching(matching, headings).missing.length === 0;
      if (fits) return { separator, row, headings };
    }
  }
  return null;
}

/** Why there are no headings: what a remembered matching misses most closely, or that nothing was understood. */
function noHeadings(text: string, matching: ColumnMatching | null): ReadingsResult {
  const guessed = matching === null ? null : findHeadings(text, null);
  if (matching === null || guessed === null) return refuse("readings-no-headings", "");
  const { missing } = applyMatching(matching, guessed.headings);
  const headings = quoted(missing.join(", "));
  return refuse("readings-matching-misses", "", { headings, line: guessed.row + 1 });
}

/**
 * The samples of a plain table. `matching` null takes what the headings suggest; a remembered matching is applied to
 * the headings wherever they stand now, and refused where one of its columns is gone.
 */
export function readCsv(
  text: string,
  matching: ColumnMatching | null,
  options: ReadingsOptions,
): ReadingsResult {
  const found = findHeadings(text, matching);
  if (found === null) return noHeadings(text, matching);
  const { separator, row: headingRow, headings } = found;
  const { data, errors } = Papa.parse<string[]>(text.replace(/\r\n?/g, "\n"), {
    delimiter: separator,
    newline: "\n",
    preview: Math.ceil(MOST_CELLS / Math.max(headings.length, 1)) + headingRow + 2,
  });
  const [error] = errors;
  if (error !== undefined) return refuse("readings-csv-quotes", "", { line: (error.row ?? 0) + 1 });
  if ((data.length - headingRow - 1) * headings.length > MOST_CELLS)
    return refuse("readings-too-many-cells", "", { most: MOST_CELLS });

  const guessed = guessRoles(headings);
  const roles = matching === null ? guessed.roles : applyMatching(matching, headings).roles;
  const columns = tableColumns(headings, roles, "");
  if (!columns.ok) return refuseAll(columns.problems);
  const rows: TableRow[] = [];
  const problems: Problem[] = [];
  for (const [index, cells] of data.entries()) {
    if (index <= headingRow || isBlank(cells)) continue;
    const line = index + 1;
    const where = `rows[${index - headingRow - 1}]`;
    const filled = withoutTail(cells).length;
    if (filled > headings.length) {
      const values = { line, found: filled, wanted: headings.length };
      problems.push({ code: "readings-row-too-long", where, values });
    } else rows.push({ cells, line, where });
  }
  const warnings: Problem[] = [];
  if (headingRow > 0)
    warnings.push({ code: "readings-lines-before-headings", where: "", values: { count: headingRow } });
  if (matching === null && guessed.leftOut.length > 0) {
    const values = { headings: quoted(guessed.leftOut.join(", ")) };
    warnings.push({ code: "readings-columns-left-out", where: "", values });
  }
  const read = rowSamples(rows, columns.columns, 0, NOTHING_STATED);
  problems.push(...read.problems);
  if (problems.length > 0) return refuseAll(problems);
  warnings.push(...read.warnings);
  return finishSamples("csv", read.samples, warnings, { scale: options.scale ?? matching?.scale ?? null });
}
