/** Why the last save failed, for as long as it is so; the saved word alone would not say. */
import type { Problem } from "../job/problem.ts";

export interface SaveTrouble {
  read(): Problem | null;
  set(problem: Problem | null): void;
  subscribe(onChange: () => void): () => void;
}

export function createSaveTrouble(): SaveTrouble {
  let current: Problem | null = null;
  const listeners = new Set<() => void>();
  return {
    read: () => current,
    set(problem) {
      if (problem === current) return;
      current = problem;
      for (const listener of listeners) listener();
    },
    subscribe(onChange) {
      listeners.add(onChange);
      return () => listeners.delete(onChange);
    },
  };
}
