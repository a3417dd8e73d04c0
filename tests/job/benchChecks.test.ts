/** What the bench form notices at once. All figures are invented but those of trade.md §2, named where they stand. */
import { describe, expect, it } from "vitest";
import { pairCountFor, Z_95 } from "../../src/core/evidence/sampleSize.ts";
import { type BenchContext, type BenchDraft, benchChecks } from "../../src/job/benchChecks.ts";
import { expectedPairSd } from "../../src/job/benchReadingChecks.ts";
import type { Readings, TestPrint } from "../../src/job/recordDocument.ts";
import { BENCH_CODES, benchSentence } from "../../src/planner/words/benchSentences.ts";
import { exampleDocuments, exampleTestPrint, ids } from "./exampleDocuments.ts";

type LabReadings = Extract<Readings, { kind: "lab" }>;

const BARE = { L: 30.5, a: -15, b: 6.5 };
const pair = (deltaL: number, bare = BARE) => ({ bare, print: { L: bare.L + deltaL, a: -14, b: 6 } });

function lab(change: Partial<LabReadings> = {}): LabReadings {
  const pairs = change.pairs ?? [pair(-3), pair(-3.1), pair(-2.9), pair(-3)];
  return {
    kind: "lab",
    viewing: { illuminant: "D65", observer: "10deg" },
    geometry: "45:0",
    pairs,
    pairCount: pairs.length,
    pieceCount: 2,
    sdPairDifference: null,
    ...change,
  };
}

const draft = (change: Partial<BenchDraft> = {}): BenchDraft => ({
  garmentLotId: ids.lot,
  recipe: [{ itemId: ids.clear, massFraction: 1 }],
  actualGrams: null,
  printedAt: "2026-02-17T09:00:00Z",
  readAt: "2026-02-17T10:30:00Z",
  washCount: 0,
  readings: lab(),
  ...change,
});

function context(testPrints: TestPrint[] = [], change: Partial<BenchContext> = {}): BenchContext {
  const { library } = exampleDocuments();
  return {
    library: { ...library, testPrints },
    viewing: { illuminant: "D65", observer: "10deg" },
    supersedesId: null,
    otherRecipes: [],
    ...change,
  };
}

const found = (change: Partial<BenchDraft>, given = context()) => benchChecks(draft(change), given);
const codes = (change: Partial<BenchDraft>, given = context()) =>
  found(change, given).map(({ code }) => code);

describe("a sound test print", () => {
  it("gives no remark, and nothing is asked of what is not typed yet", () => {
    expect(codes({})).toEqual([]);
    const empty = {
      recipe: null,
      printedAt: null,
      readAt: null,
      washCount: null,
      readings: null,
      garmentLotId: null,
    };
    expect(codes(empty)).toEqual([]);
    expect(codes({ readings: lab({ pairs: [], pairCount: 1 }) })).toEqual([]);
    expect(codes({ garmentLotId: null, printedAt: null })).toEqual([]);
  });
});

