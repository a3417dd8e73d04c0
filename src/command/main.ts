/** The command-line twin: `npm run plan -- FILE [--csv]` prints the predicted matrix of an exported job. */
import { readFile } from "node:fs/promises";
import { readJobArchive } from "../exchange/jobArchive.ts";
import type { Problem } from "../job/problem.ts";
import { matrixCsv, matrixJson } from "./matrixText.ts";
import { readOptions } from "./options.ts";
import { plannedMatrix } from "./plannedMatrix.ts";

const DONE = 0;
const BAD_INPUT = 2;

/** One line on standard error, whatever the message holds. */
function refuse(message: string): number {
  process.stderr.write(`plan: ${message.replace(/\s+/g, " ").trim()}\n`);
  return BAD_INPUT;
}

function refuseProblems(file: string, problems: readonly Problem[]): number {
  const [first, ...rest] = problems;
  if (first === undefined) return refuse(`${file}: cannot be used`);
  const detail = first.detail === undefined ? "" : ` (${first.detail})`;
  const more = rest.length === 0 ? "" : `; and ${rest.length} more`;
  return refuse(`${file}: ${first.where === "" ? "file" : first.where}: ${first.code}${detail}${more}`);
}

/** Runs the command with the arguments after its name. Returns the exit status: 0, or 2 for bad input. */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args);
  if (typeof options === "string") return refuse(options);
  const { file, format } = options;
  let text: string;
  try {
    text = await readFile(file, "utf8");
  } catch (error) {
    return refuse(`${file}: cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  const reading = readJobArchive(text);
  if (!reading.ok) return refuseProblems(file, reading.problems);
  const matrix = plannedMatrix(reading.documents);
  if (!matrix.ok) return refuseProblems(file, matrix.problems);
  const print = format === "csv" ? matrixCsv : matrixJson;
  process.stdout.write(print(reading.documents.job, matrix.viewing, matrix.rows));
  return DONE;
}
