/** A print place in words. */
import type { Place } from "../../job/jobDocument.ts";
import { shopUnits, type UnitChoice } from "../../units/shopUnits.ts";
import { formatNumber } from "../../units/unit.ts";

/** "280 × 330 mm", in the shop's unit. */
export function sizeWords(
  { widthMm, heightMm }: Pick<Place, "widthMm" | "heightMm">,
  units: UnitChoice,
): string {
  const { length } = shopUnits(units);
  return `${formatNumber(widthMm, length)} × ${formatNumber(heightMm, length)}\u00a0${length.symbol}`;
}
