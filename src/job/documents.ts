/** What is open at one time: one job and the shop's library that it refers to. */
import type { Job } from "./jobDocument.ts";
import type { Library } from "./libraryDocument.ts";

export interface Documents {
  readonly job: Job;
  readonly library: Library;
}
