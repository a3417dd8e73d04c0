/** Opening, importing and removing jobs loses nothing and says what went wrong. */
import { describe, expect, it } from "vitest";
import { changeJob, newJob } from "../../../src/job/edits/job.ts";
import { archiveFileName } from "../../../src/planner/jobs/jobSession.ts";
import { jobSentence } from "../../../src/planner/words/jobSentences.ts";
import { demoText, jobBench, newJobId } from "./jobBench.ts";

const startedJob = (last: number, number: string) =>
  newJob({ id: newJobId(last), number, customer: "", createdAt: "2026-01-01T08:00:00.000Z" });

async function opened(outcome: Promise<unknown>): Promise<string> {
  const result = (await outcome) as { ok: unknown; jobId?: string };
  expect(result).toMatchObject({ ok: true });
  return result.jobId ?? "";
}

describe("at the start", () => {
  it("opens the demo job on the first visit, stored like any other", async () => {
    const { session, store, storage } = jobBench();
    const jobId = await opened(session.start() as Promise<unknown>);
    expect(store.getState().documents?.job.number).toBe("VM-217");
    expect((await storage.loadJob(jobId)).status).toBe("found");
  });

  it("opens the last job on a later visit, and never the demo again", async () => {
    const bench = jobBench();
    await bench.session.start();
    await bench.session.create(startedJob(1, "T-1"));
    bench.store.getState().load(null);
    await bench.session.start();
    expect(bench.store.getState().documents?.job.number).toBe("T-1");
    expect(bench.demoReads()).toBe(1);
  });

  it("says so where the demo's file cannot be had", async () => {
    const { session } = jobBench({ demo: () => Promise.reject(new Error("404")) });
    const outcome = await session.start();
    expect(outcome?.ok === false && outcome.problems.map(jobSentence)).toEqual([
      "The demo job could not be read: 404",
    ]);
  });

  it("does not bring the demo back after it was deleted", async () => {
    const { session, store } = jobBench();
    const jobId = await opened(session.start() as Promise<unknown>);
    expect(await session.remove(jobId)).toEqual({ ok: true });
    expect(store.getState().documents).toBeNull();
    expect(await session.start()).toBeNull();
  });
});

describe("opening", () => {
  it("writes what is not written yet before another job is opened", async () => {
    const { session, store, storage } = jobBench();
    const demoId = await opened(session.start() as Promise<unknown>);
    store.getState().edit((now) => changeJob(now, { customer: "Changed" }));
    await session.create(startedJob(1, "T-1"));
    const stored = await storage.loadJob(demoId);
    expect(stored.status === "found" && stored.document.customer).toBe("Changed");
  });

  it("stays on the open job where that cannot be written", async () => {
    const { session, store, storage } = jobBench();
    await session.start();
    await session.create(startedJob(1, "T-1"));
    store.getState().edit((now) => changeJob(now, { customer: "Changed" }));
    storage.refusal = new Error("quota exceeded");
    const outcome = await session.openDemo();
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: "not-saved" }] });
    expect(store.getState().documents?.job.customer).toBe("Changed");
  });

  it("says of an unknown job that it is not on this device", async () => {
    const { session } = jobBench();
    const outcome = await session.open(newJobId(77));
    expect(outcome.ok).toBe(false);
    expect(!outcome.ok && outcome.problems.map(jobSentence)[0]).toMatch(/No job with this address/);
  });

  it("reports a damaged job and leaves it where it is", async () => {
    const { session, storage, store } = jobBench();
    const jobId = await opened(session.start() as Promise<unknown>);
    store.getState().load(null);
    storage.damaged.add(jobId);
    expect(await session.open(jobId)).toMatchObject({ ok: false, problems: [{ where: "job.lines" }] });
    expect(store.getState().documents).toBeNull();
  });

  it("makes a refusing browser a problem with its own words", async () => {
    const { session, storage } = jobBench();
    storage.refusal = new Error("quota exceeded");
    const outcome = await session.start();
    expect(outcome).toMatchObject({ ok: false });
    expect(outcome?.ok === false && outcome.problems.map(jobSentence)[0]).toMatch(/quota exceeded/);
  });
});

describe("import and export", () => {
  it("brings back an exported job after everything was wiped", async () => {
    const before = jobBench();
    const jobId = await opened(before.session.start() as Promise<unknown>);
    before.store.getState().edit((now) => changeJob(now, { customer: "Changed" }));
    expect(await before.session.exportJob(jobId)).toEqual({ ok: true, written: true });
    const file = before.storage.written[0];
    expect(file?.name).toBe("VM-217.tonebench.json");

    const after = jobBench();
    after.storage.file = file ?? null;
    await opened(after.session.importFile());
    expect(after.store.getState().documents?.job).toEqual(before.store.getState().documents?.job);
  });

  it.each([
    ["no JSON", "not json"],
    ["another file", `{"kind":"something"}`],
    ["a newer version", demoText.replace(/"version":\s*\d+/, '"version": 99')],
    ["a damaged field", demoText.replace(/"number":\s*"VM-217"/, '"number": 217')],
  ])("changes nothing on %s", async (_name, text) => {
    const { session, storage, store } = jobBench();
    await session.create(startedJob(1, "T-1"));
    const documents = store.getState().documents;
    storage.file = { name: "x.json", text };
    const imported = await session.importFile();
    expect(imported.ok).toBe(false);
    expect(imported.ok === false && imported.problems.map(jobSentence)[0]).toMatch(/\.$/);
    expect(store.getState().documents).toBe(documents);
    expect(await storage.listJobs()).toHaveLength(1);
  });

  it("asks before a stored job is replaced, and can keep both", async () => {
    const { session, storage, store } = jobBench();
    const jobId = await opened(session.start() as Promise<unknown>);
    store.getState().edit((now) => changeJob(now, { customer: "Changed" }));
    storage.file = { name: "demo.json", text: demoText };
    const imported = await session.importFile();
    if (imported.ok !== "already-here") throw new Error("was not asked");
    expect(store.getState().documents?.job.customer).toBe("Changed");
    const secondId = await opened(session.accept(imported.documents, "as-new"));
    expect(secondId).not.toBe(jobId);
    expect(await storage.listJobs()).toHaveLength(2);
    const first = await storage.loadJob(jobId);
    expect(first.status === "found" && first.document.customer).toBe("Changed");
  });

  it("does nothing when the file dialog is closed", async () => {
    const { session, storage } = jobBench();
    storage.file = null;
    expect(await session.importFile()).toEqual({ ok: "closed" });
  });

  it("exports what was typed a moment ago", async () => {
    const { session, storage, store } = jobBench();
    const jobId = await opened(session.start() as Promise<unknown>);
    store.getState().edit((now) => changeJob(now, { customer: "Just typed" }));
    await session.exportJob(jobId);
    expect(storage.written[0]?.text).toContain("Just typed");
  });
});

describe("archiveFileName", () => {
  it.each([
    ["VM-217", "VM-217.tonebench.json"],
    ["A/B: 3", "A-B-3.tonebench.json"],
    ["../..", "job.tonebench.json"],
  ])("makes a file name of %j that every system takes", (number, name) => {
    expect(archiveFileName(number)).toBe(name);
  });
});
