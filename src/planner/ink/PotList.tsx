/** The pots of a batch: each is started once, weighed line by line, and corrected where it has to be. */
import { useEffect, useRef, useState } from "react";
import type { InkBatch, RecordedPot } from "../../job/inkRoom/inkBatch.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { PotCard } from "./PotCard.tsx";
import { StartPot } from "./StartPot.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
}

/** The pot of a number that was recorded last; its record stays when another is started in its place. */
export function recordedPot({ recorded }: InkBatch, potNumber: number): RecordedPot | null {
  return recorded.findLast(({ pot }) => pot.potNumber === potNumber) ?? null;
}

/** One to the number of pots, and those on record beyond it. */
export function potNumbers({ pots, recorded }: InkBatch): number[] {
  const most = Math.max(pots?.potCount ?? 0, ...recorded.map(({ pot }) => pot.potNumber));
  return Array.from({ length: most }, (_, index) => index + 1);
}

export function PotList({ batch, ink }: Props) {
  const [starting, setStarting] = useState<number | null>(null);
  const list = useRef<HTMLOListElement>(null);
  const focusNext = useRef<number | null>(null);
  // After a pot is started the keyboard goes on at its first line, after it is not at its button.
  useEffect(() => {
    if (focusNext.current === null || starting !== null) return;
    const pot = list.current?.querySelector(`[data-pot="${focusNext.current}"]`);
    focusNext.current = null;
    const first = pot?.querySelector<HTMLElement>(".sheet__pour input") ?? pot?.querySelector("button");
    first?.focus();
  });
  return (
    <ol className="ink__pots" ref={list}>
      {potNumbers(batch).map((potNumber) => {
        const recorded = recordedPot(batch, potNumber);
        const canStart = batch.sheet?.ok === true && potNumber <= (batch.pots?.potCount ?? 0);
        return (
          <li key={potNumber} className="ink__pot" data-pot={potNumber}>
            <div className="ink__head">
              <h3>Pot {potNumber}</h3>
              {canStart && starting !== potNumber && (
                <ActionButton
                  weight={recorded === null ? "strong" : "plain"}
                  aria-label={recorded === null ? `Start pot ${potNumber}` : `Start pot ${potNumber} anew`}
                  onClick={() => setStarting(potNumber)}
                >
                  {recorded === null ? "Start this pot" : "Start it anew"}
                </ActionButton>
              )}
            </div>
            {starting === potNumber && (
              <StartPot
                batch={batch}
                ink={ink}
                potNumber={potNumber}
                supersedesId={recorded?.pot.id ?? null}
                onDone={() => {
                  focusNext.current = potNumber;
                  setStarting(null);
                }}
              />
            )}
            {recorded !== null && starting !== potNumber && (
              <PotCard key={recorded.pot.id} recorded={recorded} batch={batch} ink={ink} />
            )}
          </li>
        );
      })}
    </ol>
  );
}
