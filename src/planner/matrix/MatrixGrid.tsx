/** The grid of garments and mixes: keys of the WAI-ARIA grid pattern, one reachable cell, rows out of sight left out. */
import { defaultRangeExtractor, useVirtualizer } from "@tanstack/react-virtual";
import { type KeyboardEvent, useEffect, useLayoutEffect, useRef, useState } from "react";
import type { MatrixCell } from "../../engine/protocol.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { ColumnHead } from "./ColumnHead.tsx";
import { positionAfterKey } from "./gridKeys.ts";
import { MatrixRow } from "./MatrixRow.tsx";
import type { MatrixCandidate, MatrixLine } from "./matrixInputs.ts";
import type { SelectedCell } from "./useSelectedCell.ts";

/** As in matrix.css. */
export const ROW_HEIGHT_PX = 176;
const ROW_HEAD_PX = 192;
/** About the height of the column heads. */
const HEAD_PX = 124;
const GAP_PX = 16;
const LEAST_CELL_PX = 208;
const MOST_CELL_PX = 256;
/** Up to this many rows are simply all drawn. */
const DRAWN_AT_ONCE = 16;
const OVERSCAN_COUNT = 3;

interface Props {
  readonly lines: readonly MatrixLine[];
  readonly candidates: readonly MatrixCandidate[];
  readonly cells: ReadonlyMap<string, MatrixCell>;
  readonly shelf: Shelf;
  readonly selected: SelectedCell;
  readonly chosen: ReadonlyMap<string, string>;
  readonly label: string;
  /** The details take room from the grid: the cell they are about stays in sight. */
  readonly isPaneShown: boolean;
  readonly onSelect: (lineId: string, candidateId: string) => void;
  readonly onChoose: (lineId: string, candidateId: string) => void;
  readonly onUnchoose: (lineId: string) => void;
  readonly onChangeMix: (candidateId: string) => void;
  readonly onInSight: (first: number, last: number) => void;
}

