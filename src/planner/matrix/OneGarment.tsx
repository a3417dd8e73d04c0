/** The matrix on a narrow screen: one garment at a time, its mixes as a row to swipe. */
import { useEffect, useRef } from "react";
import { cellKey, type MatrixCell } from "../../engine/protocol.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { CellFace } from "./CellFace.tsx";
import { ColumnHead } from "./ColumnHead.tsx";
import type { MatrixCandidate, MatrixLine } from "./matrixInputs.ts";
import { RowHead } from "./RowHead.tsx";
import type { SelectedCell } from "./useSelectedCell.ts";

const CARD_WIDTH_PX = 268;

interface Props {
  readonly lines: readonly MatrixLine[];
  readonly candidates: readonly MatrixCandidate[];
  readonly cells: ReadonlyMap<string, MatrixCell>;
  readonly shelf: Shelf;
  readonly selected: SelectedCell;
  readonly chosen: ReadonlyMap<string, string>;
  readonly onSelect: (lineId: string, candidateId: string) => void;
  readonly onChoose: (lineId: string, candidateId: string) => void;
  readonly onUnchoose: (lineId: string) => void;
  readonly onChangeMix: (candidateId: string) => void;
  readonly onDetails: (lineId: string, candidateId: string) => void;
}

export function OneGarment(props: Props) {
  const { lines, candidates, cells, shelf, selected, chosen } = props;
  const strip = useRef<HTMLUListElement>(null);
  const index = Math.max(
    0,
    lines.findIndex(({ line }) => line.id === selected.lineId),
  );
  const row = lines[index];
  const shownId = useRef(selected.candidateId);
  useEffect(() => {
    // Coming here by an address or from the details, the mix looked at is in sight.
    const card = strip.current?.querySelector<HTMLElement>(`[data-candidate="${shownId.current}"]`);
    if (card && strip.current) strip.current.scrollLeft = card.offsetLeft - strip.current.offsetLeft;
  }, []);
  if (row === undefined) return null;
  const lineId = row.line.id;
  const step = (by: number) => {
    const next = lines[index + by];
    if (next !== undefined) props.onSelect(next.line.id, selected.candidateId ?? "");
  };
  return (
    <div className="one-garment">
      <div className="one-garment__steps">
        <ActionButton disabled={index === 0} onClick={() => step(-1)}>
          Previous garment
        </ActionButton>
        <span role="status">
          {index + 1} of {lines.length}
        </span>
        <ActionButton disabled={index === lines.length - 1} onClick={() => step(1)}>
          Next garment
        </ActionButton>
      </div>
      <RowHead line={row.line} lot={row.lot} />
      <ul className="one-garment__mixes" ref={strip} aria-label="Mixes">
        {candidates.map((column) => {
          const { id } = column.candidate;
          const isChosen = chosen.get(lineId) === id;
          const problems = row.problems.length > 0 ? row.problems : column.problems;
          return (
            <li key={id} data-candidate={id} className="one-garment__mix" style={{ width: CARD_WIDTH_PX }}>
              <ColumnHead column={column} shelf={shelf} onChange={props.onChangeMix} />
              <CellFace
                cell={cells.get(cellKey(lineId, id)) ?? null}
                problems={problems}
                widthPx={CARD_WIDTH_PX}
                isChosen={isChosen}
              />
              <div className="one-garment__actions">
                {isChosen ? (
                  <ActionButton onClick={() => props.onUnchoose(lineId)}>Take back</ActionButton>
                ) : (
                  <ActionButton
                    weight="strong"
                    disabled={problems.length > 0}
                    onClick={() => props.onChoose(lineId, id)}
                  >
                    Choose
                  </ActionButton>
                )}
                <ActionButton
                  data-details={selected.candidateId === id ? "" : undefined}
                  onClick={() => props.onDetails(lineId, id)}
                >
                  Show details
                </ActionButton>
              </div>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
