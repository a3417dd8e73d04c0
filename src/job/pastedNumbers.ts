/** Numbers out of pasted text: blanks, tabs, line ends, semicolons or commas between them, decimal commas understood. */

export type PastedNumbers =
  | { readonly ok: true; readonly numbers: number[] }
  | { readonly ok: false; readonly word: string; readonly position: number };

/** What parts numbers in any case; a comma alone may also be a decimal sign. */
const PARTING = /\s*[;\s]\s*|,\s+/;

function parts(text: string): string[] {
  return text.split(PARTING).filter((word) => word !== "");
}

/** Lines of "400,12" are wavelength and value, not decimals: what stands before the commas rises through the visible. */
function areColumns(words: readonly string[]): boolean {
  const before = words.map((word) => Number.parseInt(word, 10));
  return before.every((nm, i) => nm >= 300 && nm <= 900 && (i === 0 || nm > (before[i - 1] ?? 0)));
}

/** Whether the commas in the text are decimal commas: no point anywhere, and something else parts the numbers. */
function hasDecimalCommas(text: string): boolean {
  if (text.includes(".") || !text.includes(",")) return false;
  const words = parts(text).map((word) => word.replace(/,$/, ""));
  return words.length > 1 && words.every((word) => /^[+-]?\d+(,\d+)?%?$/.test(word)) && !areColumns(words);
}

/** The numbers in order, or the first word that is none with its place in the row, counted from 1. */
export function readNumbers(text: string): PastedNumbers {
  const trimmed = text.trim();
  const decimal = hasDecimalCommas(trimmed);
  const words = decimal
    ? parts(trimmed).map((word) => word.replace(/,$/, "").replace(",", "."))
    : parts(trimmed.replaceAll(",", " "));
  const numbers: number[] = [];
  for (const [index, word] of words.entries()) {
    const digits = word.replace(/%$/, "").replace(/^\u2212/, "-");
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(digits))
      return { ok: false, word, position: index + 1 };
    numbers.push(Number(digits));
  }
  return { ok: true, numbers };
}
