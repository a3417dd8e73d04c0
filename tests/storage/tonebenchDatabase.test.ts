import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { readJobArchive } from "../../src/exchange/jobArchive.ts";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import type { Documents } from "../../src/job/documents.ts";
import type { StoragePort } from "../../src/planner/storagePort.ts";
import type { BrowserStorage } from "../../src/storage/browserStorage.ts";
import { connect, type TonebenchConnection, tonebenchDatabase } from "../../src/storage/tonebenchDatabase.ts";
import { arbitraryDocuments } from "../exchange/arbitraryDocuments.ts";
import { version1Archive } from "../job/version1.ts";
import { version2Archive } from "../job/version2.ts";

const [documents, others] = fc.sample(arbitraryDocuments, { numRuns: 2, seed: 3 }) as [Documents, Documents];

/** When the tests save. */
const AT = "2026-03-01T10:00:00.000Z";
const LATER = "2026-03-02T10:00:00.000Z";

let count = 0;
let name = "";
let connection: TonebenchConnection;

beforeEach(async () => {
  count += 1;
  name = `test ${count}`;
  connection = await connect(name);
});
afterEach(() => connection.close());

function renamed({ job, library }: Documents, number: string): Documents {
  return { job: { ...job, number }, library };
}

describe("the database", () => {
  it("fits the port that the planner asks for", () => {
    const fits = (storage: BrowserStorage): StoragePort => storage;
    expect(fits).toBeTypeOf("function");
  });

  it("has nothing at first and says so", async () => {
    const database = tonebenchDatabase(connection);
    expect(await database.loadLibrary()).toEqual({ status: "missing" });
    expect(await database.loadJob(documents.job.id)).toEqual({ status: "missing" });
    expect(await database.listJobs()).toEqual([]);
    expect(await database.lastJobId()).toBeNull();
  });

  it("gives back what was saved, also to another visit", async () => {
    await tonebenchDatabase(connection).save(documents, AT);
    const later = await connect(name);
    const database = tonebenchDatabase(later);
    expect(await database.loadLibrary()).toEqual({ status: "found", document: documents.library });
    expect(await database.loadJob(documents.job.id)).toEqual({ status: "found", document: documents.job });
    later.close();
  });

  it("lists every job with its lines and pieces, and forgets a deleted one", async () => {
    const database = tonebenchDatabase(connection);
    await database.save(documents, AT);
    await database.save({ job: others.job, library: documents.library }, AT);
    const listed = await database.listJobs();
    expect(listed.map(({ id }) => id).sort()).toEqual([documents.job.id, others.job.id].sort());
    const pieceCount = documents.job.lines
      .flatMap(({ quantities }) => quantities)
      .reduce((sum, quantity) => sum + quantity.count, 0);
    expect(listed.find(({ id }) => id === documents.job.id)).toEqual({
      id: documents.job.id,
      number: documents.job.number,
      customer: documents.job.customer,
      createdAt: documents.job.createdAt,
      changedAt: AT,
      lineCount: 2,
      pieceCount,
      problems: [],
    });
    await database.deleteJob(others.job.id);
    expect((await database.listJobs()).map(({ id }) => id)).toEqual([documents.job.id]);
  });

  it("tells when a job last changed: not by saving it again or with another shelf, and null where that was never kept", async () => {
    const database = tonebenchDatabase(connection);
    const changedAt = async () => (await database.listJobs())[0]?.changedAt;
    await database.save(documents, AT);
    await database.save(structuredClone(documents), LATER);
    await database.save({ job: documents.job, library: { ...documents.library, garmentLots: [] } }, LATER);
    expect(await changedAt()).toBe(AT);
    await database.save(renamed(documents, "next"), LATER);
    expect(await changedAt()).toBe(LATER);
    const { id } = documents.job;
    await connection.put("jobs", { version: ARCHIVE_VERSION, revision: 9, document: documents.job }, id);
    expect(await changedAt()).toBeNull();
    await database.loadJob(id);
    await database.save(documents, LATER);
    expect(await changedAt()).toBeNull();
  });

  it("gives every job that can be read, to see what they use", async () => {
    const database = tonebenchDatabase(connection);
    await database.save(documents, AT);
    await database.save({ job: others.job, library: documents.library }, AT);
    await connection.put("jobs", { version: 1, revision: 1, document: { broken: true } }, "broken");
    const found = await database.loadJobs();
    expect(new Set(found)).toEqual(new Set([documents.job, others.job]));
  });

  it("remembers the last job", async () => {
    const database = tonebenchDatabase(connection);
    await database.setLastJobId("a");
    await database.setLastJobId("b");
    expect(await database.lastJobId()).toBe("b");
  });
});

