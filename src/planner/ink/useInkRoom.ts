/** The ink room of the open job, and what was wished for its batches in this session. */
import { useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import type { BatchWishes, InkRoom } from "../../job/inkRoom/inkRoom.ts";
import { inkRoomOf } from "../../job/inkRoom/inkRoomOf.ts";
import { recipeItem } from "../../job/lookup.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { today } from "../state/identity.ts";
import type { PlannerStore } from "../state/plannerStore.ts";
import { useDocuments, usePlannerStore } from "../state/usePlanner.ts";

type Wishes = Readonly<Record<string, BatchWishes>>;

export interface InkRoomInUse {
  readonly documents: Documents;
  readonly room: InkRoom;
  readonly shelf: Shelf;
  readonly units: UnitChoice;
  readonly today: string;
  readonly wishes: Wishes;
  /** Scale, pot, amount or form for one mix; kept while the planner is open, never stored. */
  readonly wish: (mixId: string, change: BatchWishes) => void;
  readonly nameOf: (itemId: string) => string;
}

const kept = new WeakMap<PlannerStore, Wishes>();

export function useInkRoom(): InkRoomInUse {
  const documents = useDocuments();
  const store = usePlannerStore();
  const [wishes, setWishes] = useState<Wishes>(() => kept.get(store) ?? {});
  const [day] = useState(today);
  const room = useMemo(() => inkRoomOf(documents, { today: day, wishes }), [documents, day, wishes]);
  const { shelf } = documents.library;
  return {
    documents,
    room,
    shelf,
    units: shelf.defaults.units,
    today: day,
    wishes,
    wish: (mixId, change) => {
      const next = { ...wishes, [mixId]: { ...wishes[mixId], ...change } };
      kept.set(store, next);
      setWishes(next);
    },
    nameOf: (itemId) => recipeItem(shelf, itemId)?.item.name ?? "an ink no longer on the shelf",
  };
}
