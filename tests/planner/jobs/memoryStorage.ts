/** A storage that keeps documents as text, as a browser's does: what comes back is never the same object. */
import type { Documents } from "../../../src/job/documents.ts";
import type { Job } from "../../../src/job/jobDocument.ts";
import type { Library } from "../../../src/job/libraryDocument.ts";
import { pieceCount } from "../../../src/job/lookup.ts";
import type { StoragePort } from "../../../src/planner/storagePort.ts";

export interface MemoryStorage extends StoragePort {
  /** What the next file dialog gives; null closes it. */
  file: { name: string; text: string } | null;
  readonly written: { name: string; text: string }[];
  /** Where set, every write fails with it. */
  refusal: Error | null;
  /** The ids of the jobs that cannot be read. */
  readonly damaged: Set<string>;
}

export function memoryStorage(): MemoryStorage {
  const jobs = new Map<string, string>();
  const changedAt = new Map<string, string>();
  let library: string | null = null;
  let lastId: string | null = null;
  const parse = (text: string) => JSON.parse(text);
  const memory: MemoryStorage = {
    file: null,
    written: [],
    refusal: null,
    damaged: new Set(),
    async loadLibrary() {
      return library === null
        ? { status: "missing" }
        : { status: "found", document: parse(library) as Library };
    },
    async loadJob(id) {
      if (memory.damaged.has(id)) {
        return { status: "unreadable", problems: [{ code: "missing-field", where: "job.lines" }] };
      }
      const text = jobs.get(id);
      return text === undefined ? { status: "missing" } : { status: "found", document: parse(text) as Job };
    },
    async listJobs() {
      return [...jobs.values()].map((text) => {
        const job = parse(text) as Job;
        return {
          id: job.id,
          number: job.number,
          customer: job.customer,
          createdAt: job.createdAt,
          changedAt: changedAt.get(job.id) ?? null,
          lineCount: job.lines.length,
          pieceCount: job.lines.reduce((sum, line) => sum + pieceCount(line), 0),
          problems: memory.damaged.has(job.id) ? [{ code: "missing-field", where: "job.lines" }] : [],
        };
      });
    },
    async loadJobs() {
      return [...jobs.values()].map((text) => parse(text) as Job);
    },
    async save(documents: Documents, at: string) {
      if (memory.refusal !== null) throw memory.refusal;
      changedAt.set(documents.job.id, at);
      jobs.set(documents.job.id, JSON.stringify(documents.job));
      library = JSON.stringify(documents.library);
    },
    async deleteJob(id) {
      if (memory.refusal !== null) throw memory.refusal;
      jobs.delete(id);
      if (lastId === id) lastId = null;
    },
    async lastJobId() {
      return lastId;
    },
    async setLastJobId(id) {
      lastId = id;
    },
    async askToPersist() {
      return true;
    },
    async openArchive() {
      return memory.file;
    },
    async saveFile(name, text) {
      memory.written.push({ name, text });
      return true;
    },
  };
  return memory;
}
