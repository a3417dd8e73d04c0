/** Sign-offs and records are never undone, whatever is done around them. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Documents } from "../../../src/job/documents.ts";
import { appendChecklistEntry } from "../../../src/job/edits/checklist.ts";
import { changeJob } from "../../../src/job/edits/job.ts";
import { addLine } from "../../../src/job/edits/lines.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import { addShelfItem } from "../../../src/job/edits/shelf.ts";
import { validateDocuments } from "../../../src/job/validateDocuments.ts";
import {
  exampleDocuments,
  exampleEntry,
  exampleId,
  exampleTestPrint,
  ids,
  lotDraft,
} from "../../job/exampleDocuments.ts";
import { examplePressEntry } from "../../job/exampleRecords.ts";
import { arbitraryDraw, withDraw } from "../../job/randomEdits.ts";
import { openStore } from "./openStore.ts";

const withTestPrint = (d: Documents): Documents => ({
  ...d,
  library: {
    ...d.library,
    testPrints: [...d.library.testPrints, exampleTestPrint(1, { garmentLotId: NEW_LOT })],
  },
});
const NEW_LOT = exampleId(901);

describe("a record", () => {
  it("stays when the edits around it are undone and redone", () => {
    const { state, open, rename, sign } = openStore();
    rename("One");
    sign(1);
    rename("Two");
    sign(2);
    const ledger = open().job.checklist;
    state().undo();
    state().undo();
    expect(open().job.customer).toBe(exampleDocuments().job.customer);
    expect(open().job.checklist).toBe(ledger);
    state().redo();
    state().redo();
    expect(open().job.customer).toBe("Two");
    expect(open().job.checklist).toBe(ledger);
  });

  it("is no undo step and does not cost the redo", () => {
    const { state, rename, sign, open } = openStore();
    sign(1);
    expect(state().canUndo).toBe(false);
    rename("One");
    state().undo();
    sign(2);
    expect(state().canRedo).toBe(true);
    state().redo();
    expect([open().job.customer, open().job.checklist.length]).toEqual(["One", 2]);
  });

  it("is refused where it removes, changes or reorders an entry, or edits on the side", () => {
    const { state, open, sign } = openStore();
    sign(1);
    sign(2);
    const before = open();
    const withChecklist = (checklist: Documents["job"]["checklist"]) => (d: Documents) => ({
      ...d,
      job: { ...d.job, checklist },
    });
    const [first, second] = before.job.checklist;
    for (const checklist of [[first!], [{ ...first!, signer: "B" }, second!], [second!, first!]]) {
      expect(() => state().record(withChecklist(checklist))).toThrow("only be added");
    }
    expect(() => state().record((d) => changeJob(d, { customer: "Other" }))).toThrow("only be added");
    expect(open()).toBe(before);
  });

  it("may be a first-off with its test print at once, and both stay", () => {
    const { state, open, rename, undoAll } = openStore();
    const print = exampleTestPrint(1);
    const entry = examplePressEntry(1, { kind: "first-off", testPrintId: print.id });
    rename("One");
    state().record((d) => appendPressEntry(appendTestPrint(d, print), entry));
    expect(undoAll()).toBe(1);
    expect([open().job.pressLog, open().library.testPrints]).toEqual([[entry], [print]]);
    state().redo();
    expect([open().job.customer, open().job.pressLog]).toEqual(["One", [entry]]);
  });

  it("of the press is refused where it removes or changes an entry, and as an edit", () => {
    const { state, open, pull } = openStore();
    pull(1);
    pull(2);
    const before = open();
    const [first, second] = before.job.pressLog;
    for (const pressLog of [[first!], [{ ...first!, note: "B" }, second!], [second!, first!]]) {
      expect(() => state().record((d) => ({ ...d, job: { ...d.job, pressLog } }))).toThrow("only be added");
    }
    expect(() => state().edit((d) => appendPressEntry(d, examplePressEntry(3)))).toThrow("use record");
    expect(open()).toBe(before);
  });

  it("keeps the lot and the set-up it names when the edits that added them are undone", () => {
    const { state, open, undoAll } = openStore();
    const setUp = { ...exampleDocuments().library.shelf.setUps[0]!, id: exampleId(902) };
    state().edit((d) => addLine(d, { lineId: exampleId(900), lotId: NEW_LOT, lot: lotDraft }));
    state().edit((d) => addShelfItem(d, "setUps", setUp));
    state().record((d) => ({
      ...d,
      library: {
        ...d.library,
        testPrints: [exampleTestPrint(1, { garmentLotId: NEW_LOT, setUpId: setUp.id })],
      },
    }));
    expect(undoAll()).toBe(2);
    expect(open().job.lines).toHaveLength(2);
    expect(open().library.garmentLots.map(({ id }) => id)).toContain(NEW_LOT);
    expect(open().library.shelf.setUps.map(({ id }) => id)).toContain(setUp.id);
    expect(validateDocuments(open())).toEqual([]);
    state().redo();
    state().redo();
    expect(open().job.lines).toHaveLength(3);
    expect(validateDocuments(open())).toEqual([]);
  });

  it("of a lot that nothing else names keeps that lot alone", () => {
    const { state, open } = openStore();
    state().edit((d) => addLine(d, { lineId: exampleId(900), lotId: NEW_LOT, lot: lotDraft }));
    state().record(withTestPrint);
    state().edit((d) => addLine(d, { lineId: exampleId(903), lotId: exampleId(904), lot: lotDraft }));
    state().undo();
    state().undo();
    expect(open().library.garmentLots.map(({ id }) => id)).toEqual([ids.lot, ids.otherLot, NEW_LOT]);
  });
});

describe("any interleaving of edits, drags, sign-offs, pulls, undo and redo", () => {
  const action = fc.oneof(
    { weight: 4, arbitrary: fc.record({ kind: fc.constant("edit" as const), draw: arbitraryDraw }) },
    {
      weight: 2,
      arbitrary: fc.record({
        kind: fc.constant("drag" as const),
        to: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
    },
    { weight: 2, arbitrary: fc.constant({ kind: "sign" as const }) },
    { weight: 2, arbitrary: fc.constant({ kind: "pull" as const }) },
    { weight: 2, arbitrary: fc.constant({ kind: "undo" as const }) },
    { weight: 1, arbitrary: fc.constant({ kind: "redo" as const }) },
  );

  it("never shortens or changes a ledger, stays valid, and undo to the start then redo to the end restores all", () => {
    let signedRuns = 0;
    let undoneRuns = 0;
    fc.assert(
      fc.property(fc.array(action, { minLength: 10, maxLength: 40, size: "max" }), (actions) => {
        const { state, open, rename, undoAll } = openStore();
        actions.forEach((one, step) => {
          const { checklist, pressLog } = open().job;
          if (one.kind === "edit") state().edit((d) => withDraw(d, one.draw, step));
          else if (one.kind === "drag") rename(`Customer ${one.to}`, "drag");
          else if (one.kind === "undo") state().undo();
          else if (one.kind === "redo") state().redo();
          else {
            const line = open().job.lines[0];
            const place = open().job.places[0];
            if (line === undefined || place === undefined) return;
            const at = { lineId: line.id, placeId: place.id };
            if (one.kind === "sign") state().record((d) => appendChecklistEntry(d, exampleEntry(step, at)));
            else state().record((d) => appendPressEntry(d, examplePressEntry(step, at)));
            const grown = open().job[one.kind === "sign" ? "checklist" : "pressLog"];
            expect(grown).toHaveLength((one.kind === "sign" ? checklist : pressLog).length + 1);
          }
          expect(open().job.checklist.slice(0, checklist.length)).toEqual(checklist);
          expect(open().job.pressLog.slice(0, pressLog.length)).toEqual(pressLog);
          expect(validateDocuments(open())).toEqual([]);
        });
        while (state().canRedo) state().redo();
        const end = open();
        const count = undoAll();
        const start = exampleDocuments();
        const { checklist, pressLog } = end.job;
        expect(open()).toEqual({ ...start, job: { ...start.job, checklist, pressLog } });
        for (let i = 0; i < count; i++) state().redo();
        expect(open()).toEqual(end);
        if (checklist.length > 0 && pressLog.length > 0) signedRuns++;
        if (count > 1) undoneRuns++;
      }),
    );
    // Most runs must have signed, pulled and undone something, or the property says little.
    expect(Math.min(signedRuns, undoneRuns)).toBeGreaterThan(50);
  });
});
