/** What the planner needs of storage; main.tsx hands in the browser's, tests hand in one of their own. */
import type { Documents } from "../job/documents.ts";
import type { Job } from "../job/jobDocument.ts";
import type { Library } from "../job/libraryDocument.ts";
import type { Problem } from "../job/problem.ts";

/** A stored document that cannot be read is reported and stays where it is; it is never deleted. */
export type Loaded<Document> =
  | { readonly status: "found"; readonly document: Document }
  | { readonly status: "missing" }
  | { readonly status: "unreadable"; readonly problems: readonly Problem[] };

/** One row of the job list. A job that cannot be read is listed too, with what is wrong. */
export interface JobSummary {
  readonly id: string;
  readonly number: string;
  readonly customer: string;
  readonly createdAt: string;
  /** When it last changed; null for a job from before this was kept. */
  readonly changedAt: string | null;
  readonly lineCount: number;
  readonly pieceCount: number;
  /** Empty for a readable job. */
  readonly problems: readonly Problem[];
}

export interface OpenedFile {
  readonly name: string;
  readonly text: string;
}

/** Every promise rejects when the browser refuses the read or the write; nothing fails in silence. */
export interface StoragePort {
  loadLibrary(): Promise<Loaded<Library>>;
  loadJob(id: string): Promise<Loaded<Job>>;
  listJobs(): Promise<readonly JobSummary[]>;
  /** Every job that can be read, to see what uses a part of the shelf. */
  loadJobs(): Promise<readonly Job[]>;
  /**
   * Writes job and library in one transaction: both or neither.
   * Rejects with an error whose `code` is "changed-elsewhere" where another tab saved since the last read.
   * @param at the time now; a job that differs from the stored one is said to have changed then
   */
  save(documents: Documents, at: string): Promise<void>;
  deleteJob(id: string): Promise<void>;
  lastJobId(): Promise<string | null>;
  setLastJobId(id: string): Promise<void>;
  /** Asks once for storage that the browser does not clear by itself; false where it refuses. */
  askToPersist(): Promise<boolean>;
  /** The file picker; null when it was closed without a choice. */
  openArchive(): Promise<OpenedFile | null>;
  /** False when the picker was closed without a choice. */
  saveFile(name: string, text: string, mimeType: string): Promise<boolean>;
}
