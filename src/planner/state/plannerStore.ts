/** The planner's one state: the open documents, their history, and how saving stands. */
import { type TemporalState, temporal } from "zundo";
import { createStore, type StateCreator, type StoreApi } from "zustand/vanilla";
import type { Documents } from "../../job/documents.ts";
import { withRecordedItems } from "../../job/recordedItems.ts";
import { sameValue } from "../../job/sameValue.ts";
import { joined, type Ledgers, ledgerPart, onlyAdds, type Undoable, undoablePart } from "./undoableParts.ts";

export type SaveState = "saved" | "saving" | "unsaved" | "failed";

/** Steps that can be undone. Invented default. */
export const UNDO_LIMIT = 200;

export interface PlannerState {
  /** Null while no job is open. The same object as long as nothing in it changes. */
  readonly documents: Documents | null;
  /** The two parts of `documents`: what undo may take back, and what it never touches. */
  readonly undoable: Undoable | null;
  readonly ledgers: Ledgers | null;
  readonly saveState: SaveState;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  /**
   * Changes what undo may take back. Edits in a row with the same gesture are one undo step: a drag, typing in one
   * field. An edit that changes nothing is no step. @throws RangeError where it touches a ledger or no job is open.
   */
  readonly edit: (change: (documents: Documents) => Documents, gesture?: string) => void;
  /** Ends a gesture: the next edit is a new step, even under the same name. */
  readonly endGesture: () => void;
  /** Adds to a ledger, for good. @throws RangeError where it does anything else or no job is open. */
  readonly record: (change: (documents: Documents) => Documents) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** Opens documents, or none; their history begins here. */
  readonly load: (documents: Documents | null) => void;
  readonly setSaveState: (saveState: SaveState) => void;
}

/** What may be done to the store from outside: read and listen; changes go through its actions. */
export type PlannerStore = Pick<StoreApi<PlannerState>, "getState" | "getInitialState" | "subscribe">;

type Undone = Pick<PlannerState, "undoable">;
type Parts = Pick<PlannerState, "undoable" | "ledgers">;

function partsOf(documents: Documents | null): Parts {
  if (documents === null) return { undoable: null, ledgers: null };
  return { undoable: undoablePart(documents), ledgers: ledgerPart(documents) };
}

/** `change` with the whole that follows from the changed parts, so that no listener ever sees them disagree. */
function withWhole(state: PlannerState, change: Partial<PlannerState>): Partial<PlannerState> {
  if (!("undoable" in change || "ledgers" in change) || "documents" in change) return change;
  const { undoable, ledgers }: Parts = { ...state, ...change };
  if (undoable === null || ledgers === null) return { ...change, documents: null };
  const kept = state.undoable === null ? undoable : withRecordedItems(undoable, state.undoable, ledgers);
  return { ...change, undoable: kept, documents: joined(kept, ledgers) };
}

/** Lets every change, those of undo and redo included, pass through `withWhole`. */
function joining<Mutators extends [["temporal", unknown]]>(
  inner: StateCreator<PlannerState, [], Mutators>,
): StateCreator<PlannerState, [], Mutators> {
  return (set, get, api) => {
    const setJoined = (change: Partial<PlannerState> | ((state: PlannerState) => Partial<PlannerState>)) => {
      set((state) => withWhole(state, typeof change === "function" ? change(state) : change));
    };
    return inner(setJoined as typeof set, get, api);
  };
}

function openDocuments(state: PlannerState): Documents {
  if (state.documents === null) throw new RangeError("a job must be open to be changed; got none");
  return state.documents;
}

/** A store on `initial.documents`, or on nothing. */
export function createPlannerStore(initial: { readonly documents: Documents | null }): PlannerStore {
  /** The gesture of the latest undo step, as long as it goes on. */
  let gesture: string | null = null;

  const store = createStore<PlannerState>()(
    joining(
      temporal(
        (set, get) => ({
          documents: initial.documents,
          ...partsOf(initial.documents),
          saveState: "saved",
          canUndo: false,
          canRedo: false,

          edit(change, name) {
            const before = openDocuments(get());
            const after = change(before);
            if (after === before || sameValue(after, before)) return;
            if (!sameValue(ledgerPart(after), ledgerPart(before))) {
              throw new RangeError("an edit must leave sign-offs and records alone: use record");
            }
            const undoable = undoablePart(after);
            if (name !== undefined && name === gesture) continueStep(() => set({ undoable }));
            else {
              set({ undoable });
              gesture = name ?? null;
            }
          },

          endGesture() {
            gesture = null;
          },

          record(change) {
            const before = openDocuments(get());
            const after = change(before);
            if (after === before) return;
            const ledgers = ledgerPart(after);
            if (
              !onlyAdds(ledgerPart(before), ledgers) ||
              !sameValue(undoablePart(after), undoablePart(before))
            ) {
              throw new RangeError("a record must only be added, and change nothing else");
            }
            gesture = null;
            set({ ledgers });
          },

          undo() {
            gesture = null;
            history().undo();
          },

          redo() {
            history().redo();
          },

          load(documents) {
            gesture = null;
            history().pause();
            set({ documents, ...partsOf(documents) });
            history().resume();
            history().clear();
          },

          setSaveState(saveState) {
            set({ saveState });
          },
        }),
        {
          partialize: (state): Undone => ({ undoable: state.undoable }),
          equality: (past, current) => past.undoable === current.undoable,
          limit: UNDO_LIMIT,
        },
      ),
    ),
  );

  function history(): TemporalState<Undone> {
    return store.temporal.getState();
  }

  /** Changes the state within the latest step; a step that ends where it began is none. */
  function continueStep(change: () => void): void {
    history().pause();
    change();
    history().resume();
    const { pastStates } = history();
    if (sameValue(pastStates.at(-1)?.undoable, store.getState().undoable)) {
      store.temporal.setState({ pastStates: pastStates.slice(0, -1) });
      gesture = null;
    }
  }

  store.temporal.subscribe(({ pastStates, futureStates }) => {
    const canUndo = pastStates.length > 0;
    const canRedo = futureStates.length > 0;
    const state = store.getState();
    if (state.canUndo !== canUndo || state.canRedo !== canRedo) store.setState({ canUndo, canRedo });
  });
  return store;
}
