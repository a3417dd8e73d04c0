/** One slip of the pen or of the instrument put into a synthetic shop's library, as it happens at the bench. */
import type { Lab, Viewing } from "../../src/core/colorimetry/viewing.ts";
import type { EvidenceRecord, PairReading } from "../../src/core/evidence/record.ts";
import type { Draws } from "./draws.ts";
import { pairReading, SHOP_VIEWING } from "./shopReadings.ts";
import { type ShopRecord, type SyntheticShop, typedPrint } from "./syntheticShop.ts";

export const SLIP_KINDS = [
  "tint-times-ten",
  "swapped-pair",
  "other-light-on-both",
  "other-light-on-print",
] as const;
export type SlipKind = (typeof SLIP_KINDS)[number];

/** A shop with one wrong record, which one, and how it should have read. */
export interface SlippedShop {
  readonly shop: SyntheticShop;
  readonly recordId: string;
  readonly rightRecord: EvidenceRecord;
}

/** What an instrument set for paper reads. */
const PAPER_VIEWING: Viewing = { illuminant: "D50", observer: "2deg" };
/** Slips below these are not asked to be found (issue 3). */
const SMALLEST_SWAPPED_DELTA_L = 1.5;
const SMALLEST_CHROMA = 25;
const SMALLEST_CHANGE_OF_PAIR = 2;

const readingOf = (record: EvidenceRecord): PairReading => {
  if (record.reading.kind !== "pair") throw new RangeError(`${record.id} must be a pair; got by-eye`);
  return record.reading;
};

const distance = (one: Lab, other: Lab): number =>
  Math.hypot(one.L - other.L, one.a - other.a, one.b - other.b);

/** The record as the slip leaves it, or null where the slip is not of the kind that must be found. */
function slipped({ record, truth }: ShopRecord, kind: SlipKind): EvidenceRecord | null {
  const right = readingOf(record);
  switch (kind) {
    case "tint-times-ten": {
      const { recipe, setUp } = truth;
      if (recipe.colourant?.typed.family !== "black") return null;
      const typed = { ...recipe, fraction: 10 * recipe.fraction };
      return { ...record, print: typedPrint(record.print.garment, typed, setUp) };
    }
    case "swapped-pair": {
      if (Math.abs(right.printed.L - right.bare.L) < SMALLEST_SWAPPED_DELTA_L) return null;
      return { ...record, reading: { ...right, bare: right.printed, printed: right.bare } };
    }
    case "other-light-on-both": {
      if (Math.hypot(right.bare.a, right.bare.b) <= SMALLEST_CHROMA) return null;
      return { ...record, reading: pairReading(truth.reading, PAPER_VIEWING, PAPER_VIEWING) };
    }
    case "other-light-on-print": {
      const reading = pairReading(truth.reading, SHOP_VIEWING, PAPER_VIEWING);
      if (distance(reading.printed, right.printed) <= SMALLEST_CHANGE_OF_PAIR) return null;
      return { ...record, reading };
    }
  }
}

/** `shop` with one record spoiled, any of those that the slip could happen to alike; null where there is none. */
export function injectSlip(shop: SyntheticShop, kind: SlipKind, draws: Draws): SlippedShop | null {
  const candidates = shop.records.flatMap((one) => {
    const wrong = slipped(one, kind);
    return wrong === null ? [] : [{ one, wrong }];
  });
  if (candidates.length === 0) return null;
  const { one, wrong } = draws.pick(candidates);
  return {
    shop: {
      ...shop,
      records: shop.records.map((other) => (other === one ? { ...other, record: wrong } : other)),
    },
    recordId: one.record.id,
    rightRecord: one.record,
  };
}
