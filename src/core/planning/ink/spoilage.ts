/** Spoilage by the terms that printers post, and by the shop's own. */

/** Who says so: read in a printer's posted terms, common practice, or the shop's own entry. */
export type SpoilageStatus = "posted terms" | "shop";

export type SpoilageRule =
  /** The shop's own part, 0..1. */
  | { readonly code: "shop"; readonly fraction: number }
  /** 3 % of any quantity; two posted terms call it common. */
  | { readonly code: "three-percent" }
  /** 1.5 %, but at least one piece; one posted policy. */
  | { readonly code: "one-and-a-half-percent" }
  /** 1 % over 1,000 pieces, 2 % over 144, 5 % below; one posted policy. 144 itself, which it leaves open, is at 5 %. */
  | { readonly code: "by-quantity" };

/** Where each rule was read: printers' posted terms, quoted in the design notes; none is a standard. */
export const SPOILAGE_STATUS: Readonly<Record<SpoilageRule["code"], SpoilageStatus>> = {
  shop: "shop",
  "three-percent": "posted terms",
  "one-and-a-half-percent": "posted terms",
  "by-quantity": "posted terms",
};

/** Pieces to spare of each colour and lot of a tonal job, besides the spoilage. From memory, no source. */
export const SPARE_PIECE_COUNTS = { fewest: 6, most: 12 } as const;

/** Room for the last digits before rounding up to a piece. */
const PIECE_SLACK = 1e-9;

/**
 * Part of `pieceCount` that is expected to be spoiled, >= 0 (above 1 only for the one piece of a fraction of a piece).
 * @throws RangeError for a count that is no whole number >= 0 or a fraction of the shop's outside 0..1.
 */
export function spoilageFraction(rule: SpoilageRule, pieceCount: number): number {
  if (!(Number.isInteger(pieceCount) && pieceCount >= 0)) {
    throw new RangeError(`pieceCount must be a whole number >= 0; got ${pieceCount}`);
  }
  switch (rule.code) {
    case "shop":
      if (!(rule.fraction >= 0 && rule.fraction <= 1)) {
        throw new RangeError(`fraction must be in 0..1; got ${rule.fraction}`);
      }
      return rule.fraction;
    case "three-percent":
      return 0.03;
    case "one-and-a-half-percent":
      return pieceCount === 0 ? 0.015 : Math.max(0.015, 1 / pieceCount);
    case "by-quantity":
      if (pieceCount > 1000) return 0.01;
      return pieceCount > 144 ? 0.02 : 0.05;
  }
}

/** Whole pieces that may be spoiled of `pieceCount`, rounded up. @throws RangeError as `spoilageFraction`. */
export function spoiledPieceCount(rule: SpoilageRule, pieceCount: number): number {
  return Math.ceil(spoilageFraction(rule, pieceCount) * pieceCount - PIECE_SLACK);
}
