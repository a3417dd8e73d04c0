/** The exported job: one file that holds the job and every library item it uses. */
import { z } from "zod";
import { jobSchema } from "./jobDocument.ts";
import { librarySchema } from "./libraryDocument.ts";

export const ARCHIVE_KIND = "tonebench-job";
export const ARCHIVE_VERSION = 3;

export const archiveSchema = z.strictObject({
  kind: z.literal(ARCHIVE_KIND),
  version: z.literal(ARCHIVE_VERSION),
  job: jobSchema,
  library: librarySchema,
});

export type Archive = z.infer<typeof archiveSchema>;
