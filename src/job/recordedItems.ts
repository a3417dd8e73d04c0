/**
 * Parts of the library that records stand on. Undo takes a lot or a set-up back; a record made in between still names
 * it and is never undone, so what it names stays too.
 */
import type { Library, LibraryLedgers } from "./libraryDocument.ts";
import { itemIdsOfLedgers, lotIdsOfLedgers } from "./recordReferences.ts";
import type { Shelf } from "./shelfDocument.ts";

type Items = Pick<Library, "shelf" | "garmentLots">;

interface Identified {
  readonly id: string;
}

/** `list` with those of `known` that are wanted and missing, at the end; `list` itself where none is. */
function withWanted<Item extends Identified>(
  list: Item[],
  known: readonly Item[],
  wanted: ReadonlySet<string>,
): Item[] {
  const kept = known.filter((item) => wanted.has(item.id) && !list.some((one) => one.id === item.id));
  return kept.length === 0 ? list : [...list, ...kept];
}

function shelfWithWanted(
  shelf: Shelf,
  known: Shelf,
  setUpIds: ReadonlySet<string>,
  itemIds: ReadonlySet<string>,
) {
  const setUps = withWanted(shelf.setUps, known.setUps, setUpIds);
  const bases = withWanted(shelf.bases, known.bases, itemIds);
  const colourants = withWanted(shelf.colourants, known.colourants, itemIds);
  const meshIds = new Set(setUps.map((setUp) => setUp.meshId));
  const squeegeeIds = new Set(setUps.map((setUp) => setUp.squeegeeId));
  const meshes = withWanted(shelf.meshes, known.meshes, meshIds);
  const squeegees = withWanted(shelf.squeegees, known.squeegees, squeegeeIds);
  const isSame =
    setUps === shelf.setUps &&
    bases === shelf.bases &&
    colourants === shelf.colourants &&
    meshes === shelf.meshes &&
    squeegees === shelf.squeegees;
  return isSame ? shelf : { ...shelf, setUps, bases, colourants, meshes, squeegees };
}

/** `next` with the items of `previous` that `records` name and `next` lacks; `next` itself where it lacks none. */
export function withRecordedItems<Next extends Items>(
  next: Next,
  previous: Items,
  records: LibraryLedgers,
): Next {
  const setUpIds = new Set(records.testPrints.map((print) => print.setUpId));
  const garmentLots = withWanted(next.garmentLots, previous.garmentLots, lotIdsOfLedgers(records));
  const shelf = shelfWithWanted(next.shelf, previous.shelf, setUpIds, itemIdsOfLedgers(records));
  return garmentLots === next.garmentLots && shelf === next.shelf ? next : { ...next, garmentLots, shelf };
}
