/** Numbers as files write them: with a point or a comma, never guessed from half a word. */

export type DecimalSign = "." | ",";

const POINT_NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3})?$/i;
const LONGEST_NUMBER = 40;

/** The number that `cell` writes with this decimal sign, a percent sign at its end left aside; null where it is none. */
export function writtenNumber(cell: string, decimal: DecimalSign): number | null {
  const trimmed = cell.trim();
  if (trimmed.length > LONGEST_NUMBER) return null;
  const bare = trimmed.replace(/\s*%$/, "").replace(/^\u2212/, "-");
  if (decimal === "," && bare.includes(".")) return null;
  const pointed = decimal === "," ? bare.replace(",", ".") : bare;
  if (!POINT_NUMBER.test(pointed)) return null;
  const number = Number(pointed);
  return Number.isFinite(number) ? number : null;
}

/**
 * The decimal sign of a table's number cells: a comma where some have a comma and none has a point, else a point.
 * Cells of both kinds leave the commas unreadable, so those rows are refused by name.
 */
export function decimalSignOf(cells: Iterable<string>): DecimalSign {
  let comma = false;
  for (const cell of cells) {
    if (cell.includes(".")) return ".";
    if (/\d,\d/.test(cell)) comma = true;
  }
  return comma ? "," : ".";
}
