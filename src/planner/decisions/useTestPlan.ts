/** The test plan as views show it: asked anew when something that it rests on changes, the last one kept meanwhile. */
import { useEffect, useMemo, useState } from "react";
import type { DecisionEngine, TestsRequest } from "../../engine/decisions/decisionEngine.ts";
import type { TestsFinding } from "../../engine/decisions/decisionProtocol.ts";
import { testsBefore } from "../../job/decisions/testTerms.ts";
import type { Documents } from "../../job/documents.ts";
import { useDecisions } from "../services.tsx";
import { today } from "../state/identity.ts";

/**
 * What the day of the run leaves of a plan. `past`: it is over, so it limits nothing. `no-time`: no test can be printed and
 * rested before it. Either way the plan is that of a run that can wait.
 */
export type RunDay = "open" | "past" | "no-time";

export interface TestPlanState {
  /** The last plan; null until the first. */
  readonly finding: TestsFinding | null;
  /** Whether `finding` is the plan of the documents as they are. */
  readonly isCurrent: boolean;
  /** The best test of a plan that is still being made, as soon as it is known. */
  readonly first: { readonly lineId: string; readonly placeId: string } | null;
  readonly failed: boolean;
  readonly runDay: RunDay;
}

/** An engine that leaves so many questions unanswered in a row has been closed. */
const MOST_UNANSWERED = 5;

/** What a plan is made of: while these are the same objects, it holds. Signatures, pots and the press are not among them. */
function basisOf({ job, library }: Documents, day: string): readonly unknown[] {
  const { lines, places, mixes, choices, viewing, runStartsOn } = job;
  const { shelf, garmentLots, testPrints, goodsInChecks, slipAnswers, approvals } = library;
  return [
    day,
    job.id,
    ...[lines, places, mixes, choices, viewing, runStartsOn],
    ...[shelf, garmentLots, testPrints, goodsInChecks, slipAnswers, approvals],
  ];
}

const isSame = (one: readonly unknown[], other: readonly unknown[]) =>
  one.every((thing, index) => thing === other[index]);

export function runDayOf({ job, library }: Documents, day: string): RunDay {
  if (job.runStartsOn !== null && job.runStartsOn < day) return "past";
  return testsBefore(job, library.shelf.defaults.testing, day) === 0 ? "no-time" : "open";
}

/** Whether there is anything to weigh: a garment, and a mix of the matrix to print it with. */
export function isWeighable({ job }: Documents): boolean {
  return job.lines.length > 0 && job.places.some(({ candidates }) => candidates.length > 0);
}

interface Question {
  readonly basis: readonly unknown[];
  readonly runDay: RunDay;
  readonly isWeighable: boolean;
  readonly request: Pick<TestsRequest, "documents" | "today">;
}

function questionOf(documents: Documents, day: string): Question {
  const runDay = runDayOf(documents, day);
  const asked =
    runDay === "open" ? documents : { ...documents, job: { ...documents.job, runStartsOn: null } };
  return {
    basis: basisOf(documents, day),
    runDay,
    isWeighable: isWeighable(documents),
    request: { documents: asked, today: day },
  };
}

interface Answer {
  readonly basis: readonly unknown[];
  readonly jobId: string;
  /** Null where the engine failed. */
  readonly finding: TestsFinding | null;
}

/** The last plan of each engine: a view that is opened again shows it at once. */
const lastAnswers = new WeakMap<DecisionEngine, Answer>();

async function answerOf(
  decisions: DecisionEngine,
  request: TestsRequest,
  isWanted: () => boolean,
): Promise<TestsFinding | null> {
  // Null: a question from elsewhere came in between.
  for (let unanswered = 0; unanswered < MOST_UNANSWERED && isWanted(); unanswered++) {
    const finding = await decisions.planTests(request);
    if (finding !== null) return finding;
  }
  return null;
}

export function useTestPlan(documents: Documents): TestPlanState {
  const decisions = useDecisions();
  const [answer, setAnswer] = useState<Answer | null>(() => lastAnswers.get(decisions) ?? null);
  const [first, setFirst] = useState<TestPlanState["first"]>(null);
  const day = today();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts that a plan is made of; all other edits ask nothing anew
  const question = useMemo(() => questionOf(documents, day), basisOf(documents, day));
  const jobId = documents.job.id;

  useEffect(() => {
    const { basis, request } = question;
    const known = lastAnswers.get(decisions);
    setFirst(null);
    if (!question.isWeighable) return;
    if (known?.finding && isSame(known.basis, basis)) {
      setAnswer(known);
      return;
    }
    let isWanted = true;
    const onFirst = (test: TestPlanState["first"]) => {
      if (isWanted) setFirst(test);
    };
    answerOf(decisions, { ...request, onFirst }, () => isWanted).then(
      (finding) => {
        if (!isWanted) return;
        const found = { basis, jobId, finding };
        lastAnswers.set(decisions, found);
        setAnswer(found);
      },
      () => {
        if (isWanted) setAnswer({ basis, jobId, finding: null });
      },
    );
    return () => {
      isWanted = false;
    };
  }, [decisions, question, jobId]);

  const ofJob = answer?.jobId === jobId ? answer : null;
  const isCurrent = ofJob !== null && isSame(ofJob.basis, question.basis);
  return {
    finding: ofJob?.finding ?? null,
    isCurrent: isCurrent && ofJob.finding !== null,
    first,
    failed: isCurrent && ofJob.finding === null,
    runDay: question.runDay,
  };
}
