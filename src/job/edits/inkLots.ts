/** Deliveries of an ink on the shelf: which lot is in use is told by its code on the pot's label. */
import type { Documents } from "../documents.ts";
import { type InkLot, inkLotSchema } from "../shelfDocument.ts";
import { requireItem, requireValid, withChanged, withItem, withoutItem } from "./listEdit.ts";
import { changeShelfItem } from "./shelf.ts";

type InkList = "bases" | "colourants";

function withLots(
  documents: Documents,
  list: InkList,
  itemId: string,
  change: (lots: readonly InkLot[]) => InkLot[],
): Documents {
  const { shelf } = documents.library;
  const items: readonly { readonly id: string; readonly lots: InkLot[] }[] = shelf[list];
  const { lots } = requireItem(items, itemId, list);
  return changeShelfItem(documents, list, itemId, { lots: change(lots) });
}

export function addInkLot(documents: Documents, list: InkList, itemId: string, lot: InkLot): Documents {
  requireValid(inkLotSchema, lot, "lot");
  return withLots(documents, list, itemId, (lots) => withItem(lots, lot, "lot"));
}

export function changeInkLot(
  documents: Documents,
  list: InkList,
  itemId: string,
  lotId: string,
  change: Partial<Omit<InkLot, "id">>,
): Documents {
  return withLots(documents, list, itemId, (lots) =>
    withChanged(lots, lotId, "lot", (lot) => ({ ...lot, ...change })),
  );
}

/** Takes a lot off the shelf. Pots that were mixed from it keep its code. */
export function removeInkLot(documents: Documents, list: InkList, itemId: string, lotId: string): Documents {
  return withLots(documents, list, itemId, (lots) => withoutItem(lots, lotId, "lot"));
}
