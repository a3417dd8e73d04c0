/** The browser's database of Tonebench: the shop's library, its jobs, and which job was open last. */
import { type DBSchema, type IDBPDatabase, type IDBPObjectStore, openDB } from "idb";
import { ARCHIVE_VERSION } from "../job/archiveDocument.ts";
import type { Documents } from "../job/documents.ts";
import { type Job, jobSchema } from "../job/jobDocument.ts";
import { LEDGER_NAMES, type Library, librarySchema } from "../job/libraryDocument.ts";
import type { Problem } from "../job/problem.ts";
import { sameValue } from "../job/sameValue.ts";
import { jobWithRecordsOf, libraryWithRecordsOf } from "./appendOnly.ts";
import { StorageError } from "./storageError.ts";
import {
  changedAtOf,
  type Reading,
  readStoredRecord,
  revisionOf,
  type StoredRecord,
} from "./storedRecord.ts";

interface TonebenchSchema extends DBSchema {
  library: { key: string; value: StoredRecord };
  jobs: { key: string; value: StoredRecord };
  settings: { key: string; value: string };
  /** Documents that could not be read when they were about to be written over. Nothing is removed from here. */
  setAside: { key: number; value: { readonly key: string; readonly record: unknown } };
}

export type TonebenchConnection = IDBPDatabase<TonebenchSchema>;

const DATABASE_NAME = "tonebench";
const DATABASE_VERSION = 1;
const LIBRARY_KEY = "library";
const LAST_JOB_KEY = "lastJobId";

export interface StoredJobSummary {
  readonly id: string;
  readonly number: string;
  readonly customer: string;
  readonly createdAt: string;
  /** When it last changed; null for a job from before this was kept. */
  readonly changedAt: string | null;
  readonly lineCount: number;
  readonly pieceCount: number;
  readonly problems: readonly Problem[];
}

export interface TonebenchDatabase {
  loadLibrary(): Promise<Reading<Library>>;
  loadJob(id: string): Promise<Reading<Job>>;
  listJobs(): Promise<readonly StoredJobSummary[]>;
  /** Every job that can be read. */
  loadJobs(): Promise<readonly Job[]>;
  /** @param at the time now, which a job that differs from the stored one is said to have changed at */
  save(documents: Documents, at: string): Promise<void>;
  deleteJob(id: string): Promise<void>;
  lastJobId(): Promise<string | null>;
  setLastJobId(id: string): Promise<void>;
  setting(key: string): Promise<string | null>;
  setSetting(key: string, value: string): Promise<void>;
  close(): void;
}

/** Opens the database, made on first use. Rejects where the browser has none or refuses it. */
export function connect(name: string = DATABASE_NAME): Promise<TonebenchConnection> {
  return openDB<TonebenchSchema>(name, DATABASE_VERSION, {
    upgrade(database) {
      database.createObjectStore("library");
      database.createObjectStore("jobs");
      database.createObjectStore("settings");
      database.createObjectStore("setAside", { autoIncrement: true });
    },
    // A newer version of the program in another tab must not wait for this one for ever.
    blocking(_currentVersion, _blockedVersion, event) {
      (event.target as IDBDatabase).close();
    },
  });
}

function summary(id: string, raw: unknown, reading: Reading<Job>): StoredJobSummary {
  const changedAt = changedAtOf(raw);
  if (reading.status !== "found") {
    const problems = reading.status === "unreadable" ? reading.problems : [];
    return { id, number: "", customer: "", createdAt: "", changedAt, lineCount: 0, pieceCount: 0, problems };
  }
  const { number, customer, createdAt, lines } = reading.document;
  const pieceCount = lines
    .flatMap((line) => line.quantities)
    .reduce((sum, quantity) => sum + quantity.count, 0);
  return { id, number, customer, createdAt, changedAt, lineCount: lines.length, pieceCount, problems: [] };
}

/** Whether two libraries hold the very same lists; edits make new lists, so identity is enough. */
function sameLists(one: Library | null, other: Library): boolean {
  return (
    one !== null &&
    one.shelf === other.shelf &&
    one.garmentLots === other.garmentLots &&
    LEDGER_NAMES.every((name) => one[name] === other[name])
  );
}

type Writing<Name extends "library" | "jobs"> = IDBPObjectStore<
  TonebenchSchema,
  ("library" | "jobs" | "setAside")[],
  Name,
  "readwrite"
>;

