/** The name under which a garment is shown: what the shop calls it, never an id. */
import type { GarmentLot } from "./garmentLotDocument.ts";

/** Style, colourway and mill, as far as they are known. */
export function lineName(lot: Pick<GarmentLot, "style" | "colourway" | "mill">): string {
  return [lot.style, lot.colourway, lot.mill]
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .join(", ");
}
