/** How much of a batch: what it is made up of, in which pots, and what will be left. */
import type { InkBatch } from "../../job/inkRoom/inkBatch.ts";
import { amountWords } from "../words/inkFigures.ts";
import type { InkRoomInUse } from "./useInkRoom.ts";

export function BatchAmounts({ batch, ink }: { readonly batch: InkBatch; readonly ink: InkRoomInUse }) {
  const { size, pots, batchGrams } = batch;
  const amount = (grams: number) => amountWords(grams, ink.units);
  const isWished = ink.wishes[batch.mixId]?.batchGrams !== undefined;
  const screens = batch.uses.length;
  return (
    <dl className="ink__amounts">
      <div className="ink__amount ink__amount--whole">
        <dt>{isWished ? "To mix, as wished" : "To mix"}</dt>
        <dd className="ink__number">{amount(batchGrams)}</dd>
      </div>
      <div className="ink__amount">
        <dt>for {Math.round(size.printCount).toLocaleString("en-GB")} prints, spoilage counted</dt>
        <dd>{amount(size.printGrams)}</dd>
      </div>
      <div className="ink__amount">
        <dt>stays on spatulas, blades and pots</dt>
        <dd>{amount(size.handlingGrams)}</dd>
      </div>
      <div className="ink__amount">
        <dt>
          keeps {screens} {screens === 1 ? "screen" : "screens"} wet
        </dt>
        <dd>{amount(size.screenGrams)}</dd>
      </div>
      {isWished && (
        <div className="ink__amount">
          <dt>the prints ask for</dt>
          <dd>{amount(size.batchGrams)}</dd>
        </div>
      )}
      <div className="ink__amount">
        <dt>left over, what clings to screens counted</dt>
        <dd>{amount(batchGrams - size.batchGrams + size.leftOverGrams)}</dd>
      </div>
      {pots !== null && (
        <div className="ink__amount">
          <dt>pots</dt>
          <dd>
            {pots.potCount} × {pots.sizeName}, {amount(pots.gramsPerPot)} each
          </dd>
        </div>
      )}
    </dl>
  );
}
