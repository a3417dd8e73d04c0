/** The matrix on paper: a plain table, black on white, whose figures and evidence need no colour. */
import { cellKey, type MatrixCell } from "../../engine/protocol.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { pieceCount } from "../../job/lookup.ts";
import { blendWords, viewingWords } from "../words/garmentWords.ts";
import { mixHeading } from "../words/mixWords.ts";
import { groupedCount } from "../words/pieceWords.ts";
import {
  bandWords,
  byWeight,
  chanceWords,
  changeWords,
  rangeWords,
  SHORT_WARNINGS,
  WARNING_SENTENCES,
} from "../words/predictionSentences.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import { ChanceBar } from "./CellFace.tsx";
import { KnitSwatch } from "./KnitSwatch.tsx";
import type { MatrixCandidate, MatrixLine } from "./matrixInputs.ts";
import { garmentTitle } from "./RowHead.tsx";

/** A paper's width holds so many mixes beside the garments; more go on in a second table. */
const MIXES_ACROSS = 7;
const SWATCH = { widthPx: 104, heightPx: 28 };

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly lines: readonly MatrixLine[];
  readonly candidates: readonly MatrixCandidate[];
  readonly cells: ReadonlyMap<string, MatrixCell>;
  readonly chosen: ReadonlyMap<string, string>;
}

export function MatrixPaper(props: Props) {
  const { documents, place, candidates, cells } = props;
  const tables: (readonly MatrixCandidate[])[] = [];
  for (let from = 0; from < candidates.length; from += MIXES_ACROSS) {
    tables.push(candidates.slice(from, from + MIXES_ACROSS));
  }
  const warnings = new Set([...cells.values()].flatMap((cell) => cell.warnings));
  return (
    <div className="paper">
      {/* The table is wider than high; other views keep the sheet upright. */}
      <style>{"@page { size: landscape; margin: 10mm; }"}</style>
      <h2>Matrix, {place.name}</h2>
      <p>
        Target {bandWords(place.band)}; light {viewingWords(documents.job.viewing)}. Ranges hold nine prints
        in ten. A printer's colours mean nothing: the figures count, and only a print on the lot is proof.
      </p>
      {tables.map((columns) => (
        <PaperTable key={columns[0]?.candidate.id} {...props} candidates={columns} />
      ))}
      {warnings.size > 0 && (
        <dl className="paper__warnings">
          {[...warnings].map((warning) => (
            <div key={warning}>
              <dt>{SHORT_WARNINGS[warning]}</dt>
              <dd>{WARNING_SENTENCES[warning]}</dd>
            </div>
          ))}
        </dl>
      )}
    </div>
  );
}

function PaperTable({ documents, lines, candidates, cells, chosen }: Props) {
  const { shelf } = documents.library;
  return (
    <table className="paper__table">
      <thead>
        <tr>
          <th scope="col">Garment</th>
          {candidates.map(({ candidate, mix, setUp }) => {
            const heading = mix === null ? null : mixHeading(mix, shelf);
            return (
              <th scope="col" key={candidate.id}>
                <strong>{heading?.title}</strong>
                <br />
                {heading?.recipe}
                <br />
                {setUp?.name}
              </th>
            );
          })}
        </tr>
      </thead>
      <tbody>
        {lines.map((row) => (
          <tr key={row.line.id}>
            <th scope="row">
              <strong>{garmentTitle(row.lot)}</strong>
              {row.lot !== null && (
                <>
                  <br />
                  {[row.lot.mill, row.lot.lot].filter((part) => part !== "").join(", lot ")}
                  <br />
                  {blendWords(row.lot.blend)}
                </>
              )}
              <br />
              {groupedCount(pieceCount(row.line))} pcs
              {row.line.substitutedForLotId !== null && ", substituted"}
            </th>
            {candidates.map((column) => (
              <td key={column.candidate.id}>
                <PaperCell
                  row={row}
                  column={column}
                  cell={cells.get(cellKey(row.line.id, column.candidate.id)) ?? null}
                  isChosen={chosen.get(row.line.id) === column.candidate.id}
                />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface PaperCellProps {
  readonly row: MatrixLine;
  readonly column: MatrixCandidate;
  readonly cell: MatrixCell | null;
  readonly isChosen: boolean;
}

function PaperCell({ row, column, cell, isChosen }: PaperCellProps) {
  const problem = row.problems[0] ?? column.problems[0];
  if (problem !== undefined) return <p>! {sentenceForProblem(problem)}</p>;
  if (cell === null) return <p>not predicted yet</p>;
  return (
    <>
      <KnitSwatch
        {...SWATCH}
        bareHex={cell.bareHex}
        lightHex={cell.lightHex}
        darkHex={cell.darkHex}
        evidence={cell.evidence}
      />
      <p className="paper__change">{changeWords(cell.deltaL)}</p>
      {isChosen && <p className="cell__chosen">chosen</p>}
      <p>{rangeWords(cell)}</p>
      <p>grey scale {cell.greyScaleGrade}</p>
      <p className="paper__chance">
        <ChanceBar chance={cell.chanceInBand} />
        {chanceWords(cell.chanceInBand)}
      </p>
      <p>
        <span className="evidence" data-evidence={cell.evidence}>
          {cell.evidence}
        </span>
      </p>
      {cell.warnings.length > 0 && (
        <p>
          {byWeight(cell.warnings)
            .map(({ warning, isLoud }) => `${isLoud ? "! " : ""}${SHORT_WARNINGS[warning]}`)
            .join(", ")}
        </p>
      )}
    </>
  );
}
