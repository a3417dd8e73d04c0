/** Names and equality of documents. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineName } from "../../src/job/lineName.ts";
import { linesAt, pieceCount } from "../../src/job/lookup.ts";
import { sameValue } from "../../src/job/sameValue.ts";
import { exampleDocuments, ids } from "./exampleDocuments.ts";

describe("the name of a lot", () => {
  it("is style, colourway and mill, without what is not known", () => {
    expect(lineName({ style: "Heavy tee", colourway: "Forest", mill: "Mill A" })).toBe(
      "Heavy tee, Forest, Mill A",
    );
    expect(lineName({ style: "Heavy tee", colourway: "  ", mill: "" })).toBe("Heavy tee");
  });
});

describe("a line", () => {
  it("has the pieces of all its sizes", () => {
    expect(pieceCount(exampleDocuments().job.lines[0]!)).toBe(30);
  });

  it("is printed at a place for all lines, or at one that names it", () => {
    const { job } = exampleDocuments();
    const place = job.places[0]!;
    expect(linesAt(job, place)).toHaveLength(2);
    expect(linesAt(job, { ...place, lineIds: [ids.otherLine] }).map(({ id }) => id)).toEqual([ids.otherLine]);
  });
});

describe("two JSON values", () => {
  it("are the same exactly when their text with sorted keys is", () => {
    const sorted = (value: unknown): unknown => {
      if (Array.isArray(value)) return value.map(sorted);
      if (typeof value !== "object" || value === null) return value;
      const entries = Object.entries(value).map(([key, part]) => [key, sorted(part)] as const);
      return { object: entries.sort(([one], [other]) => (one < other ? -1 : 1)) };
    };
    const value = fc.jsonValue({ maxDepth: 2 }).map((one) => JSON.parse(JSON.stringify(one)) as unknown);
    fc.assert(
      fc.property(value, value, (one, other) => {
        expect(sameValue(one, structuredClone(one))).toBe(true);
        expect(sameValue(one, other)).toBe(JSON.stringify(sorted(one)) === JSON.stringify(sorted(other)));
      }),
    );
  });

  it("differ where one has a key, an entry or a kind more", () => {
    expect(sameValue({ a: 1 }, { a: 1, b: undefined })).toBe(false);
    expect(sameValue({ a: undefined }, { b: undefined })).toBe(false);
    expect(sameValue([], {})).toBe(false);
    expect(sameValue([1], [1, 2])).toBe(false);
    expect(sameValue({ a: { b: 1, c: 2 } }, { a: { c: 2, b: 1 } })).toBe(true);
  });
});
