// What must hold of any learning from prints, whatever the numbers.
import { describe, expect, it } from "vitest";
import { beliefSd } from "../../../src/core/evidence/belief.ts";
import { beliefFor } from "../../../src/core/evidence/beliefFor.ts";
import { extend } from "../../../src/core/evidence/extend.ts";
import { forget } from "../../../src/core/evidence/forget.ts";
import { learn } from "../../../src/core/evidence/learn.ts";
import type { Posterior } from "../../../src/core/evidence/posterior.ts";
import type { EvidenceGarment, EvidencePrint, EvidenceRecord } from "../../../src/core/evidence/record.ts";
import type { BeliefAxis } from "../../../src/core/prediction/cellBelief.ts";
import { LOT_SD } from "../../../src/core/prediction/unknowns.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { ALL_COTTON, cloth, FILAMENT_POLYESTER, HALF_AND_HALF, VIEWING } from "../prediction/cloths.ts";
import { seededRandom } from "../prediction/seededRandom.ts";
import { MIXES, modelShop } from "./modelShop.ts";
import { deltaLQuantiles } from "./quickQuantiles.ts";

const CLEAR = MIXES[0]!;
const BLACK = MIXES[4]!;
/** Two ways to one posterior may each leave a linearisation MOVE_TOLERANCE off. */
const SAME = 0.015;

const sdOf = (posterior: Posterior, print: EvidencePrint, axis: BeliefAxis): number =>
  beliefSd(beliefFor(posterior, print, VIEWING), axis);

function meansByKey(posterior: Posterior): Map<string, number> {
  const means = new Map(posterior.shared.map(({ key }, i) => [key, posterior.sharedValues[i]!]));
  for (const block of posterior.blocks) {
    block.unknowns.forEach(({ key }, i) => {
      means.set(key, block.values[i]!);
    });
  }
  return means;
}

function expectSame(one: Posterior, other: Posterior): void {
  const expected = meansByKey(other);
  const found = meansByKey(one);
  expect(found.size).toBe(expected.size);
  for (const [key, value] of found) expect(Math.abs(value - expected.get(key)!)).toBeLessThan(SAME);
}

describe("records", () => {
  const shop = modelShop(31, 30, 80);
  const all = learn(shop.records);

  it("may come in any order", () => {
    const { uniform } = seededRandom(2);
    const shuffled = [...shop.records].sort(() => uniform() - 0.5);
    expectSame(learn(shuffled), all);
  });

  it("may come one by one", () => {
    let posterior = learn(shop.records.slice(0, 70));
    for (const record of shop.records.slice(70)) posterior = extend(posterior, record);
    expect(posterior.converged).toBe(true);
    expectSame(posterior, all);
    for (const lot of shop.lots.slice(0, 8)) {
      const print = shop.printOf(lot, BLACK);
      const ratio = sdOf(posterior, print, "lnWetOut") / sdOf(all, print, "lnWetOut");
      expect(Math.abs(ratio - 1)).toBeLessThan(SAME);
    }
  });

  it("may be taken back: what is left is as if it had never been made", () => {
    const [last] = shop.records.slice(-1);
    const before = learn(shop.records.slice(0, -1));
    const after = forget(all, last!.id);
    const print = last!.print;
    const [one, other] = [beliefFor(after, print, VIEWING), beliefFor(before, print, VIEWING)];
    expect(Math.abs(one.mean.lnWetOut - other.mean.lnWetOut)).toBeLessThan(SAME);
    expect(one.evidence).toBe(other.evidence);
  });

  it("leave the posterior they were added to as it was", () => {
    const before = learn(shop.records.slice(0, 40));
    const values = meansByKey(before);
    extend(before, shop.records[40]!);
    forget(before, shop.records[3]!.id);
    expect(meansByKey(before)).toEqual(values);
    expect(before.records.length).toBe(40);
  });

  it("never widen what is known of the lot they were printed on", () => {
    const lot = { ...shop.lots[0]!, garment: cloth([48, -3, -20], HALF_AND_HALF) };
    const print = shop.printOf(lot, CLEAR);
    let posterior = learn(shop.records.filter((record) => record.print.garment.lotKey !== lot.lotKey));
    let before = sdOf(posterior, print, "lnWetOut");
    for (let i = 0; i < 5; i++) {
      posterior = extend(posterior, shop.recordOf(print));
      const after = sdOf(posterior, print, "lnWetOut");
      expect(after).toBeLessThan(before);
      before = after;
    }
    expect(beliefFor(posterior, print, VIEWING).evidence).toBe("this lot");
  });

  it("of which none were made leave the prior, with the style's heavy tail", () => {
    const nothing = learn([]);
    const print = shop.printOf(shop.lots[1]!, CLEAR);
    const belief = beliefFor(nothing, print, VIEWING);
    expect(belief.evidence).toBe("model only");
    expect(belief.styleTailSd).toBeCloseTo(0.14 * Math.sqrt(5 / 3), 12);
    expect(belief.mean.lnWetOut).toBe(0);
    expect(beliefFor(all, shop.records[0]!.print, VIEWING).styleTailSd).toBe(0);
  });
});

