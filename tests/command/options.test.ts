// The command line read: one question at a time, a negative reading taken for what it is, and a sentence for what is wrong.
import { describe, expect, it } from "vitest";
import { readOptions } from "../../src/command/options.ts";

const TODAY = "2026-02-20";
const read = (...args: string[]) => readOptions(args, TODAY);

describe("readOptions", () => {
  it("asks for the matrix as JSON unless told otherwise", () => {
    expect(read("job.json")).toEqual({ file: "job.json", format: "json", question: { kind: "matrix" } });
    expect(read("job.json", "--csv")).toMatchObject({ format: "csv" });
  });

  it("takes a negative change of L* for the value of --recover, in either form", () => {
    const question = { kind: "recover", deltaL: -8.1, pairCount: 4, line: "forest", place: null };
    for (const args of [["--recover", "-8.1"], ["--recover=-8.1"]]) {
      expect(read("job.json", ...args, "--line", "forest")).toMatchObject({ question });
    }
    expect(read("job.json", "--recover", "recorded", "--line", "forest")).toMatchObject({
      question: { ...question, deltaL: null },
    });
  });

  it("plans tests from today, or from the day that is named", () => {
    expect(read("job.json", "--tests")).toMatchObject({ question: { kind: "tests", today: TODAY } });
    expect(read("job.json", "--tests", "--today", "2026-03-01")).toMatchObject({
      question: { today: "2026-03-01" },
    });
  });

  it.each([
    ["no file", []],
    ["two files", ["a.json", "b.json"]],
    ["two questions", ["a.json", "--mixes", "--tests"]],
    ["an unknown option", ["a.json", "--nothing"]],
    ["an option of another question", ["a.json", "--mixes", "--line", "x"]],
    ["an option without its question", ["a.json", "--halftones"]],
    ["a reading that is no number", ["a.json", "--recover", "dark", "--line", "x"]],
    ["an empty reading", ["a.json", "--recover=", "--line", "x"]],
    ["a reading beyond any colour", ["a.json", "--recover", "-300", "--line", "x"]],
    ["half a pair", ["a.json", "--recover", "-8", "--line", "x", "--pairs", "2.5"]],
    ["a day that the calendar lacks", ["a.json", "--tests", "--today", "2026-02-30"]],
  ])("says in one sentence what is wrong with %s", (_what, args) => {
    expect(readOptions(args, TODAY)).toMatch(/usage: npm run plan/);
  });
});
