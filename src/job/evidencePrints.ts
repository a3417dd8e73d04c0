/** A print as evidence knows it: the garment lot, inks and set-up by key. Nothing is shared that is not known to be. */
import type { EvidenceGarment, EvidencePrint } from "../core/evidence/record.ts";
import type { Application, Garment, InkMix } from "../core/prediction/inputs.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import type { Recipe } from "./recipeParts.ts";

/** Words that differ only in case or blanks are one name. */
const nameKey = (text: string) => text.trim().replaceAll(/\s+/g, " ").toLocaleLowerCase("en");

/** A name that nobody entered is shared with nothing: two lots of unknown mills are not of one mill. */
const sharedKey = (text: string, lotId: string) => (nameKey(text) === "" ? `only ${lotId}` : nameKey(text));

/**
 * The keys of a lot: style by name, mill (with its country, since one mill may sew in several) and colourway by name
 * within it, the lot by its id, so that a sample lot and a production lot never become one by accident.
 */
export function evidenceGarment(
  lot: Pick<GarmentLot, "id" | "style" | "mill" | "country" | "colourway">,
  garment: Garment,
): EvidenceGarment {
  const mill = sharedKey(lot.mill, lot.id);
  const country = nameKey(lot.country);
  return {
    lotKey: lot.id,
    millKey: country === "" ? mill : `${mill}, ${country}`,
    colourwayKey: sharedKey(lot.colourway, lot.id),
    styleKey: nameKey(lot.style),
    garment,
  };
}

/** A print to be made. `recipe` and `mix` are of one order, as `inkMixFor` and `pouredInkFor` give it. */
export function evidencePrint(
  lot: GarmentLot,
  print: {
    readonly garment: Garment;
    readonly recipe: Recipe;
    readonly mix: InkMix;
    readonly application: Application;
    readonly setUpId: string;
    readonly depositOfThisPrintWeighed?: boolean;
  },
): EvidencePrint {
  const { garment, recipe, mix, application, setUpId, depositOfThisPrintWeighed = false } = print;
  return {
    garment: evidenceGarment(lot, garment),
    mix,
    itemKeys: recipe.map(({ itemId }) => itemId),
    application,
    setUpKey: setUpId,
    depositOfThisPrintWeighed,
  };
}