describe("a save", () => {
  it("writes job and library together or neither: a job that cannot be stored leaves the library alone", async () => {
    const database = tonebenchDatabase(connection);
    await database.save(documents, AT);
    // A function cannot be stored; the job is written after the library in the same transaction.
    const unstorable = { ...documents.job, note: () => 1 };
    await expect(database.save({ job: unstorable, library: others.library }, AT)).rejects.toThrow();
    const after = tonebenchDatabase(connection);
    expect(await after.loadLibrary()).toEqual({ status: "found", document: documents.library });
    expect(await after.loadJob(documents.job.id)).toEqual({ status: "found", document: documents.job });
  });

  it("works again after one that failed", async () => {
    const database = tonebenchDatabase(connection);
    const unstorable = { ...documents.job, note: () => 1 };
    await expect(database.save({ job: unstorable, library: documents.library }, AT)).rejects.toThrow();
    await database.save(documents, AT);
    expect((await tonebenchDatabase(connection).loadLibrary()).status).toBe("found");
  });

  it("rejects when the browser has closed the database", async () => {
    const database = tonebenchDatabase(connection);
    connection.close();
    await expect(database.save(documents, AT)).rejects.toThrow();
  });

  it("refuses to write over what another tab saved since, and leaves that as it is", async () => {
    const first = tonebenchDatabase(connection);
    const second = tonebenchDatabase(connection);
    await first.save(documents, AT);
    await second.loadLibrary();
    await second.loadJob(documents.job.id);
    await second.save(renamed(documents, "second"), AT);
    await expect(first.save(renamed(documents, "first"), AT)).rejects.toMatchObject({
      code: "changed-elsewhere",
    });
    expect((await second.listJobs())[0]?.number).toBe("second");
    await first.loadJob(documents.job.id);
    await first.save(renamed(documents, "first"), AT);
    expect((await second.listJobs())[0]?.number).toBe("first");
  });

  it("refuses a library that another tab changed, but not where this tab left its own unchanged", async () => {
    const first = tonebenchDatabase(connection);
    const second = tonebenchDatabase(connection);
    await first.save(documents, AT);
    const loaded = await second.loadLibrary();
    if (loaded.status !== "found") throw new Error("the library is not there");
    await second.save({ job: others.job, library: { ...loaded.document, approvals: [] } }, AT);
    await first.save(renamed(documents, "again"), AT);
    const changed = { ...documents, library: { ...documents.library, testPrints: [] } };
    await expect(first.save(changed, AT)).rejects.toMatchObject({ code: "changed-elsewhere" });
  });
});

describe("a stored record", () => {
  it("is kept by every later save, whatever the saved documents leave out: records are only ever added", async () => {
    const database = tonebenchDatabase(connection);
    await database.save(documents, AT);
    await database.save(
      {
        job: { ...documents.job, number: "later", checklist: [], pressLog: [] },
        library: { ...documents.library, testPrints: [], approvals: [] },
      },
      AT,
    );
    const [library, job] = [await database.loadLibrary(), await database.loadJob(documents.job.id)];
    expect(documents.library.testPrints.length).toBeGreaterThan(0);
    expect(library).toEqual({ status: "found", document: documents.library });
    expect(job).toEqual({ status: "found", document: { ...documents.job, number: "later" } });
  });

  it("stands before the ones that are new", async () => {
    const database = tonebenchDatabase(connection);
    const { checklist, pressLog } = documents.job;
    const [signed, pulled] = [checklist[0], pressLog[0]];
    if (signed === undefined || pulled === undefined) throw new Error("the sample has an empty ledger");
    const id = "00000000-0000-4000-8000-000000000009";
    await database.save(documents, AT);
    const later = { checklist: [{ ...signed, id }], pressLog: [{ ...pulled, id }] };
    await database.save({ job: { ...documents.job, ...later }, library: documents.library }, AT);
    const job = await database.loadJob(documents.job.id);
    if (job.status !== "found") throw new Error("the job must be found");
    expect(job.document.checklist).toEqual([...checklist, { ...signed, id }]);
    expect(job.document.pressLog).toEqual([...pressLog, { ...pulled, id }]);
  });
});