describe("a print that cannot show wet-out", () => {
  const shop = modelShop(32, 6, 0);
  const lotOf = (name: string, garment: EvidenceGarment["garment"]): EvidenceGarment => ({
    lotKey: name,
    millKey: "mill",
    colourwayKey: name,
    styleKey: "plain tee",
    garment,
  });
  const blue = lotOf("blue polyester", cloth([40, 5, -30], FILAMENT_POLYESTER));
  const white = lotOf("white polyester", cloth([94, 1.2, -4.5], FILAMENT_POLYESTER));
  const cotton = lotOf("blue cotton", cloth([40, 5, -30], ALL_COTTON));

  const print = shop.printOf({ ...blue, lotKey: "next" }, BLACK);
  const nothing = sdOf(learn([]), print, "lnWetOut");
  /** What one print of the style on `lot` says of ln wet-out, as precision. */
  const taughtBy = (lot: EvidenceGarment): number =>
    sdOf(learn([shop.recordOf(shop.printOf(lot, BLACK))]), print, "lnWetOut") ** -2 - nothing ** -2;

  it.each([
    ["on white polyester", white, 0.5],
    ["on all-cotton", cotton, 0.02],
  ])("%s teaches little of it, and much on the black", (_, lot, part) => {
    const onBlue = taughtBy(blue);
    expect(onBlue).toBeGreaterThan(0.5 * nothing ** -2);
    expect(taughtBy(lot)).toBeLessThan(part * onBlue);
    const posterior = learn([shop.recordOf(shop.printOf(lot, BLACK))]);
    expect(sdOf(posterior, print, "lnTint") / sdOf(learn([]), print, "lnTint")).toBeLessThan(0.75);
  });
});

describe("a new lot of a tested style", () => {
  const shop = modelShop(33, 6, 0);
  const tested: EvidenceGarment = {
    lotKey: "old",
    millKey: "mill",
    colourwayKey: "denim",
    styleKey: "tee",
    garment: cloth([48, -3, -20], HALF_AND_HALF),
  };
  const one = shop.recordOf(shop.printOf(tested, CLEAR));
  const reading = one.reading;
  if (reading.kind !== "pair") throw new RangeError("a pair is needed");
  // Half as dark again as expected, three times over.
  const strong: EvidenceRecord[] = ["a", "b", "c"].map((id) => ({
    ...one,
    id,
    printKey: id,
    reading: { ...reading, printed: { ...reading.bare, L: reading.bare.L - 8 } },
  }));
  const posterior = learn(strong);
  const known = beliefFor(posterior, shop.printOf(tested, CLEAR), VIEWING);
  const fresh = beliefFor(posterior, shop.printOf({ ...tested, lotKey: "new" }, CLEAR), VIEWING);
  const other = beliefFor(
    posterior,
    shop.printOf({ ...tested, lotKey: "new", styleKey: "polo" }, CLEAR),
    VIEWING,
  );

  it("keeps the style's lesson", () => {
    expect(known.mean.lnWetOut).toBeGreaterThan(0.2);
    expect(fresh.mean.lnWetOut).toBeGreaterThan(0.7 * known.mean.lnWetOut);
    expect(fresh.mean.lnWetOut).toBeLessThan(known.mean.lnWetOut);
    expect(other.mean.lnWetOut).toBe(0);
  });

  it("gets its own spread back, and the evidence is that of related prints", () => {
    const added = beliefSd(fresh, "lnWetOut") ** 2 - beliefSd(known, "lnWetOut") ** 2;
    expect(added).toBeGreaterThan(0.8 * LOT_SD ** 2);
    expect(beliefSd(other, "lnWetOut")).toBeGreaterThan(beliefSd(fresh, "lnWetOut"));
    expect(known.evidence).toBe("this lot");
    expect(fresh.evidence).toBe("related prints");
    expect(other.evidence).toBe("model only");
  });

  it("is not `this lot` for a tint that nobody ever printed, and is once anybody has", () => {
    const tinted = shop.printOf(tested, BLACK);
    expect(beliefFor(posterior, tinted, VIEWING).evidence).toBe("related prints");
    const elsewhere = shop.recordOf(shop.printOf(shop.lots[5]!, BLACK));
    expect(beliefFor(extend(posterior, elsewhere), tinted, VIEWING).evidence).toBe("this lot");
  });
});

describe("intervals on shops that obey the model", () => {
  it("hold nine prints in ten, tested lots and untested alike", () => {
    const hits = { tested: [] as number[], untested: [] as number[] };
    for (let seed = 100; seed < 116; seed++) {
      const shop = modelShop(seed, 24, 30);
      const posterior = learn(shop.records);
      const printed = new Set(shop.records.map(({ print }) => print.garment.lotKey));
      const count = { tested: [0, 0], untested: [0, 0] };
      for (const lot of shop.lots) {
        for (const mix of [MIXES[1]!, MIXES[5]!]) {
          const print = shop.printOf(lot, mix);
          const { p5, p95 } = deltaLQuantiles(
            beliefFor(posterior, print, VIEWING),
            print,
            wettableGarment(lot.garment, VIEWING),
          );
          const found = shop.truth.onePrint(print);
          const counted = count[printed.has(lot.lotKey) ? "tested" : "untested"];
          counted[0]! += found >= p5 && found <= p95 ? 1 : 0;
          counted[1]! += 1;
        }
      }
      hits.tested.push(count.tested[0]! / count.tested[1]!);
      hits.untested.push(count.untested[0]! / count.untested[1]!);
    }
    for (const rates of [hits.tested, hits.untested]) {
      const mean = rates.reduce((sum, rate) => sum + rate, 0) / rates.length;
      const variance = rates.reduce((sum, rate) => sum + (rate - mean) ** 2, 0) / (rates.length - 1);
      // Three standard errors over shops, and a hundredth for what Laplace's normal is not.
      const tolerance = 3 * Math.sqrt(variance / rates.length) + 0.01;
      expect(Math.abs(mean - 0.9)).toBeLessThan(tolerance);
    }
  });
});
