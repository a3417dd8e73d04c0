/** Prints a table as CSV. */
import Papa from "papaparse";

/**
 * The table with a header line, fields as the first row names them. A text that a spreadsheet would take for a
 * formula gets an apostrophe before it; numbers stay numbers.
 */
export function csvText(table: readonly Readonly<Record<string, string | number>>[]): string {
  return `${Papa.unparse([...table], { escapeFormulae: true, newline: "\n" })}\n`;
}
