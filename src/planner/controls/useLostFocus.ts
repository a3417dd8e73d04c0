/** Gives the focus a place where the control that was pressed is gone; who came by a link or a tab keeps it there. */
import { useEffect, useRef } from "react";

/** @param selector what in the part takes it; give another `moment` to look again. */
export function useLostFocus<Element extends HTMLElement>(selector: string, moment = "") {
  const part = useRef<Element>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the moment says when to look
  useEffect(() => {
    if (document.activeElement !== document.body) return;
    part.current?.querySelector<HTMLElement>(selector)?.focus();
  }, [selector, moment]);
  return part;
}
