/** The worker's entry: answers requests with the work of matrixPrediction.ts. */
import { expose, transfer } from "comlink";
import { predictDetail, predictPackedMatrix } from "./matrixPrediction.ts";
import type { CellDetail, CellRequest, MatrixRequest } from "./protocol.ts";

const service = {
  matrix(request: MatrixRequest): Float64Array {
    const packed = predictPackedMatrix(request);
    return transfer(packed, [packed.buffer]);
  },
  detail(request: CellRequest): CellDetail {
    return predictDetail(request);
  },
};

export type PredictionService = typeof service;

expose(service);
