/** The worker's entry: answers requests with the work of matrixPrediction.ts, from what it has learned of the record book. */
import { expose, transfer } from "comlink";
import { type LearnedUnknown, learned } from "../core/evidence/learned.ts";
import { learnWatchfully } from "../core/evidence/learnWatchfully.ts";
import type { Posterior } from "../core/evidence/posterior.ts";
import type { ScaleEstimate } from "../core/evidence/priorEstimate.ts";
import type { EvidenceInputs } from "../job/evidenceInputs.ts";
import { predictDetail, predictPackedMatrix } from "./matrixPrediction.ts";
import { scalesFromRecords } from "./ownScales.ts";
import type {
  CellDetail,
  CellRequest,
  Lessons,
  MatrixRequest,
  Teacher,
  TeachersRequest,
} from "./protocol.ts";
import type { ReadingsAnswer, ReadingsRequest } from "./readingsFile.ts";
import { findingOf, type RecordFinding, type RecordRequest } from "./recordFinding.ts";
import { teachersOf } from "./teachers.ts";

/** What the records teach; null while there are none. */
let posterior: Posterior | null = null;

/** The posterior for one request: cloths that come over with it are not kept beyond it. */
const forRequest = (): Posterior | null => (posterior === null ? null : { ...posterior, cloths: new Map() });

const service = {
  matrix(request: MatrixRequest): Float64Array {
    const packed = predictPackedMatrix(request, forRequest());
    return transfer(packed, [packed.buffer]);
  },
  detail(request: CellRequest): CellDetail {
    return predictDetail(request, forRequest());
  },
  teachers(request: TeachersRequest): readonly Teacher[] {
    const known = forRequest();
    return known === null ? [] : teachersOf(known, request);
  },
  finding(request: RecordRequest): RecordFinding {
    return findingOf(forRequest(), request);
  },
  learned(): readonly LearnedUnknown[] {
    return posterior === null ? [] : learned(posterior);
  },
  scales(): ScaleEstimate | null {
    return posterior === null ? null : scalesFromRecords(posterior);
  },
  async readings(request: ReadingsRequest): Promise<ReadingsAnswer> {
    return (await import("./readingsFile.ts")).readingsAnswer(request);
  },
  learn({ records, goodsIn, scales, setAside, kept }: EvidenceInputs): Lessons {
    if (records.length === 0 && goodsIn.length === 0) {
      posterior = null;
      return { suspicions: [], teachingCount: 0 };
    }
    const learned = learnWatchfully(records, { goodsIn, scales, setAside, kept });
    posterior = learned.posterior;
    return { suspicions: learned.suspicions, teachingCount: posterior.lessons.length };
  },
};

export type PredictionService = typeof service;

expose(service);
