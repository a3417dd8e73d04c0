/** The solver worker's entry: loads HiGHS and solves what it is sent. */
import { expose, transfer } from "comlink";
import loadHighs from "highs";
import highsUrl from "highs/runtime?url";
import type { MixedIntegerProgram, ProgramSolution } from "../core/planning/decisions/mixProgram.ts";
import { type SolveProgress, solveProgram } from "./mixSolverWork.ts";

const highs = loadHighs({ locateFile: () => highsUrl });

const service = {
  async solve(
    program: MixedIntegerProgram,
    secondsLimit: number,
    onProgress: ((progress: SolveProgress) => void) | null,
  ): Promise<ProgramSolution> {
    const solution = solveProgram(await highs, program, secondsLimit, onProgress ?? undefined);
    return transfer(solution, [solution.values.buffer]);
  },
};

export type SolverService = typeof service;
expose(service);
