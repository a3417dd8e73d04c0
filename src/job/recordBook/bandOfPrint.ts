/** The target that a print is held against: that of the job's place it was made for, as far as the job knows one. */
import { lineBand } from "../approvedReference.ts";
import type { Documents } from "../documents.ts";
import type { Band } from "../jobDocument.ts";
import { isPrintedAt } from "../lookup.ts";
import { partsOf, type Recipe } from "../recipeParts.ts";

/** No place, no target: a print is then held against nothing, and its chance in band means nothing. */
const NO_BAND: Band = { deltaL: 0, tolerance: 50, hueLimit: 50 };

/**
 * The band of the first place where the lot is printed and the ink goes the way of the target: a mix with white to a
 * lighter one, any other to a darker one. Null where the job has no such place.
 */
export function bandOfPrint(documents: Documents, lotId: string, recipe: Recipe): Band | null {
  const { job, library } = documents;
  const hasWhite = partsOf(recipe, library.shelf).some(
    (part) => part.kind === "colourant" && part.item.optics.kind === "white",
  );
  const places = job.places.filter(({ band }) => band.deltaL > 0 === hasWhite);
  for (const place of places) {
    const line = job.lines.find((one) => one.garmentLotId === lotId && isPrintedAt(place, one.id));
    if (line !== undefined) return lineBand(documents, line, place).band;
  }
  return places[0]?.band ?? null;
}

/** As `bandOfPrint`, with a band that holds everything where there is none, for a prediction that needs one. */
export function anyBandOfPrint(documents: Documents, lotId: string, recipe: Recipe): Band {
  return bandOfPrint(documents, lotId, recipe) ?? NO_BAND;
}
