/** The shelf as its sections edit it: the lists, the shop's units, and the edits. */
import {
  addShelfItem,
  changeDefaults,
  changeShelfItem,
  removeShelfItem,
  type ShelfItem,
} from "../../job/edits/shelf.ts";
import type { Problem } from "../../job/problem.ts";
import type { Shelf, ShopDefaults } from "../../job/shelfDocument.ts";
import { type ShelfList, shelfItemUse } from "../../job/shelfItemUse.ts";
import { type ShopUnits, shopUnits } from "../../units/shopUnits.ts";
import { useDocuments, usePlanner } from "../state/usePlanner.ts";

export interface ShelfInUse {
  readonly shelf: Shelf;
  readonly units: ShopUnits;
  add<List extends ShelfList>(list: List, item: ShelfItem<List>): void;
  change<List extends ShelfList>(list: List, id: string, change: Partial<Omit<ShelfItem<List>, "id">>): void;
  /** Removes an item that nothing uses; otherwise who uses it, and nothing is changed. */
  remove(list: ShelfList, id: string): readonly Problem[];
  changeDefaults(change: Partial<ShopDefaults>): void;
}

export function useShelf(): ShelfInUse {
  const documents = useDocuments();
  const edit = usePlanner((state) => state.edit);
  const { shelf } = documents.library;
  return {
    shelf,
    units: shopUnits(shelf.defaults.units),
    add: (list, item) => edit((now) => addShelfItem(now, list, item)),
    change: (list, id, change) => edit((now) => changeShelfItem(now, list, id, change)),
    remove: (list, id) => {
      const use = shelfItemUse(documents, list, id);
      if (use.length === 0) edit((now) => removeShelfItem(now, list, id));
      return use;
    },
    changeDefaults: (change) => edit((now) => changeDefaults(now, change)),
  };
}
