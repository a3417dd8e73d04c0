/** Opening, importing, exporting and removing jobs: what lies between the store, the storage and the archive format. */
import type { Documents } from "../../job/documents.ts";
import type { Job } from "../../job/jobDocument.ts";
import type { Library } from "../../job/libraryDocument.ts";
import type { Problem } from "../../job/problem.ts";
import type { JobSummary, StoragePort } from "../storagePort.ts";
import type { ArchivePort } from "./archivePort.ts";

export interface JobSessionParts {
  readonly storage: StoragePort;
  readonly archives: ArchivePort;
  /** The documents that are open now. */
  readonly current: () => Documents | null;
  /** Puts documents on the bench; the undo history starts anew. */
  readonly show: (documents: Documents | null) => void;
  /** Writes what autosave has not written yet; false where that failed. */
  readonly flush: () => Promise<boolean>;
  /** The text of the demo job's archive. */
  readonly loadDemo: () => Promise<string>;
  readonly newId: () => string;
  /** The time now, as the documents store it. */
  readonly now: () => string;
  /** A library with nothing on its shelf, for the very first job where the demo was never opened. */
  readonly emptyLibrary: () => Library;
}

export type Refused = { readonly ok: false; readonly problems: readonly Problem[] };
export type Opened = { readonly ok: true; readonly jobId: string; readonly kept: readonly Problem[] };
export type Outcome = Opened | Refused;

export type Imported =
  | Outcome
  /** The job is stored already: the one who imports decides. */
  | { readonly ok: "already-here"; readonly documents: Documents; readonly stored: Job }
  | { readonly ok: "closed" };

export interface JobSession {
  /** The job to begin with: the last one, on the first visit the demo; null where there is none. */
  start(): Promise<Outcome | null>;
  open(jobId: string): Promise<Outcome>;
  list(): Promise<readonly JobSummary[]>;
  /** The stored jobs but for the open one; ask them too before something leaves the shelf. */
  otherJobs(): Promise<readonly Job[]>;
  /** `prepare` may add to the job what depends on the shop's shelf. */
  create(job: Job, prepare?: (documents: Documents) => Documents): Promise<Outcome>;
  openDemo(): Promise<Outcome>;
  importFile(): Promise<Imported>;
  /** Takes in an archive that was read; `asNew` gives the job an id of its own. */
  accept(documents: Documents, how: "as-it-is" | "as-new"): Promise<Outcome>;
  /** Null where the file dialog was closed. */
  exportJob(jobId: string): Promise<{ readonly ok: true; readonly written: boolean } | Refused>;
  remove(jobId: string): Promise<{ readonly ok: true } | Refused>;
}

const refused = (code: string, where: string, detail?: string): Refused => ({
  ok: false,
  problems: [detail === undefined ? { code, where } : { code, where, detail }],
});

/** A refusal of the browser as a problem with its own words as detail. */
export function problemOfError(error: unknown): Problem {
  const code =
    typeof error === "object" && error !== null && "code" in error && error.code === "changed-elsewhere"
      ? "changed-elsewhere"
      : "storage-refused";
  return { code, where: "", detail: error instanceof Error ? error.message : String(error) };
}

const COPY = " (copy)";
const NUMBER_LENGTH = 60;

/** Under an id of its own, and a number that the list can be read by. */
function asCopy(job: Job, id: string): Job {
  return { ...job, id, number: job.number.slice(0, NUMBER_LENGTH - COPY.length) + COPY };
}

/** A file name that every system takes. */
export function archiveFileName(jobNumber: string): string {
  const plain = jobNumber.replace(/[^\p{L}\p{N}._-]+/gu, "-").replace(/^[-.]+|-+$/g, "");
  return `${plain === "" ? "job" : plain}.tonebench.json`;
}

