/** One row of the grid. It is drawn anew only when something of its own changes. */
import { memo } from "react";
import { cellKey, type MatrixCell } from "../../engine/protocol.ts";
import { CellFace } from "./CellFace.tsx";
import type { MatrixCandidate, MatrixLine } from "./matrixInputs.ts";
import { RowHead } from "./RowHead.tsx";

interface Props {
  readonly row: MatrixLine;
  readonly rowIndex: number;
  readonly candidates: readonly MatrixCandidate[];
  readonly cells: ReadonlyMap<string, MatrixCell>;
  readonly cellWidthPx: number;
  /** The column that the keyboard reaches in this row; null where it reaches none. */
  readonly reachableId: string | null;
  readonly selectedId: string | null;
  readonly chosenId: string | null;
  readonly topPx: number | null;
  readonly onSelect: (lineId: string, candidateId: string) => void;
  readonly onChoose: (lineId: string, candidateId: string) => void;
}

function MatrixRowDrawn(props: Props) {
  const { row, rowIndex, candidates, cells, topPx } = props;
  return (
    // biome-ignore lint/a11y/useFocusableInteractive: in a grid the cells take the focus, not the rows
    // biome-ignore lint/a11y/useSemanticElements: rows out of sight are left out, which a table cannot say
    <div
      className="matrix__row"
      role="row"
      aria-rowindex={rowIndex + 2}
      style={topPx === null ? undefined : { position: "absolute", top: topPx }}
    >
      {/* biome-ignore lint/a11y/useFocusableInteractive: as above */}
      {/* biome-ignore lint/a11y/useSemanticElements: as above */}
      <div className="matrix__row-head" role="rowheader" aria-colindex={1}>
        <RowHead line={row.line} lot={row.lot} />
      </div>
      {candidates.map((column, index) => (
        <Cell
          key={column.candidate.id}
          row={row}
          column={column}
          columnIndex={index}
          cell={cells.get(cellKey(row.line.id, column.candidate.id)) ?? null}
          widthPx={props.cellWidthPx}
          isReachable={props.reachableId === column.candidate.id}
          isSelected={props.selectedId === column.candidate.id}
          isChosen={props.chosenId === column.candidate.id}
          onSelect={props.onSelect}
          onChoose={props.onChoose}
        />
      ))}
    </div>
  );
}

interface CellProps {
  readonly row: MatrixLine;
  readonly column: MatrixCandidate;
  readonly columnIndex: number;
  readonly cell: MatrixCell | null;
  readonly widthPx: number;
  readonly isReachable: boolean;
  readonly isSelected: boolean;
  readonly isChosen: boolean;
  readonly onSelect: (lineId: string, candidateId: string) => void;
  readonly onChoose: (lineId: string, candidateId: string) => void;
}

const Cell = memo(function Cell(props: CellProps) {
  const { row, column, isChosen, isSelected, onSelect, onChoose } = props;
  const lineId = row.line.id;
  const candidateId = column.candidate.id;
  const problems = row.problems.length > 0 ? row.problems : column.problems;
  return (
    // biome-ignore lint/a11y/useSemanticElements: as the row
    // biome-ignore lint/a11y/useKeyWithClickEvents: the grid listens to the keys of all its cells
    <div
      className="matrix__cell"
      role="gridcell"
      aria-colindex={props.columnIndex + 2}
      aria-selected={isChosen}
      tabIndex={props.isReachable ? 0 : -1}
      data-line={lineId}
      data-candidate={candidateId}
      data-looked-at={isSelected ? "" : undefined}
      onFocus={() => onSelect(lineId, candidateId)}
      onClick={() => onSelect(lineId, candidateId)}
      onDoubleClick={() => onChoose(lineId, candidateId)}
    >
      <CellFace cell={props.cell} problems={problems} widthPx={props.widthPx} isChosen={isChosen} />
      {isSelected && !isChosen && problems.length === 0 && (
        <button
          type="button"
          className="cell__choose"
          tabIndex={-1}
          onClick={(event) => {
            event.stopPropagation();
            onChoose(lineId, candidateId);
          }}
        >
          Choose
        </button>
      )}
    </div>
  );
});

/** Cells of other rows change the map, not this row: compare what this row would take from it. */
export const MatrixRow = memo(MatrixRowDrawn, (before, after) => {
  for (const key of Object.keys(after) as (keyof Props)[]) {
    if (key !== "cells" && before[key] !== after[key]) return false;
  }
  return after.candidates.every(({ candidate }) => {
    const key = cellKey(after.row.line.id, candidate.id);
    return before.cells.get(key) === after.cells.get(key);
  });
});
