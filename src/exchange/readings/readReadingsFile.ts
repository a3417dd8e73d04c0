/** One entry for a file of colour readings: tells its format from its content and hands it to its reader. */
import type { Problem } from "../../job/problem.ts";
import { readCgats } from "./cgats.ts";
import { looksLikeCgats } from "./cgatsTables.ts";
import { readCsv } from "./csv.ts";
import type { ColumnMatching } from "./csvColumns.ts";
import { decodeText } from "./decodeText.ts";
import { NOTHING_ANSWERED, type ReadingsOptions, type ReadingsResult } from "./readSample.ts";

export interface FileReading {
  readonly name: string;
  readonly result: ReadingsResult;
}

/**
 * The readings of a file's bytes, whole or not at all; never throws. The name only travels along: what is inside
 * tells the format. `matching` is for plain tables (`guessColumns`, or what the shop remembered); null takes what the
 * headings suggest. Asynchronous only because the reader of XML is loaded when it is needed.
 */
export async function readReadingsFile(
  name: string,
  bytes: Uint8Array,
  matching: ColumnMatching | null = null,
  options: ReadingsOptions = NOTHING_ANSWERED,
): Promise<FileReading> {
  const decoded = decodeText(bytes);
  if (!decoded.ok) return { name, result: decoded };
  const { text } = decoded;
  const result = text.trimStart().startsWith("<")
    ? (await import("./cxf3.ts")).readCxf3(text.trimStart(), options)
    : looksLikeCgats(text)
      ? readCgats(text, options)
      : readCsv(text, matching, options);
  return { name, result: withWarnings(result, decoded.warnings) };
}

function withWarnings(result: ReadingsResult, warnings: readonly Problem[]): ReadingsResult {
  return result.ok ? { ...result, warnings: [...warnings, ...result.warnings] } : result;
}
