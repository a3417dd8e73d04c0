import { readdir, readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import {
  KNOWN_PROBLEM_CODES,
  placeInWords,
  sentenceForProblem,
} from "../../src/planner/words/problemSentences.ts";

describe("sentences for problems", () => {
  it("names the place as a printer counts and as the file writes it", () => {
    expect(placeInWords("job.lines[3].piecePrice")).toBe(
      "garment line 4, piecePrice (job.lines[3].piecePrice)",
    );
    expect(placeInWords("library.shelf.meshes[0].threadUm")).toBe(
      "mesh 1, threadUm (library.shelf.meshes[0].threadUm)",
    );
    expect(placeInWords("library.shelf")).toBe("the shelf (library.shelf)");
    expect(placeInWords("")).toBe("the file");
  });

  it("says what is wrong, where, and what was expected", () => {
    expect(
      sentenceForProblem({ code: "out-of-range", where: "job.places[0].widthMm", detail: "at most 2000" }),
    ).toBe(
      "The value is out of range in print place 1, widthMm (job.places[0].widthMm); expected: at most 2000.",
    );
    expect(sentenceForProblem({ code: "newer-version", where: "version", detail: "2" })).toContain(
      "newer Tonebench (file version 2)",
    );
  });

  it("is one finished sentence or two for every known code, without undefined in it", () => {
    expect(KNOWN_PROBLEM_CODES.length).toBeGreaterThan(15);
    for (const code of KNOWN_PROBLEM_CODES) {
      const sentence = sentenceForProblem({ code, where: "job.lines[0]" });
      expect(sentence).toMatch(/^[A-Z].*\.$/);
      expect(sentence).not.toContain("undefined");
    }
  });

  it("says the figures and names that a problem carries", () => {
    const values = { name: "Soft-hand additive", massFraction: 0.8, largestFraction: 0.5 };
    expect(
      sentenceForProblem({ code: "above-data-sheet-limit", where: "recipe[1].massFraction", values }),
    ).toBe("Soft-hand additive is 80 % of the mix; its data sheet allows 50 %.");
    expect(
      sentenceForProblem({ code: "used-by-mix", where: "job.mixes[0]", values: { name: "Soft white" } }),
    ).toBe("The mix Soft white uses it.");
  });

  it("exists for every problem code that job, exchange and storage give", async () => {
    const codes = new Set<string>();
    for (const folder of ["job", "exchange", "storage"]) {
      const at = new URL(`../../src/${folder}/`, import.meta.url);
      for (const name of await readdir(at, { recursive: true })) {
        // Readings files, the notices of the ink room and the forms of the record book have sentences of their own.
        if (!name.endsWith(".ts") || /^(?:readings|inkRoom|recordBook)/.test(name)) continue;
        // A rule of spoilage has a code too, and is no problem.
        const text = (await readFile(new URL(name, at), "utf8")).replaceAll(/spoilageRule: \{[^}]*\}/g, "");
        // Where a code is made: code: "x", refused("x", ...), refuse("x", ...), a schema's params.
        for (const [, code = ""] of text.matchAll(/(?:\bcode: |\brefused?\()"([a-z-]+)"/g)) codes.add(code);
      }
    }
    // Pasted spectra, readings files and the bench form have files of sentences of their own.
    const expected = [...codes].filter((code) => !/^(?:spectrum|readings|bench)-/.test(code));
    expect(expected.length).toBeGreaterThan(20);
    expect(expected.filter((code) => !KNOWN_PROBLEM_CODES.includes(code))).toEqual([]);
  });

  it("never swallows a code it does not know", () => {
    expect(sentenceForProblem({ code: "odd", where: "job" })).toBe("odd: the job (job).");
  });
});
