/** The decision worker's entry: answers with the work of this folder, from what it has learned of the record book. */
import { expose, type ProxyMethods, releaseProxy, transfer } from "comlink";
import type { MixedIntegerProgram, ProgramSolution } from "../../core/planning/decisions/mixProgram.ts";
import type { Documents } from "../../job/documents.ts";
import type { MixAnswer, RecoverAnswer, RecoverAsk, TestsFinding } from "./decisionProtocol.ts";
import { type PreparedSearch, preparedSearch } from "./mixSearchWork.ts";
import { rememberedPosterior } from "./posteriorOf.ts";
import { recovery } from "./recoverWork.ts";
import { plannedTests } from "./testPlanWork.ts";

const posteriorOf = rememberedPosterior();

/** The search whose program is with the solver. */
let waiting: PreparedSearch | null = null;

/** `work` with a callback of the other side, whose channel is closed after it and not only when its garbage is collected. */
function withCallback<Callback, Result>(callback: Callback, work: (callback: Callback) => Result): Result {
  try {
    return work(callback);
  } finally {
    (callback as ProxyMethods)[releaseProxy]();
  }
}

const service = {
  /** A program for the solver, or the answer where none is needed. */
  stateSearch(
    documents: Documents,
    placeId: string,
    onLine: (doneFraction: number) => void,
  ): { readonly program: MixedIntegerProgram } | { readonly answer: MixAnswer } {
    const place = documents.job.places.find(({ id }) => id === placeId);
    if (place === undefined) throw new RangeError(`place must exist; got id ${placeId}`);
    const prepared = withCallback(onLine, (told) =>
      preparedSearch(documents, place, posteriorOf(documents.library), told),
    );
    if (!("program" in prepared)) return { answer: prepared };
    waiting = prepared;
    const { program } = prepared;
    return transfer({ program }, [program.values.buffer, program.indices.buffer]);
  },
  finishSearch(solution: ProgramSolution): MixAnswer {
    if (waiting === null) throw new RangeError("a search must be stated before it is finished; got none");
    const { finish } = waiting;
    waiting = null;
    return finish(solution);
  },
  tests(
    documents: Documents,
    today: string,
    onFirst: (test: { lineId: string; placeId: string }) => void,
  ): TestsFinding {
    let isFirst = true;
    return withCallback(onFirst, (told) =>
      plannedTests(documents, posteriorOf(documents.library), today, (test) => {
        if (isFirst) told(test);
        isFirst = false;
      }),
    );
  },
  recover(documents: Documents, ask: RecoverAsk): RecoverAnswer {
    return recovery(documents, ask, posteriorOf(documents.library));
  },
};

export type DecisionService = typeof service;

expose(service);
