/** Edits of the job's own fields, and a new job. */
import type { Documents } from "../documents.ts";
import { type Job, jobSchema } from "../jobDocument.ts";
import { requireValid } from "./listEdit.ts";
import { newPlace } from "./places.ts";

export interface NewJob extends Pick<Job, "id" | "number" | "customer" | "createdAt"> {
  /** Where given, the job starts with one place of this id. */
  readonly placeId?: string;
  readonly viewing?: Job["viewing"];
}

/** A job without lines. D65/10 degrees is usual for cloth (common practice, no source). */
export function newJob({ id, number, customer, createdAt, placeId, viewing }: NewJob): Job {
  const job: Job = {
    id,
    number,
    customer,
    createdAt,
    forChildren: false,
    lines: [],
    places: placeId === undefined ? [] : [newPlace(placeId, "Front")],
    mixes: [],
    choices: [],
    viewing: viewing ?? { illuminant: "D65", observer: "10deg" },
    checklist: [],
    runStartsOn: null,
    pressLog: [],
  };
  return requireValid(jobSchema, job, "job");
}

export function changeJob(
  documents: Documents,
  change: Partial<Pick<Job, "number" | "customer" | "viewing" | "forChildren">>,
): Documents {
  return { ...documents, job: requireValid(jobSchema, { ...documents.job, ...change }, "job") };
}

/** The day the run has to start; null where nobody has said. */
export function setRunStartsOn(documents: Documents, runStartsOn: Job["runStartsOn"]): Documents {
  return { ...documents, job: requireValid(jobSchema, { ...documents.job, runStartsOn }, "job") };
}
