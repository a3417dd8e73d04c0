/** Predictions of the chosen prints and of nothing else: one request per place and candidate, one after the other. */
import { useEffect, useMemo, useState } from "react";
import {
  cellKey,
  type MatrixCell,
  type MatrixRequest,
  type PredictionEngine,
} from "../../engine/protocol.ts";
import { lineBand } from "../../job/approvedReference.ts";
import { type ChosenPrint, chosenPrint } from "../../job/chosenPrint.ts";
import type { Documents } from "../../job/documents.ts";
import { linesAt } from "../../job/lookup.ts";
import { useLessons } from "../lessons.tsx";
import { useEngine } from "../services.tsx";
import { type ChosenState, runLineKey } from "./runLines.ts";

interface Work {
  readonly placeId: string;
  readonly request: MatrixRequest;
}

interface Plan {
  readonly prints: ReadonlyMap<string, ChosenPrint>;
  readonly work: readonly Work[];
}

interface Answers {
  readonly plan: Plan;
  readonly cells: ReadonlyMap<string, MatrixCell>;
  readonly failed: boolean;
}

function planOf(documents: Documents): Plan {
  const { job } = documents;
  const prints = new Map<string, ChosenPrint>();
  const work: Work[] = [];
  for (const place of job.places) {
    const byCandidate = new Map<string, MatrixRequest>();
    for (const line of linesAt(job, place)) {
      const print = chosenPrint(documents, line, place);
      prints.set(runLineKey(line.id, place.id), print);
      if (print.kind !== "ready") continue;
      const { candidate, garment, mix, application, keys, itemKeys, setUpKey } = print;
      const before = byCandidate.get(candidate.id);
      byCandidate.set(candidate.id, {
        rows: [
          ...(before?.rows ?? []),
          { lineId: line.id, garment, keys, band: lineBand(documents, line, place).band },
        ],
        columns: [{ candidateId: candidate.id, mix, application, itemKeys, setUpKey }],
        viewing: job.viewing,
        band: place.band,
      });
    }
    for (const request of byCandidate.values()) work.push({ placeId: place.id, request });
  }
  return { prints, work };
}

/** Cells by line and place; null where a newer request overtook one of these. */
async function ask(
  engine: PredictionEngine,
  work: readonly Work[],
  isWanted: () => boolean,
): Promise<Map<string, MatrixCell> | null> {
  const cells = new Map<string, MatrixCell>();
  for (const { placeId, request } of work) {
    const answer = isWanted() ? await engine.predictMatrix(request) : null;
    if (answer === null) return null;
    for (const { lineId } of request.rows) {
      const cell = answer.get(cellKey(lineId, request.columns[0]?.candidateId ?? ""));
      if (cell !== undefined) cells.set(runLineKey(lineId, placeId), cell);
    }
  }
  return cells;
}

function stateOf(print: ChosenPrint, cell: MatrixCell | undefined, answers: Answers | null): ChosenState {
  if (print.kind === "none") return { kind: "none" };
  if (print.kind === "refused") return { kind: "refused", problems: print.problems };
  if (cell !== undefined) return { kind: "predicted", cell };
  return { kind: answers?.failed ? "failed" : "pending" };
}

/** What is known of each chosen print, by `runLineKey`. A signature changes none of it and asks nothing anew. */
export function useChosenStates(documents: Documents): ReadonlyMap<string, ChosenState> {
  const engine = useEngine();
  const [answers, setAnswers] = useState<Answers | null>(null);
  const { job, library } = documents;
  const { lessons } = useLessons();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts that a prediction is made of; the ledgers are not among them
  const plan = useMemo(
    () => planOf(documents),
    [
      job.lines,
      job.places,
      job.mixes,
      job.choices,
      job.viewing,
      library.shelf,
      library.garmentLots,
      library.testPrints,
      library.approvals,
      library.pots,
      library.potEntries,
      lessons,
    ],
  );
  useEffect(() => {
    let isWanted = true;
    ask(engine, plan.work, () => isWanted)
      .then((cells) => {
        if (isWanted && cells !== null) setAnswers({ plan, cells, failed: false });
      })
      .catch(() => {
        if (isWanted) setAnswers({ plan, cells: new Map(), failed: true });
      });
    return () => {
      isWanted = false;
    };
  }, [engine, plan]);

  return useMemo(() => {
    const current = answers?.plan === plan ? answers : null;
    const states = new Map<string, ChosenState>();
    for (const [key, print] of plan.prints) states.set(key, stateOf(print, current?.cells.get(key), current));
    return states;
  }, [answers, plan]);
}
