/** The planner's side of the prediction worker. */
import { type Remote, releaseProxy, wrap } from "comlink";
import type { EvidenceInputs } from "../job/evidenceInputs.ts";
import { latestOnly } from "./latestOnly.ts";
import { unpackCell } from "./packedCells.ts";
import type { PredictionService } from "./predictionWorker.ts";
import {
  type CellDetail,
  type CellRequest,
  cellKey,
  type Lessons,
  type MatrixCell,
  type MatrixCells,
  type MatrixRequest,
  type PredictionEngine,
  type Teacher,
  type TeachersRequest,
} from "./protocol.ts";

export type { PredictionEngine } from "./protocol.ts";

/** Cells of a packed answer by `cellKey`, ids taken from the request. */
export function cellsOf(request: MatrixRequest, packed: Float64Array): MatrixCells {
  const cells = new Map<string, MatrixCell>();
  let index = 0;
  for (const { lineId } of request.rows) {
    for (const { candidateId } of request.columns) {
      cells.set(cellKey(lineId, candidateId), unpackCell(packed, index++, lineId, candidateId));
    }
  }
  return cells;
}

/** Starts the worker. Answers come off the main thread; see `PredictionEngine` for what happens to overtaken requests. */
export function createPredictionEngine(): PredictionEngine {
  const worker = new Worker(new URL("./predictionWorker.ts", import.meta.url), { type: "module" });
  const service: Remote<PredictionService> = wrap<PredictionService>(worker);
  return {
    predictMatrix: latestOnly(async (request: MatrixRequest) =>
      cellsOf(request, await service.matrix(request)),
    ),
    teachers: latestOnly(
      async (request: TeachersRequest): Promise<readonly Teacher[]> => service.teachers(request),
    ),
    learn: latestOnly(async (inputs: EvidenceInputs): Promise<Lessons> => service.learn(inputs)),
    predictCell: latestOnly(async (request: CellRequest): Promise<CellDetail> => service.detail(request)),
    book: {
      finding: async (request) => service.finding(request),
      learned: async () => service.learned(),
      scales: async () => service.scales(),
      readings: async (request) => service.readings(request),
    },
    dispose: () => {
      service[releaseProxy]();
      worker.terminate();
    },
  };
}
