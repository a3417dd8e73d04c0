/** How references are checked: ids that lead nowhere, and ids taken twice. */
import type { Problem } from "./problem.ts";

export type Identified = readonly { readonly id: string }[];
export type KnownIds = ReadonlySet<string>;

export const idsOf = (...lists: readonly Identified[]): KnownIds =>
  new Set(lists.flatMap((list) => list.map((item) => item.id)));

export function missing(known: KnownIds, id: string | null, where: string): Problem[] {
  return id === null || known.has(id) ? [] : [{ code: "missing-reference", where, detail: id }];
}

export function missingComponents(
  known: KnownIds,
  parts: readonly { readonly itemId: string }[],
  where: string,
): Problem[] {
  return parts.flatMap(({ itemId }, index) => missing(known, itemId, `${where}[${index}].itemId`));
}

/** `seen` is shared by lists whose ids are one name space. */
export function repeated(list: Identified, where: string, seen = new Set<string>()): Problem[] {
  return list.flatMap(({ id }, index) => {
    if (seen.has(id)) return [{ code: "repeated-id", where: `${where}[${index}].id`, detail: id }];
    seen.add(id);
    return [];
  });
}
