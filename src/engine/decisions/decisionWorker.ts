/** The decision worker's entry: answers with the work of this folder, from what it has learned of the record book. */
import { expose, transfer } from "comlink";
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

const service = {
  /** A program for the solver, or the answer where none is needed. */
  stateSearch(
    documents: Documents,
    placeId: string,
    onLine: (doneFraction: number) => void,
  ): { readonly program: MixedIntegerProgram } | { readonly answer: MixAnswer } {
    const place = documents.job.places.find(({ id }) => id === placeId);
    if (place === undefined) throw new RangeError(`place must exist; got id ${placeId}`);
    const prepared = preparedSearch(documents, place, posteriorOf(documents.library), onLine);
    if (!("program" in prepared)) return { answer: prepared };
    waiting = prepared;
    const { program } = prepared;
    return transfer({ program }, [program.values.buffer, program.indices.buffer]);
  },
  finishSearch(solution: ProgramSolution): MixAnswer {
    if (waiting === null) throw new RangeError("a search must be stated before it is finished; got none");
    return waiting.finish(solution);
  },
  tests(
    documents: Documents,
    today: string,
    onFirst: (test: { lineId: string; placeId: string }) => void,
  ): TestsFinding {
    let isFirst = true;
    return plannedTests(documents, posteriorOf(documents.library), today, (test) => {
      if (isFirst) onFirst(test);
      isFirst = false;
    });
  },
  recover(documents: Documents, ask: RecoverAsk): RecoverAnswer {
    return recovery(documents, ask, posteriorOf(documents.library));
  },
};

export type DecisionService = typeof service;

expose(service);
