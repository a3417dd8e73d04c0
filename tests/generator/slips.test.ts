/** Each slip spoils one record and nothing else, in the way its name says. */
import { describe, expect, it } from "vitest";
import { drawsFor } from "./draws.ts";
import { injectSlip, SLIP_KINDS, type SlipKind, type SlippedShop } from "./slips.ts";
import { syntheticShop } from "./syntheticShop.ts";

const SEED = 20260350;
const shops = Array.from({ length: 10 }, (_, i) => syntheticShop(SEED + i));

function slippedShops(kind: SlipKind): SlippedShop[] {
  return shops.flatMap((shop) => injectSlip(shop, kind, drawsFor(shop.seed, kind)) ?? []);
}

function recordsOf({ shop, recordId, rightRecord }: SlippedShop) {
  const wrong = shop.records.find(({ record }) => record.id === recordId)!.record;
  if (wrong.reading.kind !== "pair" || rightRecord.reading.kind !== "pair") {
    throw new RangeError("readings are pairs here");
  }
  return { wrong, right: rightRecord, wrongPair: wrong.reading, rightPair: rightRecord.reading };
}

describe("a slip", () => {
  it.each(SLIP_KINDS)("%s spoils exactly one record of the shop", (kind) => {
    const found = slippedShops(kind);
    expect(found.length).toBeGreaterThan(7);
    for (const { shop, recordId } of found) {
      const original = shops.find(({ seed }) => seed === shop.seed)!;
      const changed = shop.records.filter(({ record }, i) => record !== original.records[i]!.record);
      expect(changed.map(({ record }) => record.id)).toEqual([recordId]);
    }
  });

  it("of the tint types ten times the black and leaves what was read", () => {
    for (const one of slippedShops("tint-times-ten")) {
      const { wrong, right } = recordsOf(one);
      expect(wrong.print.mix.parts[1]!.massFraction).toBeCloseTo(
        10 * right.print.mix.parts[1]!.massFraction,
        12,
      );
      expect(wrong.print.mix.parts.reduce((sum, { massFraction }) => sum + massFraction, 0)).toBeCloseTo(
        1,
        12,
      );
      expect(wrong.reading).toBe(right.reading);
    }
  });

  it("of the pair exchanges bare and print, where they differ enough to be seen", () => {
    for (const one of slippedShops("swapped-pair")) {
      const { wrongPair, rightPair } = recordsOf(one);
      expect(wrongPair.bare).toEqual(rightPair.printed);
      expect(wrongPair.printed).toEqual(rightPair.bare);
      expect(Math.abs(rightPair.printed.L - rightPair.bare.L)).toBeGreaterThanOrEqual(1.5);
    }
  });

  it("of the light moves both readings of a coloured pair, or the print alone by more than 2", () => {
    for (const one of slippedShops("other-light-on-both")) {
      const { wrongPair, rightPair } = recordsOf(one);
      expect(wrongPair.bare).not.toEqual(rightPair.bare);
      expect(wrongPair.printed).not.toEqual(rightPair.printed);
      expect(Math.hypot(rightPair.bare.a, rightPair.bare.b)).toBeGreaterThan(25);
    }
    for (const one of slippedShops("other-light-on-print")) {
      const { wrongPair, rightPair } = recordsOf(one);
      expect(wrongPair.bare).toEqual(rightPair.bare);
      const { printed: wrong } = wrongPair;
      const { printed: right } = rightPair;
      expect(Math.hypot(wrong.L - right.L, wrong.a - right.a, wrong.b - right.b)).toBeGreaterThan(2);
    }
  });
});
