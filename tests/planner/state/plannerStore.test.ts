/** Undo takes back edits; a drag is one step; what changes nothing is none. */
import { describe, expect, it } from "vitest";
import { appendChecklistEntry } from "../../../src/job/edits/checklist.ts";
import { changeJob } from "../../../src/job/edits/job.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { UNDO_LIMIT } from "../../../src/planner/state/plannerStore.ts";
import { exampleDocuments, exampleEntry, ids } from "../../job/exampleDocuments.ts";
import { openStore } from "./openStore.ts";

describe("undo and redo", () => {
  it("restore the documents as they were, step by step and back", () => {
    const { state, open, rename, tint } = openStore();
    const seen = [open()];
    rename("One");
    seen.push(open());
    tint(0.01);
    seen.push(open());
    expect([state().canUndo, state().canRedo]).toEqual([true, false]);
    state().undo();
    expect(open()).toEqual(seen[1]);
    state().undo();
    expect(open()).toEqual(seen[0]);
    expect([state().canUndo, state().canRedo]).toEqual([false, true]);
    state().redo();
    state().redo();
    expect(open()).toEqual(seen[2]);
    expect(state().canRedo).toBe(false);
  });

  it("do nothing where there is nothing to undo or redo", () => {
    const { state, open } = openStore();
    const before = open();
    state().undo();
    state().redo();
    expect(open()).toBe(before);
  });

  it("forget what was undone once something else is done", () => {
    const { state, open, rename } = openStore();
    rename("One");
    state().undo();
    rename("Two");
    expect(state().canRedo).toBe(false);
    state().redo();
    expect(open().job.customer).toBe("Two");
  });

  it(`go back ${UNDO_LIMIT} steps and no further`, () => {
    const { open, rename, undoAll } = openStore();
    for (let i = 1; i <= UNDO_LIMIT + 5; i++) rename(`Customer ${i}`);
    expect(undoAll()).toBe(UNDO_LIMIT);
    expect(open().job.customer).toBe("Customer 5");
  });

  it("begin anew where other documents are opened", () => {
    const { state, open, rename } = openStore();
    rename("One");
    const other = changeJob(exampleDocuments(), { customer: "Other" });
    state().load(other);
    expect(open()).toBe(other);
    expect([state().canUndo, state().canRedo]).toEqual([false, false]);
    state().undo();
    expect(open()).toBe(other);
    rename("Again");
    state().undo();
    expect(open()).toEqual(other);
    state().load(null);
    expect([state().documents, state().canUndo, state().canRedo]).toEqual([null, false, false]);
  });
});

describe("an edit", () => {
  it("that changes nothing is no step, though it makes new objects", () => {
    const { state, open } = openStore();
    const before = open();
    state().edit((d) => structuredClone(d));
    state().edit((d) => changeJob(d, { customer: d.job.customer }));
    expect(open()).toBe(before);
    expect(state().canUndo).toBe(false);
  });

  it("that throws changes nothing and adds no step", () => {
    const { state, open } = openStore();
    const before = open();
    expect(() => state().edit((d) => changeLine(d, ids.line, { piecePrice: -1 }))).toThrow("piecePrice");
    expect(open()).toBe(before);
    expect(state().canUndo).toBe(false);
  });

  it("that touches a ledger is refused", () => {
    const { state } = openStore();
    expect(() => state().edit((d) => appendChecklistEntry(d, exampleEntry(1)))).toThrow("use record");
    expect(state().ledgers?.checklist).toEqual([]);
  });

  it("needs an open job", () => {
    expect(() => openStore(null).rename("One")).toThrow("a job must be open");
  });

  it("keeps the objects of what it leaves alone", () => {
    const { open, rename } = openStore();
    const before = open();
    rename("One");
    expect(open().job.mixes).toBe(before.job.mixes);
    expect(open().library.shelf).toBe(before.library.shelf);
  });

  it("is told to listeners once, with parts and whole agreeing", () => {
    const { store, rename, state } = openStore();
    let calls = 0;
    store.subscribe(({ documents, undoable, ledgers }) => {
      calls++;
      expect(documents?.job.customer).toBe(undoable?.job.customer);
      expect(documents?.job.checklist).toBe(ledgers?.checklist);
    });
    rename("One");
    // The second call says that there is something to undo.
    expect(calls).toBe(2);
    rename("Two");
    expect(calls).toBe(3);
    state().undo();
    state().redo();
  });
});

describe("a gesture", () => {
  it("is one step, however many edits it has", () => {
    const { open, tint, undoAll, state } = openStore();
    const before = open();
    for (const massFraction of [0.006, 0.007, 0.01]) tint(massFraction, "tint");
    expect(undoAll()).toBe(1);
    expect(open()).toEqual(before);
    state().redo();
    expect(open().job.mixes[1]?.recipe[1]?.massFraction).toBe(0.01);
  });

  it.each<[string, (parts: ReturnType<typeof openStore>) => void, number]>([
    ["another gesture", ({ rename }) => rename("One", "name"), 3],
    ["an edit without a gesture", ({ rename }) => rename("One"), 3],
    ["its end", ({ state }) => state().endGesture(), 2],
    ["a sign-off", ({ sign }) => sign(1), 2],
  ])("ends with %s: the same name then begins a new step", (_, interrupt, stepCount) => {
    const parts = openStore();
    parts.tint(0.006, "tint");
    interrupt(parts);
    parts.tint(0.007, "tint");
    expect(parts.undoAll()).toBe(stepCount);
  });

  it("does not swallow what was undone", () => {
    const { tint, state, undoAll, open } = openStore();
    tint(0.006, "tint");
    state().undo();
    tint(0.007, "tint");
    expect(undoAll()).toBe(1);
    expect(open()).toEqual(exampleDocuments());
  });

  it("that ends where it began is no step", () => {
    const { rename, state } = openStore();
    const start = state().documents?.job.customer ?? "";
    rename("One", "name");
    rename(start, "name");
    expect(state().canUndo).toBe(false);
    rename("Two", "name");
    expect(state().canUndo).toBe(true);
    state().undo();
    expect(state().documents?.job.customer).toBe(start);
  });
});

describe("the standing of saving", () => {
  it("is told apart from the documents and is no undo step", () => {
    const { state, open } = openStore();
    const before = open();
    state().setSaveState("failed");
    expect(state().saveState).toBe("failed");
    expect(open()).toBe(before);
    expect(state().canUndo).toBe(false);
  });
});
