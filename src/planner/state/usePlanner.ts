/** How views reach the planner's state. */
import { createContext, createElement, type ReactNode, useContext } from "react";
import { useStore } from "zustand";
import type { Documents } from "../../job/documents.ts";
import type { PlannerState, PlannerStore } from "./plannerStore.ts";

const PlannerContext = createContext<PlannerStore | null>(null);

export function PlannerProvider({ store, children }: { store: PlannerStore; children: ReactNode }) {
  return createElement(PlannerContext.Provider, { value: store }, children);
}

/** The store itself, for what happens outside a render. */
export function usePlannerStore(): PlannerStore {
  const store = useContext(PlannerContext);
  if (store === null) throw new RangeError("a view must stand inside a PlannerProvider; got none");
  return store;
}

/** What `selector` picks; the view renders anew when that changes. */
export function usePlanner<Picked>(selector: (state: PlannerState) => Picked): Picked {
  return useStore(usePlannerStore(), selector);
}

/** The open documents, or null. */
export function useMaybeDocuments(): Documents | null {
  return usePlanner((state) => state.documents);
}

/** The open documents. @throws RangeError while none are open: for views that are shown only with a job. */
export function useDocuments(): Documents {
  const documents = useMaybeDocuments();
  if (documents === null) throw new RangeError("a job must be open here; got none");
  return documents;
}
