/** The pots of a batch: each is started once, weighed line by line, and corrected where it has to be. */
import { useState } from "react";
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
  return (
    <ol className="ink__pots">
      {potNumbers(batch).map((potNumber) => {
        const recorded = recordedPot(batch, potNumber);
        const canStart = batch.sheet?.ok === true && potNumber <= (batch.pots?.potCount ?? 0);
        return (
          <li key={potNumber} className="ink__pot">
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
                onDone={() => setStarting(null)}
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
