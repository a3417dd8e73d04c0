/** What the width of the window asks of the matrix. */
import { useSyncExternalStore } from "react";

const NARROW = "(max-width: 699.98px)";
const BESIDE = "(min-width: 1200px)";

function matches(query: string): boolean {
  return typeof window.matchMedia === "function" && window.matchMedia(query).matches;
}

function useMedia(query: string): boolean {
  return useSyncExternalStore(
    (onChange) => {
      if (typeof window.matchMedia !== "function") return () => undefined;
      const list = window.matchMedia(query);
      list.addEventListener("change", onChange);
      return () => list.removeEventListener("change", onChange);
    },
    () => matches(query),
  );
}

/** One garment at a time. */
export const useNarrow = (): boolean => useMedia(NARROW);

/** The details stand beside the grid and need not be asked for. */
export const hasRoomBeside = (): boolean => matches(BESIDE);
