/** From a file to a record: only readings of one kind, light, observer and geometry go together. Figures invented. */
import { describe, expect, it } from "vitest";
import { answerAsked } from "../../../src/exchange/readings/answerAsked.ts";
import { pairUp } from "../../../src/exchange/readings/pairUp.ts";
import { colourOfSamples, readingsOfPairs } from "../../../src/exchange/readings/readingsOfPairs.ts";
import { readReadingsFile } from "../../../src/exchange/readings/readReadingsFile.ts";
import type { ReadSample } from "../../../src/exchange/readings/readSample.ts";
import { colourSchema } from "../../../src/job/colourDocument.ts";
import { readingsSchema } from "../../../src/job/recordDocument.ts";
import { bytesOf, cxf3File, EXAMPLE_SAMPLES, labCsv } from "./exampleFiles.ts";

async function samplesOf(text: string): Promise<readonly ReadSample[]> {
  const { result } = await readReadingsFile("file", bytesOf(text));
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.samples;
}

const ANSWERS = { light: "D65", observer: "10deg", geometry: "45:0" } as const;
const codes = (outcome: ReturnType<typeof readingsOfPairs> | ReturnType<typeof colourOfSamples>) =>
  outcome.ok ? [] : outcome.problems.map(({ code, values }) => `${code} ${values?.what ?? ""}`.trim());

describe("pairs of a file", () => {
  it("become Lab readings that a record takes, once everything is answered", async () => {
    const silent = await samplesOf(labCsv(EXAMPLE_SAMPLES));
    const { pairs } = pairUp(silent);
    expect(new Set(codes(readingsOfPairs(silent, pairs, 1)))).toEqual(
      new Set(["readings-not-answered geometry"]),
    );
    const samples = answerAsked(silent, ANSWERS);
    const outcome = readingsOfPairs(samples, pairs, 2);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    expect(readingsSchema.safeParse(outcome.readings).error).toBeUndefined();
    expect(outcome.readings).toMatchObject({ kind: "lab", pairCount: 2, pieceCount: 2, geometry: "45:0" });
    expect(outcome.readings.pairs[1]).toEqual({
      bare: { L: 30.47, a: -14.96, b: 6.55 },
      print: { L: 27.36, a: -14.01, b: 5.93 },
    });
  });

  it("become spectral readings where every sample has a spectrum", async () => {
    const samples = await samplesOf(cxf3File(EXAMPLE_SAMPLES, { values: "spectral" }));
    const outcome = readingsOfPairs(samples, pairUp(samples).pairs, 1);
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
    expect(outcome.readings.kind).toBe("spectral");
    expect(readingsSchema.safeParse(outcome.readings).error).toBeUndefined();
  });

  it("are refused across lights, geometries and kinds, and where one reading is used twice", async () => {
    const samples = answerAsked(await samplesOf(labCsv(EXAMPLE_SAMPLES)), ANSWERS);
    const spectral = await samplesOf(cxf3File(EXAMPLE_SAMPLES, { values: "spectral" }));
    const change = (over: Partial<ReadSample>) =>
      samples.map((sample, i) => (i === 3 ? { ...sample, ...over } : sample));
    const pairs = pairUp(samples).pairs;
    expect(codes(readingsOfPairs(change({ light: "D50" }), pairs, 1))).toEqual(["readings-unlike light"]);
    expect(codes(readingsOfPairs(change({ geometry: "specular-included" }), pairs, 1))).toEqual([
      "readings-unlike geometry",
    ]);
    expect(codes(readingsOfPairs(change({ ...spectral[3], lab: null }), pairs, 1))).toEqual([
      "readings-unlike kind",
    ]);
    expect(
      codes(
        readingsOfPairs(
          samples,
          [
            { bare: 0, print: 1 },
            { bare: 0, print: 3 },
          ],
          1,
        ),
      ),
    ).toEqual(["readings-used-twice"]);
    expect(codes(readingsOfPairs(samples, [{ bare: 0, print: 9 }], 1))).toEqual(["readings-pair-missing"]);
    expect(codes(readingsOfPairs(samples, [], 1))).toEqual(["readings-none"]);
  });
});

describe("a lot's bare colour from a file", () => {
  it("keeps every Lab reading, and the mean of spectra with what was assumed", async () => {
    const samples = answerAsked(await samplesOf(labCsv(EXAMPLE_SAMPLES)), ANSWERS);
    const outcome = colourOfSamples([samples[0]!, samples[2]!]);
    expect(outcome.ok && colourSchema.safeParse(outcome.colour).success).toBe(true);
    expect(outcome).toMatchObject({ colour: { kind: "readings", readings: [{ L: 30.52 }, { L: 30.47 }] } });
    const spectral = await samplesOf(
      cxf3File(EXAMPLE_SAMPLES, { values: "spectral", band: { firstNm: 400, lastNm: 700, stepNm: 10 } }),
    );
    const mean = colourOfSamples(spectral);
    if (!mean.ok || mean.colour.kind !== "spectrum") throw new Error("no spectrum");
    expect(colourSchema.safeParse(mean.colour).success).toBe(true);
    const at500 = spectral.map(({ spectrum }) => spectrum!.reflectance[12]!);
    expect(mean.colour.reflectance[12]).toBeCloseTo(at500.reduce((sum, value) => sum + value, 0) / 4, 12);
    expect(mean.colour.assumptions).toEqual(["short-end-extended:380-390", "long-end-extended:710-730"]);
  });
});
