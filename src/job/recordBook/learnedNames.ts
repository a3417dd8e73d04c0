/** Names behind the opaque keys of evidence: styles, mills, colourways, lots, inks and set-ups as the shop calls them. */
import { evidenceGarment } from "../evidencePrints.ts";
import type { Library } from "../libraryDocument.ts";
import { lineName } from "../lineName.ts";
import { recipeItem } from "../lookup.ts";
import { garmentFor } from "../predictionInputs.ts";

export interface LearnedNames {
  readonly style: (key: string) => string;
  readonly mill: (key: string) => string;
  readonly colourway: (key: string) => string;
  readonly lot: (key: string) => string;
  readonly item: (key: string) => string;
  readonly setUp: (key: string) => string;
}

/** Looked up once; a key whose lot or item is gone stands for itself. */
export function learnedNames({ garmentLots, shelf }: Pick<Library, "garmentLots" | "shelf">): LearnedNames {
  const styles = new Map<string, string>();
  const mills = new Map<string, string>();
  const colourways = new Map<string, string>();
  const lots = new Map<string, string>();
  for (const lot of garmentLots) {
    const found = garmentFor(lot, shelf);
    const cloth = found.ok ? found : garmentFor({ ...lot, bare: { kind: "hex", hex: "#808080" } }, shelf);
    if (!cloth.ok) continue;
    const keys = evidenceGarment(lot, cloth.garment);
    styles.set(keys.styleKey, lot.style);
    mills.set(keys.millKey, lot.mill === "" ? `the mill of lot ${lot.lot}` : lot.mill);
    colourways.set(keys.colourwayKey, lot.colourway === "" ? `the colour of lot ${lot.lot}` : lot.colourway);
    lots.set(keys.lotKey, `${lineName(lot)}, lot ${lot.lot}`);
  }
  return {
    style: (key) => styles.get(key) ?? key,
    mill: (key) => mills.get(key) ?? key,
    colourway: (key) => colourways.get(key) ?? key,
    lot: (key) => lots.get(key) ?? "a lot no longer in the library",
    item: (key) => recipeItem(shelf, key)?.item.name ?? "an ink no longer on the shelf",
    setUp: (key) => shelf.setUps.find(({ id }) => id === key)?.name ?? "a set-up no longer on the shelf",
  };
}
