// Records that disagree with all others: named, explained where a slip of the bench explains them, set aside, taken back.
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../../src/core/colorimetry/cielab.ts";
import type { Lab, Viewing } from "../../../src/core/colorimetry/viewing.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { learn } from "../../../src/core/evidence/learn.ts";
import { learnWatchfully } from "../../../src/core/evidence/learnWatchfully.ts";
import { normalEquivalent } from "../../../src/core/evidence/normalEquivalent.ts";
import type { EvidenceRecord, PairReading } from "../../../src/core/evidence/record.ts";
import { relit } from "../../../src/core/evidence/relight.ts";
import { suspicious } from "../../../src/core/evidence/suspicious.ts";
import { tintExcess, tintHabits } from "../../../src/core/evidence/tintCheck.ts";
import { spectrumOf, VIEWING } from "../prediction/cloths.ts";
import { base, black, mixOf } from "../prediction/inks.ts";
import { modelShop } from "./modelShop.ts";

const PAPER: Viewing = { illuminant: "D50", observer: "2deg" };
const shop = modelShop(41, 24, 70);

const pairOf = (record: EvidenceRecord): PairReading => {
  if (record.reading.kind !== "pair") throw new RangeError(`${record.id} must be a pair`);
  return record.reading;
};
const withReading = (record: EvidenceRecord, reading: Partial<PairReading>): EvidenceRecord => ({
  ...record,
  reading: { ...pairOf(record), ...reading },
});
/** The first record that fits, and the shop's records with it spoiled. */
function spoiled(
  fits: (record: EvidenceRecord) => boolean,
  spoil: (record: EvidenceRecord) => EvidenceRecord,
) {
  const one = shop.records.find(fits);
  if (one === undefined) throw new RangeError("the shop must have such a record");
  return { id: one.id, records: shop.records.map((record) => (record === one ? spoil(one) : record)) };
}
const deltaL = (record: EvidenceRecord): number => pairOf(record).printed.L - pairOf(record).bare.L;
const chromaOf = ({ a, b }: Lab): number => Math.hypot(a, b);
/** The reading as an instrument set for paper gives it, from the smoothest spectrum that the shop itself would take. */
const underPaper = (lab: Lab): Lab => relit(lab, VIEWING, PAPER)!.lab;
const shiftOf = (lab: Lab): number => {
  const { L, a, b } = underPaper(lab);
  return Math.hypot(L - lab.L, a - lab.a, b - lab.b);
};
const isBlack = (record: EvidenceRecord): boolean => record.print.itemKeys.includes("black");

describe("a shop without slips", () => {
  it("has none named as one", () => {
    const { suspicions, posterior } = learnWatchfully(shop.records);
    expect(suspicions.filter(({ slip }) => slip !== null)).toEqual([]);
    expect(posterior.setAside.size).toBe(0);
    // 3 standard deviations: one good record in 370.
    expect(suspicions.length).toBeLessThan(4);
  });
});

describe("one slip", () => {
  it("of a tint typed ten times too high is named, set aside, and moves nobody else", () => {
    const { id, records } = spoiled(isBlack, (record) => {
      const [clear, tint] = record.print.mix.parts;
      const fraction = 10 * tint!.massFraction;
      const parts = [
        { ...clear!, massFraction: 1 - fraction },
        { ...tint!, massFraction: fraction },
      ];
      return { ...record, print: { ...record.print, mix: { ...record.print.mix, parts } } };
    });
    const { suspicions, posterior } = learnWatchfully(records);
    expect(suspicions[0]).toMatchObject({ recordId: id, slip: "tint-times-ten", setAside: true });
    const without = learn(records.filter((record) => record.id !== id));
    posterior.shared.forEach(({ key, sd }, i) => {
      const other = without.sharedValues[without.sharedPositions.get(key)!]!;
      expect(Math.abs(posterior.sharedValues[i]! - other) / sd).toBeLessThan(0.1);
    });
  });

  it("of bare and print swapped is named", () => {
    const { id, records } = spoiled(
      (record) => deltaL(record) < -3,
      (record) => withReading(record, { bare: pairOf(record).printed, printed: pairOf(record).bare }),
    );
    expect(learnWatchfully(records).suspicions[0]).toMatchObject({
      recordId: id,
      slip: "swapped-pair",
      bareStandsOut: true,
      setAside: true,
    });
  });

  it("of the print read under another light is named, where the light makes a difference", () => {
    const { id, records } = spoiled(
      (record) => shiftOf(pairOf(record).printed) > 5,
      (record) => withReading(record, { printed: underPaper(pairOf(record).printed) }),
    );
    expect(learnWatchfully(records).suspicions[0]).toMatchObject({ recordId: id, slip: "other-light" });
  });

  it("of both read under another light shows in the bare reading", () => {
    const { id, records } = spoiled(
      (record) => chromaOf(pairOf(record).bare) > 30,
      (record) =>
        withReading(record, {
          bare: underPaper(pairOf(record).bare),
          printed: underPaper(pairOf(record).printed),
        }),
    );
    const { suspicions } = learnWatchfully(records);
    expect(suspicions[0]).toMatchObject({ recordId: id, slip: "other-light", bareStandsOut: true });
  });

  it("teaches all the same once somebody has answered for it", () => {
    const { id, records } = spoiled(
      (record) => deltaL(record) < -3,
      (record) => withReading(record, { bare: pairOf(record).printed, printed: pairOf(record).bare }),
    );
    const { posterior, suspicions } = learnWatchfully(records, { kept: new Set([id]) });
    expect(posterior.lessons.some(({ teaching }) => teaching.id === id)).toBe(true);
    expect(suspicions.find(({ recordId }) => recordId === id)).toMatchObject({ setAside: false });
  });
});

