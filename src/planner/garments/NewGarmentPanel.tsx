/** The panel for a garment that is not in the job yet: nothing is stored until it is whole and saved. */
import { useEffect, useRef, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { addLine, BARE_LINE, changeLine } from "../../job/edits/lines.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { NotSavedYet } from "../controls/NotSavedYet.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { NEW_LOT, type NewGarment, useDrafts } from "./drafts.tsx";
import { GarmentFields } from "./GarmentFields.tsx";

interface Props {
  readonly documents: Documents;
  readonly garment: NewGarment;
  readonly onClose: () => void;
  readonly onSaved: (lineId: string) => void;
}

export const EMPTY_GARMENT: NewGarment = {
  lot: {
    style: "",
    colourway: "",
    mill: "",
    country: "",
    lot: "",
    blend: null,
    yarn: "spun",
    finish: "none",
    heather: false,
    bleeds: false,
    bare: null,
    note: "",
  },
  line: BARE_LINE,
};

export function NewGarmentPanel({ documents, garment, onClose, onSaved }: Props) {
  const { blends, bares, setNewGarment } = useDrafts();
  const edit = usePlanner((state) => state.edit);
  const [asked, setAsked] = useState(false);
  const panel = useRef<HTMLElement>(null);
  const { lot, line } = garment;
  useEffect(() => panel.current?.querySelector("input")?.focus(), []);

  const blend = blends[NEW_LOT];
  const missing = [
    lot.style === "" ? "the style" : null,
    lot.bare === null || bares[NEW_LOT] !== undefined ? "the bare colour" : null,
    lot.blend === null || blend !== undefined ? "the fibre blend" : null,
  ].filter((part) => part !== null);

  function save(): void {
    const { blend: wholeBlend, bare, ...rest } = lot;
    if (missing.length > 0 || wholeBlend === null || bare === null) {
      setAsked(true);
      return;
    }
    const lineId = newId();
    const ids = { lineId, lotId: newId(), lot: { ...rest, blend: wholeBlend, bare } };
    edit((now) => changeLine(addLine(now, ids), lineId, line));
    setNewGarment(null);
    onSaved(lineId);
  }

  return (
    <section className="pane panel" aria-label="New garment" ref={panel}>
      <div className="pane__head">
        <h2>New garment</h2>
        <div className="pane__actions">
          <ActionButton onClick={onClose}>Close</ActionButton>
        </div>
      </div>
      <GarmentFields
        documents={documents}
        lotId={NEW_LOT}
        lot={lot}
        line={line}
        onLot={(change) => setNewGarment({ lot: { ...lot, ...change }, line })}
        onLine={(change) => setNewGarment({ lot, line: { ...line, ...change } })}
      />
      <div className="pane__foot">
        {missing.length > 0 && (
          <NotSavedYet sentence={`${asked ? "still missing" : "missing"}: ${missing.join(", ")}.`} />
        )}
        <div className="pane__actions">
          <ActionButton weight="strong" onClick={save}>
            Save garment
          </ActionButton>
          <ActionButton
            weight="plain"
            onClick={() => {
              setNewGarment(null);
              onClose();
            }}
          >
            Discard it
          </ActionButton>
        </div>
      </div>
    </section>
  );
}
