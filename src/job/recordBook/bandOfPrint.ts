/** The target that a print is held against: that of the job's place it was made for, as far as the job knows one. */
import { lineBand } from "../approvedReference.ts";
import type { Documents } from "../documents.ts";
import type { Band } from "../jobDocument.ts";
import { isPrintedAt } from "../lookup.ts";
import { partsOf, type Recipe } from "../recipeParts.ts";

/** No place, no target: a print is then held against nothing, and its chance in band means nothing. */
const NO_BAND: Band = { deltaL: 0, tolerance: 50, hueLimit: 50 };

/** The places whose target the ink goes the way of: a mix with white to a lighter one, any other to a darker one. */
function placesFor({ job, library }: Documents, recipe: Recipe) {
  const hasWhite = partsOf(recipe, library.shelf).some(
    (part) => part.kind === "colourant" && part.item.optics.kind === "white",
  );
  return job.places.filter(({ band }) => band.deltaL > 0 === hasWhite);
}

/** The band of the first such place where the lot is printed; null where the job prints it nowhere. */
export function bandOfPrint(documents: Documents, lotId: string, recipe: Recipe): Band | null {
  for (const place of placesFor(documents, recipe)) {
    const line = documents.job.lines.find((one) => one.garmentLotId === lotId && isPrintedAt(place, one.id));
    if (line !== undefined) return lineBand(documents, line, place).band;
  }
  return null;
}

/** As `bandOfPrint`; else the job's own band, else one that holds everything, for a prediction that needs one. */
export function anyBandOfPrint(documents: Documents, lotId: string, recipe: Recipe): Band {
  return bandOfPrint(documents, lotId, recipe) ?? placesFor(documents, recipe)[0]?.band ?? NO_BAND;
}
