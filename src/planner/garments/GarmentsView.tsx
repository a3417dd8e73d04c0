/** The job's garments: add, edit, duplicate and remove lines, all of it by keyboard if wished. */
import { useCallback, useEffect, useRef, useState } from "react";
import { duplicateLine, removeLine } from "../../job/edits/lines.ts";
import { lineName } from "../../job/lineName.ts";
import { lotOfLine, pieceCount } from "../../job/lookup.ts";
import { useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { usePrinting } from "../look/usePrinting.ts";
import { newId } from "../state/identity.ts";
import { useDocuments, usePlanner } from "../state/usePlanner.ts";
import { pieces } from "../words/pieceWords.ts";
import { useDrafts } from "./drafts.tsx";
import { GarmentPanel } from "./GarmentPanel.tsx";
import { GarmentPaper } from "./GarmentPaper.tsx";
import { GarmentTable } from "./GarmentTable.tsx";
import { EMPTY_GARMENT, NewGarmentPanel } from "./NewGarmentPanel.tsx";
import "./garments.css";

/** In the address, where others have a line's id. */
const NEW_LINE = "new";

/** From this width the panel stands beside the table, as in shell.css. */
const PANE_BESIDE_PX = 1200;

export default function GarmentsView() {
  const documents = useDocuments();
  const edit = usePlanner((state) => state.edit);
  const { address, change } = useJobAddress();
  const { newGarment, setNewGarment, setBlend, setBare } = useDrafts();
  const [said, setSaid] = useState("");
  const isPrinting = usePrinting();
  const view = useRef<HTMLDivElement>(null);
  const focusNext = useRef<string | null>(null);

  const { lines } = documents.job;
  const line = lines.find(({ id }) => id === address.line) ?? null;
  const lot = line === null ? null : lotOfLine(documents, line);
  const isNewOpen = address.line === NEW_LINE && newGarment !== null;
  const open = useCallback((lineId: string | null) => change({ line: lineId }), [change]);

  // After closing or removing, the keyboard goes on from the table, not from the top of the page.
  useEffect(() => {
    if (focusNext.current === null) return;
    const wanted = focusNext.current;
    focusNext.current = null;
    const target =
      view.current?.querySelector<HTMLElement>(`[data-line="${wanted}"]`) ??
      view.current?.querySelector<HTMLElement>("[data-row-button][tabindex='0'], [data-add]");
    target?.focus();
  });

  // Where the panel is a sheet from below, it must not cover the row it edits.
  useEffect(() => {
    if (address.line === null || window.innerWidth >= PANE_BESIDE_PX) return;
    const row = view.current?.querySelector("tr[data-open]");
    row?.scrollIntoView?.({ block: "start" });
  }, [address.line]);

  function close(): void {
    focusNext.current = address.line ?? "";
    open(null);
  }

  function addGarment(): void {
    if (newGarment === null) setNewGarment(EMPTY_GARMENT);
    open(NEW_LINE);
  }

  function duplicate(): void {
    if (line === null || lot === null) return;
    const ids = { lineId: newId(), lotId: newId() };
    edit((now) => duplicateLine(now, line.id, ids));
    setSaid(`${lineName(lot)} was duplicated. This is the copy.`);
    open(ids.lineId);
  }

  function remove(): void {
    if (line === null || lot === null) return;
    const index = lines.indexOf(line);
    focusNext.current = (lines[index + 1] ?? lines[index - 1])?.id ?? "";
    setBlend(lot.id, null);
    setBare(lot.id, null);
    edit((now) => removeLine(now, line.id));
    setSaid(`${lineName(lot)} was removed. Undo brings it back.`);
    open(null);
  }

  if (isPrinting) return <GarmentPaper documents={documents} />;
  const total = lines.reduce((sum, one) => sum + pieceCount(one), 0);
  const paneOpen = isNewOpen || lot !== null;
  return (
    <div className="view-with-pane" data-pane={paneOpen ? "open" : "closed"} ref={view}>
      <div className="view garments">
        <div className="view__head">
          <h2>Garments</h2>
          <p>
            {lines.length} {lines.length === 1 ? "line" : "lines"}, {pieces(total)}
          </p>
          <div className="view__actions">
            <ActionButton onClick={addGarment} data-add="">
              Add a garment
            </ActionButton>
          </div>
        </div>
        <p className="garments__said" role="status">
          {said}
        </p>
        {lines.length === 0 && newGarment === null ? (
          <p>
            No garment is in this job yet. Add the first one: style, fibre blend and bare colour are enough to
            begin.
          </p>
        ) : (
          <GarmentTable
            documents={documents}
            openLineId={line?.id ?? null}
            isNewOpen={isNewOpen}
            onOpen={open}
            onOpenNew={() => open(NEW_LINE)}
          />
        )}
      </div>
      {isNewOpen && newGarment !== null && (
        <NewGarmentPanel
          documents={documents}
          garment={newGarment}
          onClose={close}
          onSaved={(lineId) => {
            setSaid("The garment was added.");
            open(lineId);
          }}
        />
      )}
      {line !== null && lot !== null && (
        <GarmentPanel
          documents={documents}
          line={line}
          lot={lot}
          onClose={close}
          onDuplicate={duplicate}
          onRemove={remove}
        />
      )}
    </div>
  );
}