/** The database as one tab sees it: it knows which revisions it has read and refuses to write over others. */
export function tonebenchDatabase(connection: TonebenchConnection): TonebenchDatabase {
  const seenRevisions = new Map<string, number>();
  let savedLibrary: Library | null = null;

  async function read<Document>(
    store: "library" | "jobs",
    key: string,
    parse: (raw: unknown) => Reading<Document>,
  ): Promise<Reading<Document>> {
    const raw: unknown = await connection.get(store, key);
    seenRevisions.set(key, revisionOf(raw));
    return parse(raw);
  }

  const parseLibrary = (raw: unknown) => readStoredRecord(raw, librarySchema, "library");
  const parseJob = (raw: unknown) => readStoredRecord(raw, jobSchema, "job");

  async function put<Name extends "library" | "jobs", Document>(
    store: Writing<Name>,
    setAside: (record: unknown) => Promise<unknown>,
    write: {
      readonly key: string;
      readonly where: "library" | "job";
      readonly document: Document;
      readonly at: string;
      readonly parse: (raw: unknown) => Reading<Document>;
      readonly keepRecords: (stored: Document, next: Document) => Document;
    },
  ): Promise<number> {
    const raw: unknown = await store.get(write.key);
    const revision = revisionOf(raw);
    // A job that this tab never read is replaced on purpose (an import); the library is always read first.
    const expected = seenRevisions.get(write.key) ?? (write.where === "job" ? revision : 0);
    if (raw !== undefined && revision !== expected) throw new StorageError("changed-elsewhere", write.where);
    const stored = write.parse(raw);
    if (stored.status === "unreadable") await setAside(raw);
    const document =
      stored.status === "found" ? write.keepRecords(stored.document, write.document) : write.document;
    const isChanged = stored.status !== "found" || !sameValue(stored.document, document);
    const changedAt = isChanged ? write.at : changedAtOf(raw);
    const record = { version: ARCHIVE_VERSION, revision: revision + 1, document };
    await store.put(changedAt === null ? record : { ...record, changedAt }, write.key);
    return revision + 1;
  }

  async function save({ job, library }: Documents, at: string): Promise<void> {
    const transaction = connection.transaction(["library", "jobs", "setAside"], "readwrite", {
      durability: "strict",
    });
    const setAside = (key: string) => (record: unknown) =>
      transaction.objectStore("setAside").add({ key, record });
    const revisions = new Map<string, number>();
    try {
      if (!sameLists(savedLibrary, library)) {
        const revision = await put(transaction.objectStore("library"), setAside(LIBRARY_KEY), {
          key: LIBRARY_KEY,
          where: "library",
          document: library,
          at,
          parse: parseLibrary,
          keepRecords: libraryWithRecordsOf,
        });
        revisions.set(LIBRARY_KEY, revision);
      }
      const revision = await put(transaction.objectStore("jobs"), setAside(job.id), {
        key: job.id,
        where: "job",
        document: job,
        at,
        parse: parseJob,
        keepRecords: jobWithRecordsOf,
      });
      revisions.set(job.id, revision);
    } catch (error) {
      // Where the browser has ended the transaction itself there is nothing left to end.
      transaction.done.catch(() => {});
      try {
        transaction.abort();
      } catch {}
      throw error;
    }
    await transaction.done;
    for (const [key, revision] of revisions) seenRevisions.set(key, revision);
    savedLibrary = library;
  }

  async function setting(key: string): Promise<string | null> {
    return (await connection.get("settings", key)) ?? null;
  }

  async function setSetting(key: string, value: string): Promise<void> {
    await connection.put("settings", value, key);
  }

  return {
    async loadLibrary() {
      const reading = await read("library", LIBRARY_KEY, parseLibrary);
      savedLibrary = reading.status === "found" ? reading.document : null;
      return reading;
    },
    loadJob: (id) => read("jobs", id, parseJob),
    async listJobs() {
      const transaction = connection.transaction("jobs");
      const [keys, records] = await Promise.all([transaction.store.getAllKeys(), transaction.store.getAll()]);
      return keys.map((key, index) => summary(key, records[index], parseJob(records[index])));
    },
    async loadJobs() {
      const readings = (await connection.getAll("jobs")).map(parseJob);
      return readings.flatMap((reading) => (reading.status === "found" ? [reading.document] : []));
    },
    save,
    async deleteJob(id) {
      await connection.delete("jobs", id);
      seenRevisions.delete(id);
    },
    lastJobId: () => setting(LAST_JOB_KEY),
    setLastJobId: (id) => setSetting(LAST_JOB_KEY, id),
    setting,
    setSetting,
    close: () => connection.close(),
  };
}
