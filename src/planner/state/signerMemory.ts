/** Who signed last in this session: kept with the open planner, never stored, so that the next day asks anew. */
import { useState } from "react";
import type { PlannerStore } from "./plannerStore.ts";
import { usePlannerStore } from "./usePlanner.ts";

const lastSigners = new WeakMap<PlannerStore, string>();

export function useSigner(): readonly [string, (signer: string) => void] {
  const store = usePlannerStore();
  const [signer, setSigner] = useState(lastSigners.get(store) ?? "");
  const remember = (name: string) => {
    lastSigners.set(store, name);
    setSigner(name);
  };
  return [signer, remember];
}
