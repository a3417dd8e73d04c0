/** Any bytes give readings or sentences: 500 spoiled files for each reader here, 20,000 in `npm run soak`. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readReadingsFile } from "../../../src/exchange/readings/readReadingsFile.ts";
import { bytesOf, cgatsFile, cgatsTable, cxf3File, EXAMPLE_SAMPLES, labCsv } from "./exampleFiles.ts";
import { judge, neverInPart, newTally } from "./neverInPart.ts";
import { FORMATS, GOOD } from "./spoiledFiles.ts";

const FUZZ_COUNT = 500;
/** Of the spoiled files, some must survive and some must not, or the fuzzer spoils too much or too little. */
const LEAST_SHARE = 0.03;

describe("a spoiled file", () => {
  it.each(FORMATS)(
    "of %s is taken whole or refused with reasons, and never throws or hangs",
    async (format) => {
      const tally = newTally();
      await fc.assert(neverInPart(format, tally), { numRuns: FUZZ_COUNT });
      expect(Math.min(tally.taken, tally.refused)).toBeGreaterThan(LEAST_SHARE * FUZZ_COUNT);
    },
  );

  it.each(FORMATS)("of %s was good before", async (format) => {
    await fc.assert(
      fc.asyncProperty(GOOD[format], async (text) => {
        const { result } = await readReadingsFile("file", bytesOf(text));
        if (!result.ok) throw new Error(JSON.stringify(result.problems));
        expect(result.format).toBe(format);
        judge(format, text, result);
      }),
    );
  });

  const junk = fc.constantFrom("abc", "1.2.3", "--3", "0x10", "NaN", "Infinity", "1e400", "12 4", "1,2,3");
  const row = fc.nat(EXAMPLE_SAMPLES.length - 1);
  const axis = fc.constantFrom("L" as const, "a" as const, "b" as const);
  const files = {
    cgats: cgatsFile(cgatsTable(EXAMPLE_SAMPLES)),
    csv: labCsv(EXAMPLE_SAMPLES, ";"),
    cxf3: cxf3File(EXAMPLE_SAMPLES, { values: "lab" }),
  };

  it.each(FORMATS)("of %s with one wrong number is refused, and the row is named", async (format) => {
    await fc.assert(
      fc.asyncProperty(row, axis, junk, async (index, key, text) => {
        const value = EXAMPLE_SAMPLES[index]![key];
        const written = format === "cxf3" ? `>${value}<` : value.toFixed(2);
        expect(files[format].split(written)).toHaveLength(2);
        const wrong = files[format].replace(written, format === "cxf3" ? `>${text}<` : text);
        const { result } = await readReadingsFile("file", bytesOf(wrong));
        const places = result.ok ? ["taken"] : result.problems.map(({ where }) => where);
        const place = { cgats: "tables[0].rows", csv: "rows", cxf3: "objects" }[format];
        expect(places).toEqual([`${place}[${index}]`]);
      }),
    );
  });
});
