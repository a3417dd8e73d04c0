/** The run sheet of one line, one page: what to print, against what, what was read and decided, and room to write by hand. */
import type { Documents } from "../../job/documents.ts";
import { pieceCount } from "../../job/lookup.ts";
import type { LoggedEntry } from "../../job/press/pressRun.ts";
import { standingWords } from "../beforeTheRun/standingWords.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { viewingWords } from "../words/garmentWords.ts";
import { pieces } from "../words/pieceWords.ts";
import { bandWords, changeWords, rangeWords } from "../words/predictionSentences.ts";
import {
  ACTION_WORDS,
  bandSourceWords,
  changeMark,
  PRESS_CAUTIONS,
  plusMinusWords,
  pressReadingsWords,
} from "../words/pressSentences.ts";
import { approvedName } from "./PressHead.tsx";
import type { PressLine } from "./PressLines.tsx";
import { PullChart } from "./PullChart.tsx";

interface Props {
  readonly documents: Documents;
  readonly line: PressLine;
}

/** Rows of a page, those to be written by hand among them. */
const ROWS = 14;
/** A page holds no more of a long run; the rest stays on the screen and in the archive. */
const MOST_SHOWN = 12;

export function PressPaper({ documents, line: { of, run } }: Props) {
  const { lineBand, entries, points } = run;
  const { band } = lineBand;
  const shown = entries.slice(-MOST_SHOWN);
  const [low, high] = [band.deltaL - band.tolerance, band.deltaL + band.tolerance];
  const [near, far] = band.deltaL < 0 ? [high, low] : [low, high];
  return (
    <section className="paper press__paper">
      <h2>
        Run sheet: {of.name}, {of.place.name}
      </h2>
      <table className="paper__table press__sheet">
        <tbody>
          <tr>
            <th scope="row">Print</th>
            <td>
              <strong>{of.mixName}</strong>, {of.setUpName}; {pieces(pieceCount(of.line))}
              {of.lot !== null && of.lot.lot !== "" && <>, lot {of.lot.lot}</>}
            </td>
            <th scope="row">Standing</th>
            <td>{standingWords(of)}</td>
          </tr>
          <tr>
            <th scope="row">Target</th>
            <td>
              <strong>{bandWords(band)}</strong>, from {changeWords(near)} to {changeWords(far)};{" "}
              {bandSourceWords(lineBand, approvedName(documents, run))}
            </td>
            <th scope="row">Predicted</th>
            <td>
              {of.chosen.kind === "predicted"
                ? `${changeWords(of.chosen.cell.deltaL)}, ${rangeWords(of.chosen.cell)} in nine of ten, ${of.chosen.cell.evidence}`
                : "not predicted"}
            </td>
          </tr>
        </tbody>
      </table>
      {shown.length < entries.length && (
        <p>
          The last {shown.length} of {entries.length} entries.
        </p>
      )}
      <table className="paper__table press__sheet-log">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">What, after</th>
            <th scope="col">Readings: L* bare, print</th>
            <th scope="col">Change</th>
            <th scope="col">Decision</th>
            <th scope="col">Name</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((logged) => (
            <Row key={logged.entry.id} logged={logged} />
          ))}
          {Array.from({ length: Math.max(0, ROWS - shown.length) }, (_, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: empty rows to write on
            <tr key={row} className="press__blank">
              <td />
              <td />
              <td />
              <td />
              <td />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
      <PullChart points={points} band={band} />
      <p>
        Read under {viewingWords(documents.job.viewing)}, cured and cool. First-off after warm-up; a pull
        every 250 pieces or half an hour, and after each change of lot, pot or shift and each restart (from
        memory, no source).
      </p>
      {PRESS_CAUTIONS.map((caution) => (
        <p key={caution}>! {caution}</p>
      ))}
    </section>
  );
}

function Row({ logged: { entry, print, isOfThisChoice } }: { readonly logged: LoggedEntry }) {
  const { said } = entry;
  const mark = changeMark(entry.change);
  const read = print !== null && print.operator !== entry.by ? `, read by ${print.operator}` : "";
  return (
    <tr>
      <td>{timeWords(entry.at)}</td>
      <td>
        {entry.kind === "first-off" ? "first-off" : "pull"}
        {mark !== "" && `, ${mark}`}
        {!isOfThisChoice && ", earlier mix or set-up"}
      </td>
      <td>{pressReadingsWords(entry.readings)}</td>
      <td className="press__nowrap">
        <strong>{changeWords(said.mean)}</strong> {plusMinusWords(said.standardUncertainty)}
      </td>
      <td>
        <strong>{ACTION_WORDS[said.action]}</strong>
      </td>
      <td>
        {entry.by}
        {read}
      </td>
    </tr>
  );
}
