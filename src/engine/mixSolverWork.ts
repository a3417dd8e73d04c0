/** A mixed-integer program handed to HiGHS, and its answer as plain data; the same in the worker and in Node. */
import type { Highs } from "highs";
import type { MixedIntegerProgram, ProgramSolution } from "../core/planning/decisions/mixProgram.ts";

/** How far a solve is: the best found so far and what no solution can beat. */
export interface SolveProgress {
  readonly seconds: number;
  /** Infinity while nothing was found. */
  readonly upperBound: number;
  readonly lowerBound: number;
}

/**
 * Relative gap at which a solution counts as proven. HiGHS's own default is 1e-4: one part in ten thousand of the cost would
 * let it stop short of the best plan, so it is asked for what its arithmetic can tell apart.
 */
const PROVEN_GAP = 1e-9;
const SECONDS_BETWEEN_REPORTS = 0.25;

/**
 * Solves `program` and says how good the answer is proven to be. Blocks until done, so it belongs in a worker; a solve that
 * passes `secondsLimit` returns the best it has.
 */
export function solveProgram(
  highs: Highs,
  program: MixedIntegerProgram,
  secondsLimit: number,
  onProgress?: (progress: SolveProgress) => void,
): ProgramSolution {
  // HiGHS calls a model without columns empty instead of solved.
  if (program.columnCount === 0) return { status: "optimal", values: new Float64Array(), lowerBound: 0 };
  const { variableType, modelStatus, callbackType } = highs.constants;
  return highs.withModel(
    {
      numCols: program.columnCount,
      numRows: program.rowCount,
      colCost: program.cost,
      colLower: program.columnLower,
      colUpper: program.columnUpper,
      rowLower: program.rowLower,
      rowUpper: program.rowUpper,
      matrix: {
        format: "csr",
        numRows: program.rowCount,
        numCols: program.columnCount,
        starts: program.starts,
        indices: program.indices,
        values: program.values,
      },
      integrality: Int32Array.from(program.isInteger, (isInteger) =>
        isInteger === 1 ? variableType.integer : variableType.continuous,
      ),
    },
    (model): ProgramSolution => {
      model.options.set({
        // Progress is reported with the log and only then; the log itself goes nowhere.
        output_flag: onProgress !== undefined,
        mip_rel_gap: PROVEN_GAP,
        mip_abs_gap: 1e-6,
        time_limit: secondsLimit,
        random_seed: 0,
        mip_min_logging_interval: SECONDS_BETWEEN_REPORTS,
      });
      const report = onProgress;
      if (report === undefined) model.run();
      else {
        model.run({
          [callbackType.mipLogging]: ({ data }) => {
            report({
              seconds: data.running_time ?? 0,
              upperBound: data.mip_primal_bound ?? Infinity,
              lowerBound: data.mip_dual_bound ?? Number.NEGATIVE_INFINITY,
            });
          },
        });
      }
      const status = model.getModelStatus();
      if (status === modelStatus.infeasible) {
        return { status: "infeasible", values: new Float64Array(), lowerBound: Infinity };
      }
      const lowerBound = Number(model.info.get("mip_dual_bound"));
      const found =
        Number(model.info.get("primal_solution_status")) === highs.constants.solutionStatus.feasible;
      if (!found) return { status: "none", values: new Float64Array(), lowerBound };
      const values = Float64Array.from(model.getSolution().colValue);
      return { status: status === modelStatus.optimal ? "optimal" : "feasible", values, lowerBound };
    },
  );
}
