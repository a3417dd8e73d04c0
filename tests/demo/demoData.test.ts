import { readdir, readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import { GARMENTS, garmentLot } from "../../scripts/demo/garments.ts";
import { ARCHIVE_FILE, demoFiles } from "../../scripts/demo/generate.ts";
import { demoGarment, trueLnSurprise } from "../../scripts/demo/recordPlans.ts";
import { NOISE_SD, truePrint } from "../../scripts/demo/records.ts";
import { noiseStream } from "../../scripts/demo/seededNoise.ts";
import { TRUE_LN_SURPRISE } from "../../scripts/demo/trueSurprises.ts";
import { deltaE00 } from "../../src/core/colorimetry/ciede2000.ts";
import { readJobArchive } from "../../src/exchange/jobArchive.ts";
import { inkMixFor } from "../../src/job/predictionInputs.ts";
import { printSeries } from "../../src/job/recordBook/printSeries.ts";

const FOLDER = new URL("../../demo-data/", import.meta.url);
const documents = demoDocuments();

/** The print that the demo's records are made from: curable clear through 61-64. */
function printOf(key: string) {
  const { bare, print } = truePrint(
    garmentLot(demoGarment(key)),
    trueLnSurprise(key),
    documents.job,
    documents.library.shelf,
  );
  return { bare, print, deltaL: print.L - bare.L };
}

describe("the committed demo data", () => {
  it("is what the script makes, file by file", async () => {
    const made = demoFiles();
    expect((await readdir(FOLDER)).sort()).toEqual(Object.keys(made).sort());
    for (const [name, text] of Object.entries(made)) {
      expect(await readFile(new URL(name, FOLDER), "utf8"), name).toBe(text);
    }
  });

  it("is an archive that is read whole", () => {
    expect(readJobArchive(demoFiles()[ARCHIVE_FILE] ?? "")).toEqual({ ok: true, documents });
  });

  it("does not hold the true surprises", () => {
    const numbers = (demoFiles()[ARCHIVE_FILE] ?? "").match(/-?\d+(\.\d+)?/g) ?? [];
    // 0 and 0.1 to 0.3 are ordinary values of other fields; the two that stand out are nowhere.
    for (const secret of ["0.82", "-0.6"]) expect(numbers).not.toContain(secret);
    expect(demoFiles()[ARCHIVE_FILE]).not.toMatch(/surprise"|epsilon/i);
  });
});

describe("the demo job", () => {
  const { job, library } = documents;

  it("is 7,200 pieces in twelve lines, by size", () => {
    const pieces = job.lines.map((line) =>
      line.quantities.reduce((sum, quantity) => sum + quantity.count, 0),
    );
    expect(pieces).toEqual(GARMENTS.map((garment) => garment.pieces));
    expect(pieces.reduce((sum, count) => sum + count, 0)).toBe(7200);
  });

  it("can be predicted: every mix is within the data sheet's limits", () => {
    for (const mix of job.mixes) expect(inkMixFor(mix, library.shelf), mix.name).toMatchObject({ ok: true });
  });

  it("states a true surprise for every garment", () => {
    expect(Object.keys(TRUE_LN_SURPRISE)).toEqual(GARMENTS.map(({ key }) => key));
  });

  it("substitutes G04, which looks like G03 bare (ΔE00 under 0.6) and prints about 2.6 times as dark", () => {
    const approved = printOf("G03");
    const substituted = printOf("G04");
    expect(deltaE00(approved.bare, substituted.bare)).toBeLessThan(0.6);
    // The product's "about 3.1 darker" and "about 2.6 times that", each to its last digit.
    expect(approved.deltaL).toBeCloseTo(-3.1, 1);
    expect(substituted.deltaL / approved.deltaL).toBeCloseTo(2.6, 1);
  });

  const approved = library.testPrints.find(({ verdict }) => verdict === "reference");

  it("starts with prints on G03 and an earlier lot each of G07 and G08, and the approval of G03", () => {
    const lots = library.testPrints.map(
      (print) => library.garmentLots.find((lot) => lot.id === print.garmentLotId)?.lot,
    );
    expect(lots).toEqual(["TB-0490", "PT-3189", "PT-3189", "PT-3189", "BC-2231"]);
    expect(library.approvals.map(({ testPrintId }) => testPrintId)).toEqual([approved?.id]);
  });

  it("has one print on the earlier G08 that reads 0.9 darker after three days than after an hour", () => {
    const brick = printSeries(library.testPrints, { illuminant: "D65", observer: "10deg" }).find(
      ({ resting }) => resting.length > 1,
    );
    expect(brick?.resting.map(({ restHours }) => Math.round(restHours))).toEqual([1, 24, 72]);
    // Two means of five pairs: sd 0.12 * sqrt(2 * 2 / 5) = 0.11; this seed's are within one of them.
    expect(Math.abs((brick?.resting[2]?.sinceFirst ?? 0) + 0.9)).toBeLessThan(0.11);
  });

  it("has readings that scatter about the true print by the stated noise", () => {
    const { readings } = approved ?? {};
    if (readings?.kind !== "lab") throw new Error("the approved print has no Lab readings");
    const { bare, print } = printOf("G03");
    // Of 30 normal deviates one is beyond 4.5 standard deviations once in 5,000 seeds; rounding adds 0.005.
    const limit = (sd: number) => 4.5 * sd + 0.005;
    for (const pair of readings.pairs) {
      for (const axis of ["L", "a", "b"] as const) {
        expect(Math.abs(pair.bare[axis] - bare[axis])).toBeLessThan(limit(NOISE_SD[axis]));
        expect(Math.abs(pair.print[axis] - print[axis])).toBeLessThan(limit(NOISE_SD[axis]));
      }
    }
    expect(new Set(readings.pairs.map((pair) => pair.print.L)).size).toBeGreaterThan(1);
  });
});

describe("the seeded noise", () => {
  it("has mean 0 and standard deviation 1 over 20,000 deviates, and depends on the seed alone", () => {
    const noise = noiseStream(1);
    const values = Array.from({ length: 20_000 }, noise);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    // Standard errors 0.007 and 0.005; four of them.
    expect(Math.abs(mean)).toBeLessThan(0.028);
    expect(Math.abs(Math.sqrt(variance) - 1)).toBeLessThan(0.02);
    expect(noiseStream(1)()).toBe(values[0]);
    expect(noiseStream(2)()).not.toBe(values[0]);
  });
});
