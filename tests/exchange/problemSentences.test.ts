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

  it("never swallows a code it does not know", () => {
    expect(sentenceForProblem({ code: "odd", where: "job" })).toBe("odd: the job (job).");
  });
});
