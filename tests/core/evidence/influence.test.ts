// What a prediction rests on, how many pairs it takes, how a print drifts, and what a shop says of the prior.
import { describe, expect, it } from "vitest";
import { examine } from "../../../src/core/evidence/beliefFor.ts";
import { influence } from "../../../src/core/evidence/influence.ts";
import { learn } from "../../../src/core/evidence/learn.ts";
import { learned } from "../../../src/core/evidence/learned.ts";
import { estimateScales, lnEvidence } from "../../../src/core/evidence/priorEstimate.ts";
import { DEFAULT_PRIOR_SCALES } from "../../../src/core/evidence/priorScales.ts";
import type { EvidenceRecord } from "../../../src/core/evidence/record.ts";
import { pairCountFor, Z_95, Z_ASTM_E122 } from "../../../src/core/evidence/sampleSize.ts";
import { teachingRecords } from "../../../src/core/evidence/teachingRecords.ts";
import { VIEWING } from "../prediction/cloths.ts";
import { MIXES, modelShop } from "./modelShop.ts";

describe("influence", () => {
  const shop = modelShop(51, 12, 30);

  it("shares out exactly what the records took away of the variance", () => {
    const posterior = learn(shop.records);
    const print = shop.records[4]!.print;
    const found = influence(posterior, print, VIEWING);
    expect(found.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(found.length).toBe(30);
  });

  it("is the whole of it where there is one record, and even between two alike", () => {
    const print = shop.printOf(shop.lots[0]!, MIXES[0]!);
    const one = shop.recordOf(print);
    expect(influence(learn([one]), print, VIEWING)).toEqual([{ recordId: one.id, share: 1 }]);
    const twin = { ...one, id: "twin", printKey: "twin" };
    const [first, second] = influence(learn([one, twin]), print, VIEWING);
    expect(first!.share).toBeCloseTo(0.5, 6);
    expect(second!.share).toBeCloseTo(0.5, 6);
  });

  it("puts a print on the lot before one on another style", () => {
    const [lot, other] = [shop.lots[0]!, shop.lots[6]!];
    const near = shop.recordOf(shop.printOf(lot, MIXES[0]!));
    const far = shop.recordOf(shop.printOf(other, MIXES[0]!));
    const found = influence(learn([far, near]), shop.printOf(lot, MIXES[0]!), VIEWING);
    expect(found[0]!.recordId).toBe(near.id);
    expect(found[0]!.share).toBeGreaterThan(0.5);
  });

  it("adds up to the drop in variance that examining the cell shows", () => {
    const print = shop.printOf(shop.lots[2]!, MIXES[4]!);
    const records = shop.records.slice(0, 12);
    const varianceOf = (taught: readonly EvidenceRecord[], at: Float64Array): number => {
      const { covariance, cell } = examine(learn(taught), print, VIEWING);
      const n = cell.unknowns.length;
      let sum = 0;
      for (let i = 0; i < n; i++) {
        for (let j = 0; j < n; j++) sum += at[i]! * covariance[i * n + j]! * at[j]!;
      }
      return sum;
    };
    const { slopes } = examine(learn(records), print, VIEWING);
    expect(varianceOf(records, slopes.jacobian)).toBeLessThan(varianceOf([], slopes.jacobian));
    expect(influence(learn([]), print, VIEWING)).toEqual([]);
  });
});

describe("the number of pairs", () => {
  // Worked figures of the trade's notes: sd 0.2, 0.4 and 0.8 of the pair difference within 0.3, and 0.8 within 0.5.
  it.each([
    [0.2, 0.3, 2],
    [0.4, 0.3, 7],
    [0.8, 0.3, 28],
    [0.8, 0.5, 10],
  ])("for sd %f within %f at 95 in a hundred is %i", (sd, error, count) => {
    expect(pairCountFor(sd, error, Z_95)).toBe(count);
  });

  it("for ASTM E122 takes z = 3", () => {
    expect(pairCountFor(0.4, 0.3, Z_ASTM_E122)).toBe(16);
    expect(pairCountFor(0, 0.3, Z_95)).toBe(1);
  });

  it("refuses values out of range by name", () => {
    expect(() => pairCountFor(-1, 0.3, Z_95)).toThrow("sdPairDifference");
    expect(() => pairCountFor(0.4, 0, Z_95)).toThrow("wantedError");
    expect(() => pairCountFor(0.4, 0.3, 0)).toThrow("z must");
  });
});

describe("several readings of one print", () => {
  const shop = modelShop(52, 6, 0);
  const first = shop.recordOf(shop.printOf(shop.lots[0]!, MIXES[0]!));
  const later = (id: string, at: string, washCount: number, darker: number): EvidenceRecord => {
    if (first.reading.kind !== "pair") throw new RangeError("a pair is needed");
    const { printed } = first.reading;
    const reading = { ...first.reading, printed: { ...printed, L: printed.L - darker } };
    return { ...first, id, at, washCount, reading };
  };
  const readings = [
    later("c", "2026-01-04T00:00:00Z", 0, 0.9),
    first,
    later("b", "2026-01-02T00:00:00Z", 0, 0.5),
    later("w", "2026-02-01T00:00:00Z", 5, -1),
  ];

  it("teach by the latest unwashed one alone", () => {
    expect(teachingRecords(readings).map(({ id }) => id)).toEqual(["c"]);
    expect(learn(readings).lessons.map(({ teaching }) => teaching.id)).toEqual(["c"]);
  });
});

describe("the prior's scales", () => {
  it("are not asked of fewer than a hundred records", () => {
    expect(estimateScales(modelShop(53, 10, 60).records)).toBe(null);
  });

  it("move towards a shop whose lots vary three times as much, and leave the rest nearly alone", () => {
    const shop = modelShop(56, 120, 320, { ...DEFAULT_PRIOR_SCALES, lot: 0.45 });
    const found = estimateScales(shop.records)!;
    expect(found.scales.lot).toBeGreaterThan(0.25);
    expect(found.scales.mill).toBeGreaterThan(0.2);
    expect(found.scales.mill).toBeLessThan(0.45);
    expect(found.scales.haze).toBe(DEFAULT_PRIOR_SCALES.haze);
    expect(found.lnEvidenceGain).toBeGreaterThan(5);
    expect(found.counts.lot).toBeGreaterThan(60);
  });

  it("have a marginal likelihood that prefers the true ones to far ones", () => {
    const shop = modelShop(55, 60, 200);
    const at = (lot: number): number =>
      lnEvidence(learn(shop.records, { scales: { ...DEFAULT_PRIOR_SCALES, lot } }));
    expect(at(0.15)).toBeGreaterThan(at(0.6));
    expect(at(0.15)).toBeGreaterThan(at(0.005));
  });
});

describe("what was learned", () => {
  it("names each unknown once, with what it is of and how many records depend on it", () => {
    const shop = modelShop(58, 6, 0);
    const lot = shop.lots[0]!;
    const records = [MIXES[4]!, MIXES[4]!, MIXES[1]!].map((mix) => shop.recordOf(shop.printOf(lot, mix)));
    const found = learned(learn(records));
    const one = (kind: string) => found.filter((unknown) => unknown.kind === kind);
    expect(one("style")).toMatchObject([{ of: [lot.styleKey], recordCount: 3 }]);
    expect(one("mill")).toMatchObject([{ of: [lot.styleKey, lot.millKey], recordCount: 3 }]);
    expect(one("lot")).toMatchObject([{ of: [lot.lotKey], priorSd: 0.15 }]);
    expect(one("baseOnStyle").map(({ of, recordCount }) => [...of, recordCount])).toEqual([
      [lot.styleKey, "gloss", 2],
      [lot.styleKey, "stretch", 1],
    ]);
    expect(one("colourantStrength")).toMatchObject([{ of: ["black"], recordCount: 2, priorSd: 0.3 }]);
    for (const { sd, priorSd } of found) expect(sd).toBeLessThan(priorSd * (1 + 1e-9));
  });
});
