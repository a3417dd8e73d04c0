/** How much a readings file may hold. All are invented: far above what an instrument writes, and read within a second. */

/** A thousand samples of 36 bands are about 300 kB as text and 500 kB as XML. */
export const LARGEST_FILE_BYTES = 4_000_000;
/** XML takes several times as long to read as a table of the same length; this is about a thousand spectra. */
export const LONGEST_XML = 1_000_000;
export const MOST_SAMPLES = 5_000;
export const MOST_LINES = 100_000;
export const LONGEST_KEYWORD_VALUE = 500;
export const MOST_COLUMNS = 1_000;
/** Rows times columns of one table. */
export const MOST_CELLS = 500_000;
/** A sample's name beyond this is cut, with a warning. */
export const LONGEST_NAME = 120;
/** Deeper nesting than CxF3 ever has. */
export const DEEPEST_XML = 40;
/** What is quoted from a file in a problem. */
export const LONGEST_QUOTE = 40;

/** A few characters of a file's text, fit to stand in a sentence. */
export function quoted(text: string): string {
  const flat = text.replace(/\s+/g, " ").trim();
  return flat.length > LONGEST_QUOTE ? `${flat.slice(0, LONGEST_QUOTE)}…` : flat;
}
