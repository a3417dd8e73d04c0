/** Splits a CGATS.17 text (ISO 28178) into its tables: keywords, field names and rows, with their line numbers. */
import type { Problem } from "../../job/problem.ts";
import { LONGEST_KEYWORD_VALUE, MOST_COLUMNS, MOST_LINES, quoted } from "./limits.ts";

export interface CgatsLine {
  readonly line: number;
  /** Parted by blanks and tabs, quotes respected, comments left out. */
  readonly words: readonly string[];
  /** Parted by tabs alone, where there are any: names may then hold blanks and cells may be empty. */
  readonly tabbed: readonly string[] | null;
}

export interface CgatsTable {
  readonly keywords: readonly { readonly name: string; readonly value: string }[];
  readonly fields: readonly string[];
  readonly rows: readonly CgatsLine[];
  /** NUMBER_OF_FIELDS and NUMBER_OF_SETS as stated; null where they are not. */
  readonly fieldCount: number | null;
  readonly setCount: number | null;
}

export type CgatsTables =
  | { readonly ok: true; readonly tables: readonly CgatsTable[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Whether the text has a mark that every such file has. */
export function looksLikeCgats(text: string): boolean {
  return /^[ \t]*BEGIN_DATA(?:_FORMAT)?\b/im.test(text);
}

/** The words of a line: "quoted ones" whole, a doubled quote within them one quote, all after # a comment. */
export function wordsOf(line: string): string[] {
  const words: string[] = [];
  const pattern = /\s*(?:"((?:[^"]|"")*)"|#.*|([^\s"#]+)|("))/gy;
  for (const [, inQuotes, plain, loneQuote] of line.matchAll(pattern)) {
    if (inQuotes !== undefined) words.push(inQuotes.replaceAll('""', '"'));
    else if (plain !== undefined) words.push(plain);
    else if (loneQuote !== undefined) words.push(loneQuote);
    else break;
  }
  return words;
}

/** The cells of a line between its tabs, outer quotes taken off; null where there is no tab, or a comment to judge. */
function tabbedCells(line: string): string[] | null {
  if (!line.includes("\t") || line.includes("#")) return null;
  return line.split("\t").map((cell) => {
    const bare = cell.trim();
    return bare.length > 1 && bare.startsWith('"') && bare.endsWith('"') ? bare.slice(1, -1) : bare;
  });
}

/** Reads line by line; anything out of order refuses the file. */
export function cgatsTables(text: string): CgatsTables {
  const tables: CgatsTable[] = [];
  let keywords: { name: string; value: string }[] = [];
  let fields: string[] | null = null;
  let rows: CgatsLine[] = [];
  let counts: { fields: number | null; sets: number | null } = { fields: null, sets: null };
  let state: "keywords" | "format" | "data" = "keywords";
  const refuse = (code: string, line: number, values: Problem["values"] = {}): CgatsTables => ({
    ok: false,
    problems: [{ code, where: `tables[${tables.length}]`, values: { line, ...values } }],
  });

  const lines = text.split(/\r\n|\n|\r/);
  if (lines.length > MOST_LINES) return refuse("readings-too-many-lines", MOST_LINES, { most: MOST_LINES });
  for (const [index, content] of lines.entries()) {
    const line = index + 1;
    const words = wordsOf(content);
    const [first] = words;
    if (first === undefined) continue;
    const mark = first.toUpperCase();
    if (state === "keywords" && mark === "BEGIN_DATA_FORMAT") {
      if (fields !== null) return refuse("readings-cgats-order", line, { mark });
      fields = [];
      state = "format";
      words.shift();
    }
    if (state === "format") {
      for (const word of words) {
        if (word.toUpperCase() === "END_DATA_FORMAT") state = "keywords";
        else if (state === "format") fields?.push(word);
        else return refuse("readings-cgats-order", line, { mark: quoted(word) });
      }
      if ((fields?.length ?? 0) > MOST_COLUMNS)
        return refuse("readings-too-many-columns", line, { most: MOST_COLUMNS });
      continue;
    }
    if (state === "data") {
      if (mark === "END_DATA") {
        const { fields: fieldCount, sets: setCount } = counts;
        tables.push({ keywords, fields: fields ?? [], rows, fieldCount, setCount });
        keywords = [];
        fields = null;
        rows = [];
        counts = { fields: null, sets: null };
        state = "keywords";
      } else if (/^(?:BEGIN|END)_DATA/.test(mark)) return refuse("readings-cgats-order", line, { mark });
      else rows.push({ line, words, tabbed: tabbedCells(content) });
      continue;
    }
    if (mark === "BEGIN_DATA") {
      if (fields === null) return refuse("readings-cgats-no-format", line);
      if (words.length > 1) return refuse("readings-cgats-order", line, { mark: quoted(words[1] ?? "") });
      state = "data";
    } else if (mark.startsWith("END_DATA")) return refuse("readings-cgats-order", line, { mark });
    else if (mark === "NUMBER_OF_FIELDS" || mark === "NUMBER_OF_SETS") {
      const stated = words[1] ?? "";
      const kind = mark === "NUMBER_OF_FIELDS" ? "fields" : "sets";
      const count = /^\d{1,7}$/.test(stated) ? Number(stated) : null;
      if (count === null || (counts[kind] !== null && counts[kind] !== count))
        return refuse("readings-cgats-count", line, { keyword: mark, stated: quoted(stated) });
      counts[kind] = count;
    } else keywords.push({ name: mark, value: words.slice(1).join(" ").slice(0, LONGEST_KEYWORD_VALUE) });
  }
  if (state !== "keywords" || fields !== null) return refuse("readings-cgats-cut-short", lines.length);
  return { ok: true, tables };
}
