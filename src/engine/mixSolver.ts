/** The planner's side of the solver: a worker of its own per solve, so that a solve can be cancelled by ending it. */
import { proxy, type Remote, wrap } from "comlink";
import type { MixedIntegerProgram, ProgramSolution } from "../core/planning/decisions/mixProgram.ts";
import type { SolveProgress } from "./mixSolverWork.ts";
import type { SolverService } from "./mixSolverWorker.ts";

export type { SolveProgress } from "./mixSolverWork.ts";

export interface RunningSolve {
  /** Null once cancelled; rejects where the solver fails. */
  readonly solution: Promise<ProgramSolution | null>;
  /** Ends the worker; nothing is left of the solve. */
  readonly cancel: () => void;
}

/** Solves `program` off the main thread; the solver's code is fetched on the first call, not before. */
export function startSolve(
  program: MixedIntegerProgram,
  secondsLimit: number,
  onProgress?: (progress: SolveProgress) => void,
): RunningSolve {
  const worker = new Worker(new URL("./mixSolverWorker.ts", import.meta.url), { type: "module" });
  const service: Remote<SolverService> = wrap<SolverService>(worker);
  let end: (solution: ProgramSolution | null) => void = () => {};
  let fail: (reason: unknown) => void = () => {};
  const solution = new Promise<ProgramSolution | null>((resolve, reject) => {
    end = resolve;
    fail = reject;
  }).finally(() => worker.terminate());
  worker.onerror = (event) => fail(new Error(event.message || "the solver could not be started"));
  const listener = onProgress === undefined ? null : proxy(onProgress);
  service.solve(program, secondsLimit, listener).then(end, fail);
  return { solution, cancel: () => end(null) };
}