export function createJobSession(parts: JobSessionParts): JobSession {
  const { storage, archives, current, show, flush, loadDemo, newId, now, emptyLibrary } = parts;

  /** The shop's library; the one on the bench is the newest. */
  async function shopLibrary(): Promise<{ readonly ok: true; readonly library: Library | null } | Refused> {
    const open = current();
    if (open !== null) return { ok: true, library: open.library };
    const loaded = await storage.loadLibrary();
    if (loaded.status === "unreadable") return { ok: false, problems: loaded.problems };
    return { ok: true, library: loaded.status === "found" ? loaded.document : null };
  }

  async function guarded<Result>(work: () => Promise<Result | Refused>): Promise<Result | Refused> {
    try {
      return await work();
    } catch (error) {
      return { ok: false, problems: [problemOfError(error)] };
    }
  }

  async function unwrittenIsWritten(): Promise<boolean> {
    return current() === null || (await flush());
  }

  async function keepAndShow(documents: Documents, kept: readonly Problem[]): Promise<Outcome> {
    await storage.save(documents, now());
    show(documents);
    await storage.setLastJobId(documents.job.id);
    return { ok: true, jobId: documents.job.id, kept };
  }

  const open = (jobId: string): Promise<Outcome> =>
    guarded(async () => {
      if (!(await unwrittenIsWritten())) return refused("not-saved", "");
      const [job, library] = [await storage.loadJob(jobId), await storage.loadLibrary()];
      if (job.status === "missing") return refused("job-missing", "", jobId);
      if (job.status === "unreadable") return { ok: false, problems: job.problems };
      if (library.status === "unreadable") return { ok: false, problems: library.problems };
      if (library.status === "missing") return refused("library-missing", "");
      show({ job: job.document, library: library.document });
      await storage.setLastJobId(jobId);
      return { ok: true, jobId, kept: [] };
    });

  const accept: JobSession["accept"] = (documents, how) =>
    guarded(async () => {
      if (!(await unwrittenIsWritten())) return refused("not-saved", "");
      const own = await shopLibrary();
      if (!own.ok) return own;
      const { library, kept } =
        own.library === null
          ? { library: documents.library, kept: [] }
          : archives.merge(own.library, documents.library);
      const job = how === "as-new" ? asCopy(documents.job, newId()) : documents.job;
      return keepAndShow({ job, library }, kept);
    });

  const openDemo = (): Promise<Outcome> =>
    guarded(async () => {
      let text: string;
      try {
        text = await loadDemo();
      } catch (error) {
        return refused("demo-missing", "", error instanceof Error ? error.message : String(error));
      }
      const reading = archives.read(text);
      if (!reading.ok) return reading;
      const stored = await storage.loadJob(reading.documents.job.id);
      return stored.status === "missing"
        ? accept(reading.documents, "as-it-is")
        : open(reading.documents.job.id);
    });

  return {
    open,
    accept,
    openDemo,
    list: () => storage.listJobs(),
    otherJobs: async () => {
      const openId = current()?.job.id;
      return (await storage.loadJobs()).filter(({ id }) => id !== openId);
    },
    start: () =>
      guarded(async () => {
        const lastId = await storage.lastJobId();
        if (lastId !== null && (await storage.loadJob(lastId)).status !== "missing") return open(lastId);
        const [jobs, library] = [await storage.listJobs(), await storage.loadLibrary()];
        return jobs.length === 0 && library.status === "missing" ? openDemo() : null;
      }),
    create: (job, prepare = (documents) => documents) =>
      guarded(async () => {
        if (!(await unwrittenIsWritten())) return refused("not-saved", "");
        const own = await shopLibrary();
        if (!own.ok) return own;
        return keepAndShow(prepare({ job, library: own.library ?? emptyLibrary() }), []);
      }),
    importFile: () =>
      guarded<Imported>(async () => {
        const file = await storage.openArchive();
        if (file === null) return { ok: "closed" };
        const reading = archives.read(file.text);
        if (!reading.ok) return reading;
        const stored = await storage.loadJob(reading.documents.job.id);
        if (stored.status === "found") {
          return { ok: "already-here", documents: reading.documents, stored: stored.document };
        }
        if (stored.status === "unreadable") return { ok: false, problems: stored.problems };
        return accept(reading.documents, "as-it-is");
      }),
    exportJob: (jobId) =>
      guarded(async () => {
        if (!(await unwrittenIsWritten())) return refused("not-saved", "");
        let documents = current();
        if (documents?.job.id !== jobId) {
          const [job, library] = [await storage.loadJob(jobId), await storage.loadLibrary()];
          if (job.status === "unreadable") return { ok: false, problems: job.problems };
          if (job.status === "missing") return refused("job-missing", "", jobId);
          if (library.status === "unreadable") return { ok: false, problems: library.problems };
          if (library.status === "missing") return refused("library-missing", "");
          documents = { job: job.document, library: library.document };
        }
        const name = archiveFileName(documents.job.number);
        const written = await storage.saveFile(name, archives.write(documents), "application/json");
        return { ok: true, written };
      }),
    remove: (jobId) =>
      guarded(async () => {
        if (current()?.job.id === jobId) {
          // Waits for a write under way, which would bring the job back.
          await flush();
          await storage.deleteJob(jobId);
          show(null);
        } else {
          await storage.deleteJob(jobId);
        }
        return { ok: true };
      }),
  };
}
