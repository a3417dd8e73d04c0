/** The garment lines as a table: one stop for the Tab key, the arrow keys from row to row, Enter opens one. */
import { type KeyboardEvent, useRef } from "react";
import type { Documents } from "../../job/documents.ts";
import type { GarmentLot } from "../../job/garmentLotDocument.ts";
import type { Line } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { unsavedParts, useDrafts } from "./drafts.tsx";
import { GarmentRow } from "./GarmentRow.tsx";

interface Props {
  readonly documents: Documents;
  readonly openLineId: string | null;
  readonly isNewOpen: boolean;
  readonly onOpen: (lineId: string) => void;
  readonly onOpenNew: () => void;
}

/** The row's button that the arrow, Home or End key leads to. */
function rowAfter(key: string, index: number, count: number): number | null {
  if (key === "ArrowDown") return Math.min(index + 1, count - 1);
  if (key === "ArrowUp") return Math.max(index - 1, 0);
  if (key === "Home") return 0;
  if (key === "End") return count - 1;
  return null;
}

export function GarmentTable({ documents, openLineId, isNewOpen, onOpen, onOpenNew }: Props) {
  const body = useRef<HTMLTableSectionElement>(null);
  const drafts = useDrafts();
  const { newGarment } = drafts;
  const lots = new Map(documents.library.garmentLots.map((lot) => [lot.id, lot]));
  const rows: { line: Line; lot: GarmentLot | null }[] = documents.job.lines.map((line) => ({
    line,
    lot: lots.get(line.garmentLotId) ?? null,
  }));
  const reachable = rows.some(({ line }) => line.id === openLineId) ? openLineId : rows[0]?.line.id;

  function onKeyDown(event: KeyboardEvent): void {
    const buttons = [...(body.current?.querySelectorAll<HTMLButtonElement>("[data-row-button]") ?? [])];
    const index = buttons.indexOf(event.target as HTMLButtonElement);
    if (index < 0) return;
    const next = rowAfter(event.key, index, buttons.length);
    if (next === null) return;
    event.preventDefault();
    buttons[next]?.focus();
  }

  return (
    <table className="garments__table">
      <caption className="unseen">Garment lines of this job</caption>
      <thead>
        <tr>
          <th scope="col">Garment</th>
          <th scope="col">Fibre</th>
          <th scope="col">Lot</th>
          <th scope="col">Bare L*, a*, b*</th>
          <th scope="col" className="garments__count">
            Pieces
          </th>
          <th scope="col">Supplied by</th>
        </tr>
      </thead>
      <tbody ref={body} onKeyDown={onKeyDown}>
        {rows.map(({ line, lot }) => (
          <GarmentRow
            key={line.id}
            viewing={documents.job.viewing}
            line={line}
            lot={lot}
            approved={lots.get(line.substitutedForLotId ?? "") ?? null}
            unsaved={unsavedParts(drafts, line.garmentLotId).join(", ")}
            isOpen={line.id === openLineId}
            isReachable={line.id === reachable}
            onOpen={onOpen}
          />
        ))}
        {newGarment !== null && (
          <tr data-open={isNewOpen ? "" : undefined}>
            <th scope="row" colSpan={6}>
              <ActionButton weight="plain" data-row-button="" aria-expanded={isNewOpen} onClick={onOpenNew}>
                {newGarment.lot.style === "" ? "New garment" : newGarment.lot.style}
              </ActionButton>{" "}
              <strong>not saved yet</strong>
            </th>
          </tr>
        )}
      </tbody>
    </table>
  );
}
