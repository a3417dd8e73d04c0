/** Whatever a reader has to say can be said in a sentence. */
import { readdir, readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { READINGS_CODES, readingsSentence } from "../../../src/planner/words/readingsSentences.ts";

async function codesInSource(): Promise<Set<string>> {
  const folder = new URL("../../../src/exchange/readings/", import.meta.url);
  const codes = new Set<string>();
  for (const name of await readdir(folder)) {
    const text = await readFile(new URL(name, folder), "utf8");
    for (const [, code = ""] of text.matchAll(/"(readings-[a-z0-9-]+)"/g)) codes.add(code);
  }
  return codes;
}

describe("sentences for readings files", () => {
  it("exist for every code in the readers, and for no other", async () => {
    const codes = await codesInSource();
    expect(codes.size).toBeGreaterThan(40);
    expect([...codes].sort()).toEqual([...READINGS_CODES].sort());
  });

  it("are whole sentences with the figures in them", () => {
    const values = { line: 14, heading: "LAB_L", text: "27.4x" };
    expect(readingsSentence({ code: "readings-not-a-number", where: "tables[0].rows[1]", values })).toBe(
      "Line 14: LAB_L is not a number: “27.4x”.",
    );
    expect(readingsSentence({ code: "readings-cgats-cut-short", where: "tables[0]" })).toBe(
      "The file is cut short: a table does not end.",
    );
    for (const code of READINGS_CODES)
      expect(readingsSentence({ code, where: "", values: { line: 3 } }).replace(/^Line 3: /, "")).toMatch(
        /\.$/,
      );
  });

  it("never swallow a code they do not know", () => {
    expect(readingsSentence({ code: "readings-odd", where: "rows[1]" })).toBe("readings-odd: rows[1].");
  });
});
