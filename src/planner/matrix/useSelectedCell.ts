/** Which cell is looked at. It is kept in the address, written when the hand rests: a held arrow key is no history. */
import { useCallback, useEffect, useRef, useState } from "react";
import { useJobAddress } from "../address.ts";

/** Browsers refuse more than some hundred address changes in half a minute; a reload may miss this much. */
const REST_MS = 250;

export interface SelectedCell {
  readonly lineId: string | null;
  readonly candidateId: string | null;
}

export function useSelectedCell(): readonly [SelectedCell, (cell: SelectedCell) => void] {
  const { address, change } = useJobAddress();
  const [cell, setCell] = useState<SelectedCell>({ lineId: address.line, candidateId: address.mix });
  const [seen, setSeen] = useState({ line: address.line, mix: address.mix });
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  if (seen.line !== address.line || seen.mix !== address.mix) {
    setSeen({ line: address.line, mix: address.mix });
    setCell({ lineId: address.line, candidateId: address.mix });
  }
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
    },
    [],
  );
  const select = useCallback(
    (next: SelectedCell) => {
      setCell(next);
      if (timer.current !== null) clearTimeout(timer.current);
      timer.current = setTimeout(() => change({ line: next.lineId, mix: next.candidateId }), REST_MS);
    },
    [change],
  );
  return [cell, select];
}
