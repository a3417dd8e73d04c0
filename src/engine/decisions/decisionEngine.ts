/** The planner's side of the decisions: a worker per kind of question, ended to cancel, and the solver's own. */
import { proxy, type Remote, releaseProxy, wrap } from "comlink";
import type { Documents } from "../../job/documents.ts";
import { latestOnly } from "../latestOnly.ts";
import { type RunningSolve, startSolve } from "../mixSolver.ts";
import type {
  MixAnswer,
  RecoverAnswer,
  RecoverAsk,
  SearchProgress,
  TestsFinding,
} from "./decisionProtocol.ts";
import type { DecisionService } from "./decisionWorker.ts";
import { withoutPhotos } from "./posteriorOf.ts";

export interface RunningSearch {
  /** Null once cancelled. */
  readonly answer: Promise<MixAnswer | null>;
  readonly cancel: () => void;
}

export interface TestsRequest {
  readonly documents: Documents;
  /** YYYY-MM-DD. */
  readonly today: string;
  /** Told of the best test as soon as it is known. */
  readonly onFirst?: (test: { readonly lineId: string; readonly placeId: string }) => void;
}

/** The decisions as the planner asks for them; `latestOnly` where a newer question overtakes a waiting one (null). */
export interface DecisionEngine {
  /** Searches mixes for one place under its rules, proven optimal where it ends in time. */
  findMixes(
    documents: Documents,
    placeId: string,
    onProgress: (progress: SearchProgress) => void,
  ): RunningSearch;
  planTests(request: TestsRequest): Promise<TestsFinding | null>;
  recover(documents: Documents, ask: RecoverAsk): Promise<RecoverAnswer>;
  dispose(): void;
}

/** A minute of solving is more than anyone waits; the best found until then is shown with its gap. Invented default. */
const SECONDS_LIMIT = 60;

interface Started {
  readonly worker: Worker;
  readonly service: Remote<DecisionService>;
}

/** A worker that is started on first use and kept with what it has learned. */
function keptWorker() {
  let started: Started | null = null;
  return {
    service(): Remote<DecisionService> {
      if (started === null) {
        const worker = new Worker(new URL("./decisionWorker.ts", import.meta.url), { type: "module" });
        started = { worker, service: wrap<DecisionService>(worker) };
      }
      return started.service;
    },
    end(): void {
      started?.service[releaseProxy]();
      started?.worker.terminate();
      started = null;
    },
  };
}

function gapFraction(upperBound: number, lowerBound: number): number | null {
  if (!Number.isFinite(upperBound) || !Number.isFinite(lowerBound)) return null;
  return upperBound === 0 ? 0 : Math.max(0, (upperBound - lowerBound) / Math.abs(upperBound));
}

export function createDecisionEngine(): DecisionEngine {
  const searches = keptWorker();
  const questions = keptWorker();

  function findMixes(
    documents: Documents,
    placeId: string,
    onProgress: (progress: SearchProgress) => void,
  ): RunningSearch {
    let solve: RunningSolve | null = null;
    let isCancelled = false;
    let stop: (answer: null) => void = () => {};
    const cancelled = new Promise<null>((resolve) => {
      stop = resolve;
    });
    async function search(): Promise<MixAnswer | null> {
      const service = searches.service();
      const onLine = proxy((doneFraction: number) => onProgress({ stage: "predicting", doneFraction }));
      const stated = await service.stateSearch(withoutPhotos(documents), placeId, onLine);
      if (isCancelled) return null;
      if ("answer" in stated) return stated.answer;
      onProgress({ stage: "solving", doneFraction: null });
      solve = startSolve(stated.program, SECONDS_LIMIT, ({ upperBound, lowerBound }) => {
        onProgress({ stage: "solving", doneFraction: gapFraction(upperBound, lowerBound) });
      });
      const solution = await solve.solution;
      return solution === null ? null : await service.finishSearch(solution);
    }
    return {
      answer: Promise.race([search(), cancelled]),
      cancel: () => {
        isCancelled = true;
        solve?.cancel();
        // Predicting cannot be interrupted from outside: its worker is ended, and started anew for the next search.
        searches.end();
        stop(null);
      },
    };
  }

  return {
    findMixes,
    planTests: latestOnly(async ({ documents, today, onFirst = () => {} }: TestsRequest) =>
      questions.service().tests(withoutPhotos(documents), today, proxy(onFirst)),
    ),
    recover: async (documents, ask) => questions.service().recover(withoutPhotos(documents), ask),
    dispose: () => {
      searches.end();
      questions.end();
    },
  };
}
