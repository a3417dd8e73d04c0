/** The planner's side of the decisions: a worker per kind of question, ended to cancel, and the solver's own. */
import { proxy } from "comlink";
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
import { keptWorker } from "./keptWorker.ts";
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
  /** Searches mixes for one place under its rules, proven optimal where it ends in time. Cancels the search before it. */
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

function gapFraction(upperBound: number, lowerBound: number): number | null {
  if (!Number.isFinite(upperBound) || !Number.isFinite(lowerBound)) return null;
  return upperBound === 0 ? 0 : Math.max(0, (upperBound - lowerBound) / Math.abs(upperBound));
}

export function createDecisionEngine(): DecisionEngine {
  const searches = keptWorker();
  const plans = keptWorker();
  // Of its own: at the press nobody waits behind a large plan.
  const recoveries = keptWorker();
  /** The worker keeps one stated search while the solver has its program. */
  let underWay: RunningSearch | null = null;

  function findMixes(
    documents: Documents,
    placeId: string,
    onProgress: (progress: SearchProgress) => void,
  ): RunningSearch {
    underWay?.cancel();
    let solve: RunningSolve | null = null;
    let isOver = false;
    let stop: (answer: null) => void = () => {};
    const cancelled = new Promise<null>((resolve) => {
      stop = resolve;
    });
    const tell = (progress: SearchProgress) => {
      if (!isOver) onProgress(progress);
    };
    async function search(): Promise<MixAnswer | null> {
      const onLine = proxy((doneFraction: number) => tell({ stage: "predicting", doneFraction }));
      const stated = await searches.ask(async (service) =>
        service.stateSearch(withoutPhotos(documents), placeId, onLine),
      );
      if (isOver) return null;
      if ("answer" in stated) return stated.answer;
      tell({ stage: "solving", doneFraction: null });
      solve = startSolve(stated.program, SECONDS_LIMIT, ({ upperBound, lowerBound }) => {
        tell({ stage: "solving", doneFraction: gapFraction(upperBound, lowerBound) });
      });
      const solution = await solve.solution;
      if (isOver || solution === null) return null;
      return searches.ask(async (service) => service.finishSearch(solution));
    }
    const running: RunningSearch = {
      answer: Promise.race([search(), cancelled]).finally(() => {
        isOver = true;
        if (underWay === running) underWay = null;
      }),
      cancel: () => {
        if (isOver) return;
        isOver = true;
        stop(null);
        solve?.cancel();
        // Predicting cannot be interrupted from outside: its worker is ended, and started anew for the next search.
        searches.end();
      },
    };
    underWay = running;
    return running;
  }

  return {
    findMixes,
    planTests: latestOnly(({ documents, today, onFirst = () => {} }: TestsRequest) =>
      plans.ask(async (service) => service.tests(withoutPhotos(documents), today, proxy(onFirst))),
    ),
    recover: (documents, ask) =>
      recoveries.ask(async (service) => service.recover(withoutPhotos(documents), ask)),
    dispose: () => {
      underWay?.cancel();
      searches.end();
      plans.end();
      recoveries.end();
    },
  };
}
