/** The panel that edits a stored garment line; every valid entry is in the job at once. */
import { useEffect, useRef } from "react";
import type { Documents } from "../../job/documents.ts";
import { changeGarmentLot, changeLine } from "../../job/edits/lines.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import type { NewGarment } from "./drafts.tsx";
import { GarmentFields } from "./GarmentFields.tsx";

interface Props {
  readonly documents: Documents;
  readonly line: Line;
  readonly lot: GarmentLot;
  readonly onClose: () => void;
  readonly onDuplicate: () => void;
  readonly onRemove: () => void;
}

/** A lot's change without the nulls that only a new garment has. */
function storable({ blend, bare, ...rest }: Partial<NewGarment["lot"]>): Partial<Omit<GarmentLot, "id">> {
  return { ...rest, ...(blend ? { blend } : {}), ...(bare ? { bare } : {}) };
}

export function GarmentPanel({ documents, line, lot, onClose, onDuplicate, onRemove }: Props) {
  const edit = usePlanner((state) => state.edit);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (line.id !== "") heading.current?.focus({ preventScroll: false });
  }, [line.id]);
  return (
    <section className="pane panel" aria-label="Garment being edited">
      <div className="pane__head">
        <h2 ref={heading} tabIndex={-1}>
          {lineName(lot)}
        </h2>
        <div className="pane__actions">
          <ActionButton onClick={onDuplicate}>Duplicate</ActionButton>
          <ActionButton onClick={onRemove}>Remove</ActionButton>
          <ActionButton onClick={onClose}>Close</ActionButton>
        </div>
      </div>
      <GarmentFields
        key={line.id}
        documents={documents}
        lotId={lot.id}
        lot={lot}
        line={line}
        onLot={(change, gesture) => edit((now) => changeGarmentLot(now, lot.id, storable(change)), gesture)}
        onLine={(change) => edit((now) => changeLine(now, line.id, change))}
      />
    </section>
  );
}
