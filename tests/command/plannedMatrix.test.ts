import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import { matrixCsv } from "../../src/command/matrixText.ts";
import { plannedMatrix } from "../../src/command/plannedMatrix.ts";
import type { Documents } from "../../src/job/documents.ts";
import { arbitraryDocuments } from "../exchange/arbitraryDocuments.ts";
import { arbitraryColour } from "../exchange/arbitraryValues.ts";

/** Mostly predictable: no data-sheet limits, ready-made black and white, bare colours that some cloth may have. */
const mostlyPredictable = fc
  .record({
    documents: arbitraryDocuments,
    bare: arbitraryColour.filter((colour) => colour.kind !== "readings"),
    hasBlack: fc.boolean(),
  })
  .map(({ documents: { job, library }, bare, hasBlack }): Documents => {
    const { shelf, garmentLots } = library;
    const optics = { kind: hasBlack ? ("black" as const) : ("white" as const) };
    return {
      job,
      library: {
        ...library,
        garmentLots: garmentLots.map((lot) => ({ ...lot, bare })),
        shelf: {
          ...shelf,
          bases: shelf.bases.map((base) => ({ ...base, largestFraction: 1 })),
          colourants: shelf.colourants.map((colourant) => ({
            ...colourant,
            optics,
            strengthDefinition: "ready-made-ink" as const,
            largestFraction: 1,
          })),
        },
      },
    };
  });

describe("the planned matrix", () => {
  it("of any readable job is whole with finite numbers, or refused with places; it never throws", () => {
    let whole = 0;
    fc.assert(
      fc.property(fc.oneof(arbitraryDocuments, mostlyPredictable), (documents) => {
        const matrix = plannedMatrix(documents);
        if (!matrix.ok) {
          expect(matrix.problems.length).toBeGreaterThan(0);
          for (const { where } of matrix.problems) expect(where).toMatch(/^(job|library)\./);
          return;
        }
        whole += 1;
        const lineCount = documents.job.places[0]?.lineIds?.length ?? documents.job.lines.length;
        expect(matrix.rows).toHaveLength(lineCount * 2);
        for (const row of matrix.rows) {
          for (const value of [row.deltaL, row.deltaE00, row.deltaL5, row.deltaL95, row.chanceInBand]) {
            expect(Number.isFinite(value)).toBe(true);
          }
        }
      }),
      { numRuns: 150 },
    );
    // The draw must reach both outcomes, or the test says nothing of one of them.
    expect(whole).toBeGreaterThan(0);
    expect(whole).toBeLessThan(150);
  });

  it("prints a garment's name that starts like a formula as text, and negative numbers as numbers", () => {
    const { job, library } = demoDocuments();
    const [lot, ...others] = library.garmentLots;
    if (lot === undefined) throw new Error("the demo has no garment");
    const named = { ...lot, style: "=1+1" };
    const matrix = plannedMatrix({ job, library: { ...library, garmentLots: [named, ...others] } });
    if (!matrix.ok) throw new Error("the demo cannot be predicted");
    const [, first = ""] = matrixCsv(job, matrix.viewing, matrix.rows).split("\n");
    expect(first).toContain("'=1+1");
    expect(first).toMatch(/,-\d/);
  });

  it("follows the record book as the planner does: the demo's approved lot, its relatives, and cloth nobody printed", () => {
    const documents = demoDocuments();
    const matrix = plannedMatrix(documents);
    if (!matrix.ok) throw new Error("the demo cannot be predicted");
    const levelOf = (lot: string) =>
      matrix.rows.find((row) => row.lot === lot && row.mix === "Curable clear")?.evidence;
    expect([levelOf("BC-2231"), levelOf("BC-7708"), levelOf("EH-0092")]).toEqual([
      "this lot",
      "related prints",
      "model only",
    ]);
    const untested = plannedMatrix({
      ...documents,
      library: { ...documents.library, testPrints: [], approvals: [], goodsInChecks: [] },
    });
    if (!untested.ok) throw new Error("the demo cannot be predicted");
    expect(new Set(untested.rows.map(({ evidence }) => evidence))).toEqual(new Set(["model only"]));
    // the substituted lot is held against the approved print, not against the place's target
    const substituted = (rows: typeof matrix.rows) => rows.find((row) => row.lot === "BC-7708")!.bandDeltaL;
    expect(substituted(untested.rows)).toBe(documents.job.places[0]!.band.deltaL);
    expect(substituted(matrix.rows)).not.toBe(substituted(untested.rows));
  });
});
