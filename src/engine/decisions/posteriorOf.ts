/** What the record book teaches, kept as long as the book and what it refers to stay the same. */
import { learnWatchfully } from "../../core/evidence/learnWatchfully.ts";
import type { Posterior } from "../../core/evidence/posterior.ts";
import type { Documents } from "../../job/documents.ts";
import { evidenceInputs } from "../../job/evidenceInputs.ts";
import type { Library } from "../../job/libraryDocument.ts";

/**
 * What the library's records teach, slips set aside as in the matrix; null where there are none.
 * @param without ids of records that must not teach, besides those somebody set aside
 */
export function learnedFrom(library: Library, without: ReadonlySet<string> = new Set()): Posterior | null {
  const inputs = evidenceInputs(library);
  if (inputs.records.length === 0 && inputs.goodsIn.length === 0) return null;
  const setAside = new Set([...inputs.setAside, ...without]);
  return learnWatchfully(inputs.records, { ...inputs, setAside }).posterior;
}

/** A photo teaches nothing and weighs as much as the rest of a record book. */
export function withoutPhotos({ job, library }: Documents): Documents {
  const testPrints = library.testPrints.map((print) => ({ ...print, photo: null }));
  return { job, library: { ...library, testPrints } };
}

/** `learnedFrom` that learns anew only when something that teaches has changed. */
export function rememberedPosterior(): (library: Library) => Posterior | null {
  let known: { readonly of: string; readonly posterior: Posterior | null } | null = null;
  return (library) => {
    const { testPrints, goodsInChecks, slipAnswers, garmentLots, shelf } = library;
    const of = JSON.stringify([testPrints, goodsInChecks, slipAnswers, garmentLots, shelf]);
    if (known?.of !== of) known = { of, posterior: learnedFrom(library) };
    const { posterior } = known;
    // Cloths that are prepared for one request are not kept beyond it.
    return posterior === null ? null : { ...posterior, cloths: new Map(posterior.cloths) };
  };
}