describe("readings that cannot be right", () => {
  it("are named where the print is lighter than the bare cloth, unless there is white in the ink", () => {
    const readings = lab({ pairs: [3, 3.1, 2.9, 3].map((deltaL) => pair(deltaL)) });
    expect(codes({ readings })).toEqual(["bench-print-lighter"]);
    const recipe = [
      { itemId: ids.clear, massFraction: 0.5 },
      { itemId: ids.white, massFraction: 0.5 },
    ];
    expect(codes({ readings, recipe })).toEqual([]);
  });

  it("are not named for what is within the noise of four pairs", () => {
    // Four pairs that agree: sd sqrt(4 x 0.09 / 7) = 0.227, and 1.96 x 0.227 / 2 = 0.222.
    const at = (deltaL: number) =>
      codes({ readings: lab({ pairs: Array.from({ length: 4 }, () => pair(deltaL)) }) });
    expect(at(0.2)).toEqual([]);
    expect(at(0.25)).toEqual(["bench-print-lighter"]);
  });

  it("are named by eye as well", () => {
    const readings = {
      kind: "by-eye",
      grade: 3,
      direction: "lighter",
      light: "D65",
      observerCount: 1,
    } as const;
    expect(codes({ readings })).toEqual(["bench-print-lighter"]);
    expect(codes({ readings: { ...readings, direction: "darker" } })).toEqual([]);
    expect(codes({ readings: { ...readings, grade: 5 } })).toEqual([]);
  });

  it("are told as swapped, odd or copied, pair by pair", () => {
    const at = (...changes: number[]) =>
      found({ readings: lab({ pairs: changes.map((deltaL) => pair(deltaL)) }) }).filter(({ where }) =>
        where.startsWith("readings.pairs"),
      );
    expect(at(-3, -3.1, 3, -2.9)).toEqual([
      { code: "bench-pair-swapped", where: "readings.pairs[2]", values: { pair: 3, deltaL: 3, usual: -3 } },
    ]);
    expect(at(-3, -3.1, -9, -2.9).map(({ code }) => code)).toEqual(["bench-pair-unlike-others"]);
    const copied = { bare: BARE, print: BARE };
    expect(codes({ readings: lab({ pairs: [pair(-3), pair(-3), copied, pair(-3)] }) })).toContain(
      "bench-pair-identical",
    );
  });

  it("are named where the light or the geometry is not that of the lot", () => {
    const viewing = { illuminant: "D50", observer: "2deg" } as const;
    expect(found({ readings: lab({ viewing }) })).toEqual([
      {
        code: "bench-viewing-unlike-lot",
        where: "readings.viewing",
        values: { ...viewing, usualIlluminant: "D65", usualObserver: "10deg", count: 1 },
      },
    ]);
    expect(codes({ readings: lab({ geometry: "specular-included" }) })).toEqual([
      "bench-geometry-unlike-lot",
    ]);
  });

  it("are held against the shop's habit where the lot has no reading of its own", () => {
    const viewing = { illuminant: "D50", observer: "2deg" } as const;
    const records = [1, 2, 3].map((number) => exampleTestPrint(number, { garmentLotId: ids.otherLot }));
    const given = (testPrints: TestPrint[]): BenchContext => {
      const { library, ...rest } = context(testPrints);
      const garmentLots = library.garmentLots.map((lot) => ({
        ...lot,
        bare: { kind: "hex" as const, hex: "#204030" },
      }));
      return { ...rest, library: { ...library, garmentLots } };
    };
    expect(codes({ readings: lab({ viewing }) }, given(records))).toEqual(["bench-viewing-unusual"]);
    expect(codes({ readings: lab({ viewing }) }, given(records.slice(0, 2)))).toEqual([]);
    expect(codes({}, given(records))).toEqual([]);
  });

  it("are named where the bare cloth is far from the lot's other bare readings", () => {
    const bare = { L: 33, a: -15, b: 6.5 };
    const readings = lab({ pairs: Array.from({ length: 4 }, () => pair(-3, bare)) });
    expect(codes({ readings })).toEqual(["bench-bare-unlike-lot"]);
    // Another record of the lot is corrected by this draft, so it is no witness; the lot's own colour still is.
    const record = exampleTestPrint(1);
    const own = found({ readings }, context([record], { supersedesId: record.id }));
    expect(own[0]?.values).toMatchObject({ count: 1, lotL: 30.5 });
    expect(found({ readings }, context([record]))[0]?.values).toMatchObject({ count: 2 });
  });

  it("are asked for in the number that the cloth needs", () => {
    const one = found({ readings: lab({ pairs: [pair(-3)] }) });
    expect(one).toEqual([
      {
        code: "bench-few-reads",
        where: "readings",
        values: { pairCount: 1, needed: 4, sd: 0.3, halfWidth: 0.3 },
      },
    ]);
  });
});

