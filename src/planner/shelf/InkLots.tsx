/** Deliveries of an ink: which lot a pot is mixed from is told by the code on its lid. */
import { useState } from "react";
import { addInkLot, changeInkLot, removeInkLot } from "../../job/edits/inkLots.ts";
import type { InkLot } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { DayEntry } from "../controls/DayEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";

interface Props {
  readonly list: "bases" | "colourants";
  readonly itemId: string;
  readonly lots: readonly InkLot[];
}

export function InkLots({ list, itemId, lots }: Props) {
  const edit = usePlanner((state) => state.edit);
  const [isAdding, setAdding] = useState(false);
  const change = (lotId: string, part: Partial<Omit<InkLot, "id">>) =>
    edit((now) => changeInkLot(now, list, itemId, lotId, part));
  const add = (code: string) => {
    if (code === "") return;
    const lot = { id: newId(), code, receivedOn: null, expiresOn: null, note: "" };
    edit((now) => addInkLot(now, list, itemId, lot));
    setAdding(false);
  };
  return (
    <fieldset className="fields-block">
      <legend>Lots in stock</legend>
      {lots.length === 0 && (
        <p className="entry__hint">No lot is entered. Pots can be weighed without one.</p>
      )}
      {lots.map((lot, index) => (
        <fieldset className="fields" key={lot.id} aria-label={`Lot ${lot.code}`}>
          <TextEntry
            label={`Code of lot ${index + 1}`}
            value={lot.code}
            maxLength={120}
            required="A lot needs its code."
            onCommit={(code) => change(lot.id, { code })}
          />
          <DayEntry
            label="Received on"
            day={lot.receivedOn}
            onCommit={(receivedOn) => change(lot.id, { receivedOn })}
          />
          <DayEntry
            label="Use by"
            day={lot.expiresOn}
            onCommit={(expiresOn) => change(lot.id, { expiresOn })}
          />
          <div className="fields__act">
            <ActionButton
              weight="plain"
              aria-label={`Remove lot ${lot.code}`}
              onClick={() => edit((now) => removeInkLot(now, list, itemId, lot.id))}
            >
              Remove
            </ActionButton>
          </div>
        </fieldset>
      ))}
      {isAdding ? (
        <div className="fields">
          <TextEntry
            label="Code of the new lot"
            value=""
            maxLength={120}
            hint="As on the lid; Enter adds it."
            onCommit={add}
          />
          <div className="fields__act">
            <ActionButton weight="plain" onClick={() => setAdding(false)}>
              Do not add it
            </ActionButton>
          </div>
        </div>
      ) : (
        <div className="acts">
          <ActionButton onClick={() => setAdding(true)}>Add a lot</ActionButton>
        </div>
      )}
    </fieldset>
  );
}