export function MatrixGrid(props: Props) {
  const { lines, candidates, cells, selected, chosen, isPaneShown, onSelect, onChoose, onInSight } = props;
  const scroller = useRef<HTMLDivElement>(null);
  const focusNext = useRef(false);
  /** Coming here by an address, the cell it names is brought into sight. */
  const bringNext = useRef(true);
  const wasPaneShown = useRef(isPaneShown);
  const cellWidthPx = useCellWidth(scroller, candidates.length);
  const row = Math.max(
    0,
    lines.findIndex(({ line }) => line.id === selected.lineId),
  );
  const column = Math.max(
    0,
    candidates.findIndex(({ candidate }) => candidate.id === selected.candidateId),
  );
  const isVirtual = lines.length > DRAWN_AT_ONCE;
  const virtualizer = useVirtualizer({
    count: lines.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => ROW_HEIGHT_PX,
    overscan: OVERSCAN_COUNT,
    enabled: isVirtual,
    // The row that the keyboard stands in is always there to take the focus.
    rangeExtractor: (range) => [...new Set([row, ...defaultRangeExtractor(range)])].sort((a, b) => a - b),
  });
  const drawn = isVirtual ? virtualizer.getVirtualItems().map(({ index }) => index) : lines.map((_, i) => i);
  const range = isVirtual ? virtualizer.range : null;
  const first = range?.startIndex ?? 0;
  const last = range?.endIndex ?? (isVirtual ? 0 : lines.length - 1);
  useEffect(() => onInSight(first, last), [onInSight, first, last]);

  useLayoutEffect(() => {
    if (wasPaneShown.current !== isPaneShown) bringNext.current = true;
    wasPaneShown.current = isPaneShown;
    if (!focusNext.current && !bringNext.current) return;
    const target = scroller.current?.querySelector<HTMLElement>(
      `[role="gridcell"][data-line="${lines[row]?.line.id}"][data-candidate="${candidates[column]?.candidate.id}"]`,
    );
    if (!target) return;
    if (focusNext.current) target.focus({ preventScroll: true });
    focusNext.current = false;
    bringNext.current = false;
    // Where there is room for one row only, that row begins under the heads.
    const isTight = (scroller.current?.clientHeight ?? 0) < 2 * ROW_HEIGHT_PX + HEAD_PX;
    target.scrollIntoView?.({ block: isTight ? "start" : "nearest", inline: "nearest" });
  });

  function onKeyDown(event: KeyboardEvent<HTMLDivElement>): void {
    const at = event.target as HTMLElement;
    const { line: lineId, candidate: candidateId } = at.dataset;
    if (at.getAttribute("role") !== "gridcell" || lineId === undefined || candidateId === undefined) return;
    if (event.altKey || event.shiftKey) return;
    if (event.key === "Enter" || event.key === " ") {
      event.preventDefault();
      onChoose(lineId, candidateId);
      return;
    }
    if (event.key === "Delete" || event.key === "Backspace") {
      event.preventDefault();
      props.onUnchoose(lineId);
      return;
    }
    const pageRowCount = Math.floor((scroller.current?.clientHeight ?? 0) / ROW_HEIGHT_PX) - 1;
    const size = { rowCount: lines.length, columnCount: candidates.length, pageRowCount };
    const next = positionAfterKey(event.key, event.ctrlKey || event.metaKey, { row, column }, size);
    const line = next && lines[next.row];
    const candidate = next && candidates[next.column];
    if (!line || !candidate) return;
    event.preventDefault();
    focusNext.current = true;
    onSelect(line.line.id, candidate.candidate.id);
  }

  const columnsStyle = { "--cell-width": `${cellWidthPx}px`, "--column-count": candidates.length };
  return (
    <div className="matrix__scroll" ref={scroller} style={columnsStyle as React.CSSProperties}>
      {/* biome-ignore lint/a11y/useSemanticElements: rows out of sight are left out, which a table cannot say */}
      <div
        className="matrix__grid"
        role="grid"
        aria-label={props.label}
        aria-rowcount={lines.length + 1}
        aria-colcount={candidates.length + 1}
        onKeyDown={onKeyDown}
        tabIndex={-1}
      >
        {/* biome-ignore lint/a11y/useFocusableInteractive: in a grid the cells take the focus, not the rows */}
        {/* biome-ignore lint/a11y/useSemanticElements: as above */}
        <div className="matrix__head surround" role="row" aria-rowindex={1}>
          {/* biome-ignore lint/a11y/useFocusableInteractive: as above */}
          {/* biome-ignore lint/a11y/useSemanticElements: as above */}
          <div className="matrix__corner" role="columnheader" aria-colindex={1}>
            <p className="matrix__keys quiet">Arrow keys move, Enter chooses, Delete takes a choice back.</p>
            <p className="quiet">Garment</p>
          </div>
          {candidates.map((one, index) => (
            // biome-ignore lint/a11y/useFocusableInteractive: as above
            // biome-ignore lint/a11y/useSemanticElements: as above
            <div
              key={one.candidate.id}
              className="matrix__column-head"
              role="columnheader"
              aria-colindex={index + 2}
            >
              <ColumnHead column={one} shelf={props.shelf} onChange={props.onChangeMix} />
            </div>
          ))}
        </div>
        {/* biome-ignore lint/a11y/useSemanticElements: as above */}
        <div
          role="rowgroup"
          className="matrix__rows"
          style={isVirtual ? { height: virtualizer.getTotalSize() } : undefined}
        >
          {drawn.map((index) => {
            const line = lines[index];
            if (line === undefined) return null;
            return (
              <MatrixRow
                key={line.line.id}
                row={line}
                rowIndex={index}
                candidates={candidates}
                cells={cells}
                cellWidthPx={cellWidthPx}
                reachableId={index === row ? (candidates[column]?.candidate.id ?? null) : null}
                selectedId={
                  selected.lineId === line.line.id ? (candidates[column]?.candidate.id ?? null) : null
                }
                chosenId={chosen.get(line.line.id) ?? null}
                topPx={isVirtual ? index * ROW_HEIGHT_PX : null}
                onSelect={onSelect}
                onChoose={onChoose}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

/** The width of a cell: the grid filled as far as cells may be wide, then it scrolls sideways. */
function useCellWidth(scroller: React.RefObject<HTMLDivElement | null>, columnCount: number): number {
  const [roomPx, setRoomPx] = useState(0);
  useLayoutEffect(() => {
    const element = scroller.current;
    if (element === null) return;
    const measure = () => setRoomPx(element.clientWidth);
    measure();
    if (typeof ResizeObserver === "undefined") return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [scroller]);
  const fitting = Math.floor((roomPx - ROW_HEAD_PX - GAP_PX) / Math.max(1, columnCount)) - GAP_PX;
  return Math.max(LEAST_CELL_PX, Math.min(MOST_CELL_PX, fitting));
}
