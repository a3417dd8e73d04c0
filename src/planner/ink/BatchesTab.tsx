/** Every batch: where it is printed, grams a print, how much to mix and what is left over. */
import { ActionButton } from "../controls/ActionButton.tsx";
import { BatchAmounts } from "./BatchAmounts.tsx";
import { BatchNotes } from "./BatchNotes.tsx";
import { BatchUses } from "./BatchUses.tsx";
import { RecipeWords } from "./RecipeWords.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly ink: InkRoomInUse;
  readonly onWeigh: (mixId: string) => void;
  readonly onPrintAll: () => void;
}

export function BatchesTab({ ink, onWeigh, onPrintAll }: Props) {
  const { batches } = ink.room;
  if (batches.length === 0) {
    return <p>Choose a mix for a garment in the matrix: its ink is counted here at once.</p>;
  }
  return (
    <div className="ink__batches">
      <div className="acts">
        <ActionButton onClick={onPrintAll}>Print all weigh sheets</ActionButton>
      </div>
      {batches.map((batch) => (
        <section className="ink__batch" key={batch.mixId} aria-labelledby={`batch-${batch.mixId}`}>
          <div className="ink__head">
            <div>
              <h3 id={`batch-${batch.mixId}`}>{batch.mixName}</h3>
              <RecipeWords recipe={batch.recipe} shelf={ink.shelf} />
            </div>
            <ActionButton
              aria-label={`Open the weigh sheet of ${batch.mixName}`}
              onClick={() => onWeigh(batch.mixId)}
            >
              Open the weigh sheet
            </ActionButton>
          </div>
          <BatchAmounts batch={batch} ink={ink} />
          <BatchUses batch={batch} units={ink.units} />
          <BatchNotes batch={batch} ink={ink} />
        </section>
      ))}
    </div>
  );
}
