/** The command-line twin: `npm run plan -- FILE` prints the predicted matrix of an exported job, or what it decides. */
import { readFile } from "node:fs/promises";
import { csvText } from "../exchange/csvText.ts";
import { readJobArchive } from "../exchange/jobArchive.ts";
import { removedShelfItems } from "../exchange/removedShelfItems.ts";
import type { Documents } from "../job/documents.ts";
import type { Problem } from "../job/problem.ts";
import { decide } from "./decide.ts";
import { matrixCsv, matrixJson } from "./matrixText.ts";
import { type Options, type Question, readOptions } from "./options.ts";
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

async function printDecision(
  documents: Documents,
  question: Exclude<Question, { kind: "matrix" }>,
  { file, format }: Options,
): Promise<number> {
  const removed = removedShelfItems(documents);
  if (removed.length > 0) return refuseProblems(file, removed);
  const report = await decide(documents, question);
  if (typeof report === "string") return refuse(report);
  const { number } = documents.job;
  process.stdout.write(
    format === "csv"
      ? csvText(report.rows)
      : `${JSON.stringify({ job: number, ...report.whole }, null, 2)}\n`,
  );
  return DONE;
}

/** Runs the command with the arguments after its name. Returns the exit status: 0, or 2 for bad input. */
export async function main(args: readonly string[]): Promise<number> {
  const options = readOptions(args, new Date().toISOString().slice(0, "YYYY-MM-DD".length));
  if (typeof options === "string") return refuse(options);
  const { file, format, question } = options;
  let text: string;
  try {
    text = await readFile(file, "utf8");
  } catch (error) {
    return refuse(`${file}: cannot be read: ${error instanceof Error ? error.message : String(error)}`);
  }
  const reading = readJobArchive(text);
  if (!reading.ok) return refuseProblems(file, reading.problems);
  if (question.kind !== "matrix") return printDecision(reading.documents, question, options);
  const matrix = plannedMatrix(reading.documents);
  if (!matrix.ok) return refuseProblems(file, matrix.problems);
  const print = format === "csv" ? matrixCsv : matrixJson;
  process.stdout.write(print(reading.documents.job, matrix.viewing, matrix.rows));
  return DONE;
}
