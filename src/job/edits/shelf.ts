/** Edits of the shelf: its six lists alike, and the shop's defaults. */
import type { z } from "zod";
import type { Documents } from "../documents.ts";
import type { Library } from "../libraryDocument.ts";
import {
  baseSchema,
  colourantSchema,
  masterSchema,
  meshSchema,
  type Shelf,
  type ShopDefaults,
  setUpSchema,
  squeegeeSchema,
} from "../shelfDocument.ts";
import { type ShelfList, shelfItemUse } from "../shelfItemUse.ts";
import { shopDefaultsSchema } from "../shopDefaultsDocument.ts";
import { requireId, requireItem, requireValid, withChanged, withItem, withoutItem } from "./listEdit.ts";

export type ShelfItem<List extends ShelfList> = Shelf[List][number];

const SCHEMAS: { readonly [List in ShelfList]: z.ZodType<ShelfItem<List>> } = {
  bases: baseSchema,
  colourants: colourantSchema,
  masters: masterSchema,
  meshes: meshSchema,
  squeegees: squeegeeSchema,
  setUps: setUpSchema,
};

function withShelf(documents: Documents, shelf: Shelf): Documents {
  return { ...documents, library: { ...documents.library, shelf } };
}

/** The list as one of items of its own kind; TypeScript cannot follow the key through the generic by itself. */
function itemsOf<List extends ShelfList>(shelf: Shelf, list: List): readonly ShelfItem<List>[] {
  return shelf[list] as readonly ShelfItem<List>[];
}

function requireShelfItem<List extends ShelfList>(library: Library, list: List, item: ShelfItem<List>) {
  const { shelf } = library;
  const valid = requireValid(SCHEMAS[list], item, list);
  if ("meshId" in valid) {
    requireId(shelf.meshes, valid.meshId, "mesh");
    requireId(shelf.squeegees, valid.squeegeeId, "squeegee");
  }
  if ("colourantId" in valid) {
    requireId(shelf.colourants, valid.colourantId, "colourant");
    requireId(shelf.bases, valid.baseId, "base");
    if (valid.dilutionId !== null) requireId(library.dilutions, valid.dilutionId, "dilution");
  }
  return valid;
}

/** The reference clear is one base, and its strength is 1 by definition. */
function requireReference(shelf: Shelf, item: object, changed: object): void {
  if (!("reference" in item && item.reference === true)) return;
  if ("reference" in changed && shelf.bases.some((base) => base.reference && base.id !== idOf(item))) {
    throw new RangeError("only one base can be the reference clear; use chooseReferenceBase");
  }
  if ("strength" in item && ("strength" in changed || "reference" in changed) && item.strength !== 1) {
    throw new RangeError(`strength of the reference clear must be 1; got ${item.strength}`);
  }
}

const idOf = (item: object): unknown => ("id" in item ? item.id : undefined);

export function addShelfItem<List extends ShelfList>(
  documents: Documents,
  list: List,
  item: ShelfItem<List>,
): Documents {
  const { shelf } = documents.library;
  requireShelfItem(documents.library, list, item);
  requireReference(shelf, item, item);
  // One id names one item, whichever list it lies in: recipes do not say which list they mean.
  if (list === "bases" || list === "colourants")
    withItem<{ readonly id: string }>([...shelf.bases, ...shelf.colourants], item, list);
  return withShelf(documents, { ...shelf, [list]: withItem(itemsOf(shelf, list), item, list) });
}

export function changeShelfItem<List extends ShelfList>(
  documents: Documents,
  list: List,
  id: string,
  change: Partial<Omit<ShelfItem<List>, "id">>,
): Documents {
  const { shelf } = documents.library;
  const items = withChanged(itemsOf(shelf, list), id, list, (item) => {
    const changed: ShelfItem<List> = { ...item, ...change };
    requireReference(shelf, changed, change);
    return requireShelfItem(documents.library, list, changed);
  });
  return withShelf(documents, { ...shelf, [list]: items });
}

/** Removes an item that nothing uses. @throws RangeError where `shelfItemUse` finds a user: ask it first. */
export function removeShelfItem(documents: Documents, list: ShelfList, id: string): Documents {
  const { shelf } = documents.library;
  const use = shelfItemUse(documents, list, id)[0];
  if (use !== undefined)
    throw new RangeError(`${list} item ${id} must be unused; got ${use.code} ${use.where}`);
  return withShelf(documents, { ...shelf, [list]: withoutItem(itemsOf(shelf, list), id, list) });
}

/**
 * Makes a base the reference clear. Strengths are ratios to it, so all are divided by its present one.
 * @throws RangeError where it has no strength, or another's would leave the schema's range.
 */
export function chooseReferenceBase(documents: Documents, baseId: string): Documents {
  const { shelf } = documents.library;
  const { strength } = requireItem(shelf.bases, baseId, "base");
  if (!(strength > 0))
    throw new RangeError(`strength of the reference clear must be above 0; got ${strength}`);
  const bases = shelf.bases.map((base) =>
    requireValid(
      baseSchema,
      { ...base, reference: base.id === baseId, strength: base.strength / strength },
      "base",
    ),
  );
  return withShelf(documents, { ...shelf, bases });
}

export function changeDefaults(documents: Documents, change: Partial<ShopDefaults>): Documents {
  const { shelf } = documents.library;
  const defaults = requireValid(shopDefaultsSchema, { ...shelf.defaults, ...change }, "defaults");
  return withShelf(documents, { ...shelf, defaults });
}