describe("a stored document that cannot be read", () => {
  async function spoil(document: unknown, version = 1): Promise<void> {
    await connection.put("jobs", { version, revision: 1, document }, documents.job.id);
    await connection.put("library", { version, revision: 1, document }, "library");
  }

  it("is reported with the place, listed, and stays", async () => {
    const spoilt = { ...documents.job, number: 7 };
    await spoil(spoilt);
    const database = tonebenchDatabase(connection);
    const problem = { code: "wrong-type", where: "job.number", detail: "string" };
    expect(await database.loadJob(documents.job.id)).toEqual({ status: "unreadable", problems: [problem] });
    expect((await database.listJobs())[0]?.problems).toEqual([problem]);
    expect((await database.loadLibrary()).status).toBe("unreadable");
    expect((await connection.get("jobs", documents.job.id))?.document).toEqual(spoilt);
  });

  it("of a newer version says so", async () => {
    await spoil(documents.job, 99);
    expect(await tonebenchDatabase(connection).loadJob(documents.job.id)).toEqual({
      status: "unreadable",
      problems: [{ code: "newer-version", where: "job", detail: "99" }],
    });
  });

  it.each([
    ["a text", "x"],
    ["no version", { document: {} }],
    ["a bad version", { version: 0, document: {} }],
  ])("that is %s is reported, not thrown", async (_name, record) => {
    await connection.put("jobs", record as never, documents.job.id);
    const reading = await tonebenchDatabase(connection).loadJob(documents.job.id);
    expect(reading.status).toBe("unreadable");
  });

  it("is set aside before anything is written in its place", async () => {
    await spoil({ broken: true });
    const database = tonebenchDatabase(connection);
    await database.loadLibrary();
    await database.loadJob(documents.job.id);
    await database.save(documents, AT);
    expect((await database.loadJob(documents.job.id)).status).toBe("found");
    const aside = await connection.getAll("setAside");
    expect(aside.map(({ key }) => key).sort()).toEqual([documents.job.id, "library"].sort());
    expect(aside[0]?.record).toEqual({ version: 1, revision: 1, document: { broken: true } });
    await database.save(renamed(documents, "next"), AT);
    expect(await connection.count("setAside")).toBe(2);
  });
});

describe.each([
  [1, version1Archive(), "V-1", 200],
  [2, version2Archive(), "V-2", 400],
])("what version %i of the documents left in the database", (version, old, number, pieceCount) => {
  it("is read as today's, and stored as today's with the next save", async () => {
    const imported = readJobArchive(JSON.stringify(old));
    if (!imported.ok) throw new Error("an older version must be readable");
    await connection.put("library", { version, revision: 3, document: old.library }, "library");
    await connection.put("jobs", { version, revision: 1, document: old.job }, old.job.id);
    const database = tonebenchDatabase(connection);
    const library = await database.loadLibrary();
    const job = await database.loadJob(old.job.id);
    expect(library).toEqual({ status: "found", document: imported.documents.library });
    expect(job).toEqual({ status: "found", document: imported.documents.job });
    expect(await database.listJobs()).toMatchObject([{ number, pieceCount, problems: [] }]);
    const next = { ...imported.documents.job, number: "Renamed" };
    await database.save({ job: next, library: { ...imported.documents.library } }, AT);
    const stored = await connection.get("library", "library");
    expect(stored).toMatchObject({ version: ARCHIVE_VERSION, revision: 4 });
    expect(stored).toMatchObject({ document: imported.documents.library });
    expect(await connection.get("jobs", old.job.id)).toMatchObject({
      version: ARCHIVE_VERSION,
      document: next,
    });
    expect(await connection.getAll("setAside")).toEqual([]);
  });
});

describe("asking for lasting storage", () => {
  it("asks the browser once, whatever it answers", async () => {
    const { askToPersist } = await import("../../src/storage/persistence.ts");
    const database = tonebenchDatabase(connection);
    const persist = vi.fn(async () => false);
    const manager = { persist, persisted: async () => false };
    expect(await askToPersist(database, manager)).toBe(false);
    expect(await askToPersist(database, manager)).toBe(false);
    expect(persist).toHaveBeenCalledTimes(1);
    expect(await askToPersist(database, { ...manager, persisted: async () => true })).toBe(true);
    expect(await askToPersist(database, undefined)).toBe(false);
  });
});
