/** The questions of the command line answered: the engine's work in this process, reported. */
import loadHighs from "highs";
import { FIRST_OFF_ID, withFirstOff } from "../engine/decisions/firstOffRecord.ts";
import { preparedSearch } from "../engine/decisions/mixSearchWork.ts";
import { learnedFrom } from "../engine/decisions/posteriorOf.ts";
import { recovery } from "../engine/decisions/recoverWork.ts";
import { plannedTests } from "../engine/decisions/testPlanWork.ts";
import { solveProgram } from "../engine/mixSolverWork.ts";
import type { Documents } from "../job/documents.ts";
import { namedLine, namedPlace } from "./names.ts";
import type { Question } from "./options.ts";
import { mixesReport, type Report, recoverReport, testsReport } from "./reports.ts";

/** Seconds after which the best plan found is printed with its gap. Invented default. */
const SECONDS_LIMIT = 120;

async function mixes(documents: Documents, placeName: string | null): Promise<Report | string> {
  const place = namedPlace(documents, placeName);
  if (typeof place === "string") return place;
  const prepared = preparedSearch(documents, place, learnedFrom(documents.library));
  const answer =
    "program" in prepared
      ? prepared.finish(solveProgram(await loadHighs(), prepared.program, SECONDS_LIMIT))
      : prepared;
  if (answer.ok) return mixesReport(documents, answer);
  const faults = answer.faults.map(({ code }) => code).join(", ");
  if (faults !== "") return `the rules of ${place.name} contradict each other: ${faults}`;
  return answer.impossible ? "no plan keeps the rules" : "no plan was found in time";
}

function recover(documents: Documents, question: Extract<Question, { kind: "recover" }>): Report | string {
  const line = namedLine(documents, question.line);
  if (typeof line === "string") return line;
  const place = namedPlace(documents, question.place);
  if (typeof place === "string") return place;
  const { deltaL, pairCount, halftonesAllowed } = question;
  const posterior = learnedFrom(documents.library);
  const read =
    deltaL === null
      ? { ok: true as const, documents }
      : withFirstOff(documents, line, place, { deltaL, pairCount }, posterior);
  if (!read.ok)
    return `the line cannot be printed as chosen: ${read.problems.map(({ code }) => code).join(", ")}`;
  const answer = recovery(
    read.documents,
    {
      lineId: line.id,
      placeId: place.id,
      halftonesAllowed,
      ...(deltaL === null ? {} : { firstOffId: FIRST_OFF_ID }),
    },
    deltaL === null ? posterior : learnedFrom(read.documents.library),
  );
  if (!answer.ok)
    return `the line cannot be recovered: ${answer.problems.map(({ code }) => code).join(", ")}`;
  return recoverReport(documents, answer);
}

/** The report, or one sentence that says why there is none. */
export async function decide(
  documents: Documents,
  question: Exclude<Question, { kind: "matrix" }>,
): Promise<Report | string> {
  if (question.kind === "mixes") return mixes(documents, question.place);
  if (question.kind === "recover") return recover(documents, question);
  return testsReport(documents, plannedTests(documents, learnedFrom(documents.library), question.today));
}
