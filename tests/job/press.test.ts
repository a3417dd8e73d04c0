/** What the press log takes, and what it refuses. */
import { describe, expect, it } from "vitest";
import { appendPressEntry } from "../../src/job/edits/press.ts";
import { appendTestPrint } from "../../src/job/edits/records.ts";
import type { PressEntry } from "../../src/job/pressDocument.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleId, exampleTestPrint, ids } from "./exampleDocuments.ts";
import { examplePressEntry } from "./exampleRecords.ts";

const NOWHERE = exampleId(999);

describe("the press log", () => {
  it("is added to at its end, a first-off with the record by which it teaches", () => {
    const print = exampleTestPrint(1);
    const firstOff = examplePressEntry(1, { kind: "first-off", testPrintId: print.id });
    const pull = examplePressEntry(2, { readings: { kind: "by-eye", grade: 4.5, direction: "darker" } });
    const after = [firstOff, pull].reduce(appendPressEntry, appendTestPrint(exampleDocuments(), print));
    expect(after.job.pressLog).toEqual([firstOff, pull]);
    expect(validateDocuments(after)).toEqual([]);
  });

  it("keeps what a correction corrects", () => {
    const once = appendPressEntry(exampleDocuments(), examplePressEntry(1));
    const correction = examplePressEntry(2, { supersedesId: examplePressEntry(1).id });
    expect(appendPressEntry(once, correction).job.pressLog).toEqual([examplePressEntry(1), correction]);
  });

  it.each<[string, Partial<PressEntry>, string]>([
    ["a line that does not exist", { lineId: NOWHERE }, "line must exist"],
    ["a place that does not exist", { placeId: NOWHERE }, "place must exist"],
    [
      "a test print that does not exist",
      { kind: "first-off", testPrintId: NOWHERE },
      "test print must exist",
    ],
    ["an entry that says nothing of what was printed", { subject: " " }, "entry.subject"],
    ["the correction of an entry that does not exist", { supersedesId: NOWHERE }, "superseded press entry"],
    ["an entry without a name", { by: "" }, "entry.by"],
    ["no reading", { readings: { kind: "pairs", deltaL: [], pieceCount: 1 } }, "entry.readings.deltaL"],
    [
      "more pieces than pairs",
      { readings: { kind: "pairs", deltaL: [-4], pieceCount: 2 } },
      "more-pieces-than-pairs",
    ],
    [
      "a grade between the steps of the grey scale",
      { readings: { kind: "by-eye", grade: 4.2, direction: "darker" } },
      "entry.readings.grade",
    ],
  ])("refuses %s", (_, change, message) => {
    expect(() => appendPressEntry(exampleDocuments(), examplePressEntry(1, change))).toThrow(message);
  });

  it("refuses a pull that would teach, though its test print exists", () => {
    const documents = appendTestPrint(exampleDocuments(), exampleTestPrint(1));
    const pull = examplePressEntry(1, { testPrintId: exampleTestPrint(1).id });
    expect(() => appendPressEntry(documents, pull)).toThrow("null for a pull");
  });

  it("refuses one entry twice, and a second correction of one entry", () => {
    const once = appendPressEntry(exampleDocuments(), examplePressEntry(1));
    expect(() => appendPressEntry(once, examplePressEntry(1))).toThrow("new id");
    const corrected = appendPressEntry(once, examplePressEntry(2, { supersedesId: examplePressEntry(1).id }));
    expect(() =>
      appendPressEntry(corrected, examplePressEntry(3, { supersedesId: examplePressEntry(1).id })),
    ).toThrow("corrected already");
  });

  it("leaves everything else as it was", () => {
    const before = exampleDocuments();
    const { job, library } = appendPressEntry(before, examplePressEntry(1, { lineId: ids.otherLine }));
    expect(job).toEqual({ ...before.job, pressLog: job.pressLog });
    expect(library).toBe(before.library);
  });
});