describe("the number of reads", () => {
  it.each([
    [0.2, 0.3, 2],
    [0.4, 0.3, 7],
    [0.8, 0.3, 28],
    [0.8, 0.5, 10],
  ])("for sd %d and +-%d is that of trade.md §2, n = (1.96 sd / E)^2: %d", (sd, halfWidth, reads) => {
    expect(pairCountFor(sd, halfWidth, Z_95)).toBe(reads);
  });

  it("follows the pairs' own scatter the more the more pairs there are", () => {
    expect(expectedPairSd(null, null, 1)).toBe(0.3);
    expect(expectedPairSd(null, 0.9, 2)).toBeCloseTo(Math.sqrt((4 * 0.09 + 0.81) / 5), 12);
    expect(expectedPairSd(null, 0.9, 401)).toBeCloseTo(0.9, 1);
  });
});

describe("a tint", () => {
  const tinted = (massFraction: number) => [
    { itemId: ids.clear, massFraction: 1 - massFraction },
    { itemId: ids.black, massFraction },
  ];
  const half = [1, 2, 3].map((number) => exampleTestPrint(number, { recipe: tinted(0.005) }));

  it("of 5 % where every other is 0.5 % is named with what is usual", () => {
    expect(found({ recipe: tinted(0.05) }, context(half))).toEqual([
      {
        code: "bench-tint-unlike-others",
        where: "recipe",
        values: {
          name: "Black",
          massFraction: 0.05,
          smallest: 0.005,
          largest: 0.005,
          usual: 0.005,
          count: 3,
        },
      },
    ]);
    expect(codes({ recipe: tinted(0.0005) }, context(half))).toEqual(["bench-tint-unlike-others"]);
    expect(codes({ recipe: tinted(0.01) }, context(half))).toEqual([]);
  });

  it("is held against the mixes at hand where the book is young, and against no single print", () => {
    expect(
      codes({ recipe: tinted(0.05) }, context([], { otherRecipes: [tinted(0.005), tinted(0.0025)] })),
    ).toEqual(["bench-tint-unlike-others"]);
    expect(codes({ recipe: tinted(0.05) }, context(half.slice(0, 1)))).toEqual([]);
  });

  it("that was weighed otherwise than the recipe says is named", () => {
    const actualGrams = [
      { itemId: ids.clear, grams: 995 },
      { itemId: ids.black, grams: 50 },
    ];
    expect(codes({ recipe: tinted(0.005), actualGrams })).toEqual(["bench-grams-unlike-recipe"]);
    const near = [
      { itemId: ids.clear, grams: 995 },
      { itemId: ids.black, grams: 5.7 },
    ];
    expect(codes({ recipe: tinted(0.005), actualGrams: near })).toEqual([]);
  });
});

describe("the times", () => {
  it.each([
    ["2026-02-17T09:20:00Z", 0, ["bench-read-hot"]],
    ["2026-02-17T10:00:00Z", 0, []],
    ["2026-02-17T11:20:00+02:00", 0, ["bench-read-hot"]],
    ["2026-02-17T09:20:00Z", 1, []],
    ["2026-02-17T08:59:00Z", 0, ["bench-read-before-printed"]],
    ["not a time", 0, []],
  ])("read at %s after %d washes: %j", (readAt, washCount, expected) => {
    expect(codes({ readAt, washCount })).toEqual(expected);
  });
});

describe("the sentences of the bench form", () => {
  it("say the figures of every remark", () => {
    expect(BENCH_CODES).toHaveLength(13);
    const [tint] = found(
      { recipe: [{ itemId: ids.black, massFraction: 0.05 }] },
      context(
        [1, 2].map((number) =>
          exampleTestPrint(number, { recipe: [{ itemId: ids.black, massFraction: 0.005 }] }),
        ),
      ),
    );
    expect(tint && benchSentence(tint)).toBe(
      "Black is 5 % here; in 2 other recipes it is 0.5 %. Is the point in its place?",
    );
    const [hot] = found({ readAt: "2026-02-17T09:20:00Z" });
    expect(hot && benchSentence(hot)).toContain("20 minutes after printing");
    expect(benchSentence({ code: "odd", where: "recipe" })).toBe("odd: recipe.");
  });
});
