/** Joins an imported library to the shop's own: nothing of the shop's own is changed or lost. */
import { eachLedger, type LedgerName, type Library, type LibraryLedgers } from "../job/libraryDocument.ts";
import type { Problem } from "../job/problem.ts";
import { sameValue } from "../job/sameValue.ts";
import type { Base } from "../job/shelfDocument.ts";

export interface LibraryMerge {
  readonly library: Library;
  /** What came in under a known id but says something else; the shop's own was kept. */
  readonly kept: readonly Problem[];
}

function mergeList<Item extends { readonly id: string }>(
  existing: readonly Item[],
  incoming: readonly Item[],
  where: string,
  kept: Problem[],
): Item[] {
  const known = new Map(existing.map((item) => [item.id, item]));
  const added = incoming.filter((item) => {
    const own = known.get(item.id);
    if (own === undefined) return true;
    if (!sameValue(own, item)) kept.push({ code: "kept-own", where, detail: item.id });
    return false;
  });
  return [...existing, ...added];
}

/**
 * The shop's library with the incoming items added. Items are the same when their ids are; where the same id
 * says something else the shop's own stays and is reported ("kept-own", with the list and the id). The
 * append-only records are united. The shop's own defaults always stay, and so does its reference clear: another one comes in as
 * an ordinary base ("second-reference-clear").
 */
export function mergeLibrary(existing: Library, incoming: Library): LibraryMerge {
  const kept: Problem[] = [];
  const own = existing.shelf;
  const other = incoming.shelf;
  const united = <Name extends LedgerName>(name: Name) =>
    mergeList<{ readonly id: string }>(
      existing[name],
      incoming[name],
      `library.${name}`,
      kept,
    ) as Library[Name];
  const library: Library = {
    shelf: {
      bases: mergeList(
        own.bases,
        withOneReference(own.bases, other.bases, kept),
        "library.shelf.bases",
        kept,
      ),
      colourants: mergeList(own.colourants, other.colourants, "library.shelf.colourants", kept),
      masters: mergeList(own.masters, other.masters, "library.shelf.masters", kept),
      meshes: mergeList(own.meshes, other.meshes, "library.shelf.meshes", kept),
      squeegees: mergeList(own.squeegees, other.squeegees, "library.shelf.squeegees", kept),
      setUps: mergeList(own.setUps, other.setUps, "library.shelf.setUps", kept),
      defaults: own.defaults,
    },
    garmentLots: mergeList(existing.garmentLots, incoming.garmentLots, "library.garmentLots", kept),
    ...eachLedger<LibraryLedgers>((name) => united(name)),
  };
  if (!sameValue(own.defaults, other.defaults)) {
    kept.push({ code: "kept-own", where: "library.shelf.defaults" });
  }
  return { library, kept };
}

/** The incoming bases; where the shop has a reference clear, no other one comes in as the reference. */
function withOneReference(own: readonly Base[], incoming: readonly Base[], kept: Problem[]): readonly Base[] {
  if (!own.some((base) => base.reference)) return incoming;
  const ownIds = new Set(own.map((base) => base.id));
  return incoming.map((base) => {
    if (!base.reference || ownIds.has(base.id)) return base;
    const { id, name } = base;
    kept.push({ code: "second-reference-clear", where: "library.shelf.bases", detail: id, values: { name } });
    return { ...base, reference: false };
  });
}