describe("a print that simply reacts strongly", () => {
  it("is no slip: half as dark again as expected stays in the fit", () => {
    const { id, records } = spoiled(
      (record) => deltaL(record) < -3 && !isBlack(record),
      (record) => {
        const { bare, printed } = pairOf(record);
        const more = (of: number, was: number): number => was + 1.5 * (of - was);
        const darker = { L: more(printed.L, bare.L), a: more(printed.a, bare.a), b: more(printed.b, bare.b) };
        return withReading(record, { printed: darker });
      },
    );
    const { posterior, suspicions } = learnWatchfully(records);
    expect(posterior.setAside.has(id)).toBe(false);
    expect(suspicions.find(({ recordId }) => recordId === id)?.slip ?? null).toBe(null);
  });

  it("with no slip to explain it is named and weighs less", () => {
    const { id, records } = spoiled(
      (record) => deltaL(record) < -3,
      (record) => {
        const { printed } = pairOf(record);
        return withReading(record, { printed: { ...printed, a: printed.a + 12, b: printed.b - 9 } });
      },
    );
    const posterior = learn(records);
    const found = suspicious(posterior).find(({ recordId }) => recordId === id);
    expect(found).toMatchObject({ slip: null, setAside: false });
    expect(found!.residualSd).toBeGreaterThan(3);
    expect(posterior.lessons.find(({ teaching }) => teaching.id === id)!.weight).toBeLessThan(0.5);
  });
});

describe("how surprising a distance is", () => {
  // P(chi^2_3 > 14.156) = 0.0027, P(chi^2_2 > 11.829) = 0.0027: the quantiles of any chi-square table (from memory).
  it("is said in standard deviations of one normal", () => {
    expect(normalEquivalent(9, 1)).toBe(3);
    expect(normalEquivalent(14.156, 3)).toBeCloseTo(3, 3);
    expect(normalEquivalent(11.829, 2)).toBeCloseTo(3, 3);
    expect(normalEquivalent(20.062, 6)).toBeCloseTo(3, 3);
    expect(normalEquivalent(0, 3)).toBe(0);
  });

  it("rises with the distance and never exceeds it, out to where no probability is left", () => {
    let before = 0;
    for (const d of [0.1, 0.5, 1, 2, 3, 5, 10, 30, 100]) {
      const z = normalEquivalent(d * d, 3);
      expect(z).toBeGreaterThan(before);
      expect(z).toBeLessThan(d);
      before = z;
    }
    expect(() => normalEquivalent(-1, 3)).toThrow(RangeError);
    expect(() => normalEquivalent(1, 0)).toThrow(RangeError);
  });
});

describe("a tint", () => {
  const usual = [0.002, 0.003, 0.005, 0.005, 0.005, 0.01].map((fraction) => {
    const record = shop.records[0]!;
    const mix = mixOf(base("gloss", 1 - fraction), black(fraction));
    return { ...record, print: { ...record.print, mix, itemKeys: ["gloss", "black"] } };
  });
  const withTint = (fraction: number): EvidenceRecord => ({
    ...usual[0]!,
    print: { ...usual[0]!.print, mix: mixOf(base("gloss", 1 - fraction), black(fraction)) },
  });

  it("of 5 % where every other is 0.5 % stands out, one of 1 % does not", () => {
    const habits = tintHabits(usual);
    expect(tintExcess(withTint(0.05), habits)).toBeGreaterThan(3);
    expect(tintExcess(withTint(0.01), habits)).toBeLessThan(1.5);
    expect(tintExcess(withTint(0.0005), habits)).toBe(0);
  });

  it("has no habit to break before five records hold it", () => {
    expect(tintExcess(withTint(0.05), tintHabits(usual.slice(0, 4)))).toBe(0);
  });
});

describe("relighting", () => {
  it("gives back the colour of the very spectrum that is smoothest, and doubts saturated colours more than greys", () => {
    const spectrum = spectrumOf([40, 20, -30]);
    const read = labFromReflectance(spectrum, weightsFor(PAPER));
    const back = relit(read, PAPER, VIEWING)!;
    const there = labFromReflectance(spectrum, weightsFor(VIEWING));
    const off = [back.lab.L - there.L, back.lab.a - there.a, back.lab.b - there.b];
    off.forEach((value, k) => {
      expect(Math.abs(value)).toBeLessThan(2 * Math.sqrt(back.covariance[k * 4]!) + 0.05);
    });
    expect(relit({ L: 40, a: 500, b: 0 }, PAPER, VIEWING)).toBe(null);
  });

  it("under the light it was read in changes nothing and leaves no doubt", () => {
    const { lab, covariance } = relit({ L: 45, a: 30, b: 20 }, VIEWING, VIEWING)!;
    expect(lab.L).toBeCloseTo(45, 6);
    expect(lab.a).toBeCloseTo(30, 6);
    // What is left is the reading's own 0.1 of X, Y, Z.
    for (const k of [0, 4, 8]) expect(Math.sqrt(covariance[k]!)).toBeLessThan(1);
  });
});
