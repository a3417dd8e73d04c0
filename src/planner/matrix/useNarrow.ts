/** What the width of the window, and the printer, ask of the matrix. */
import { useEffect, useState, useSyncExternalStore } from "react";
import { flushSync } from "react-dom";

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

/** True from the moment the browser prepares a print: what is printed has to be there before it looks. */
export function usePrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    const begin = () => flushSync(() => setPrinting(true));
    const end = () => setPrinting(false);
    window.addEventListener("beforeprint", begin);
    window.addEventListener("afterprint", end);
    return () => {
      window.removeEventListener("beforeprint", begin);
      window.removeEventListener("afterprint", end);
    };
  }, []);
  return isPrinting;
}
