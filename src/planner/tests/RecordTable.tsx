/** The list of the record book: one line a record, newest print first. */
import { useState } from "react";
import type { Suspicion } from "../../core/evidence/suspicious.ts";
import type { Library } from "../../job/libraryDocument.ts";
import { readingMeans } from "../../job/readingMeans.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import type { IndexedRecord } from "../../job/recordSearch.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { SLIP_WORDS } from "../words/findingSentences.ts";
import { changeWords } from "../words/predictionSentences.ts";
import { byEyeWords, readingsWords, restWords, washWords } from "../words/testsWords.ts";
import { recordName } from "./recordName.ts";

interface Props {
  readonly library: Library;
  readonly found: readonly IndexedRecord[];
  readonly suspicions: readonly Suspicion[];
  readonly openId: string | null;
  readonly onOpen: (recordId: string) => void;
}

/** More lines at once are not read and make the page slow. Invented. */
const SHOWN_AT_FIRST = 100;

/** Of the line's button, so that the focus finds back to it. */
export const rowId = (recordId: string) => `record-${recordId}`;

const MS_PER_HOUR = 3_600_000;

/** What a record found, large in the list. */
export function foundWords(print: TestPrint, library: Pick<Library, "shelf">): string {
  const { readings } = print;
  if (readings.kind === "by-eye") return byEyeWords(readings);
  const means = readingMeans(readings, library.shelf.defaults.instrument.viewing);
  return changeWords(means.print.L - means.bare.L);
}

/** Reference, rejected, corrected, suspicious: what has to be seen of a record at once. */
function marks(print: TestPrint, stands: boolean, suspicion: Suspicion | undefined): string[] {
  const words: string[] = [];
  if (!stands) words.push("corrected by a later record");
  if (print.verdict === "reference") words.push("kept as reference");
  if (print.verdict === "rejected") words.push("rejected");
  if (suspicion !== undefined) {
    const what = suspicion.slip === null ? "unlike all others" : SLIP_WORDS[suspicion.slip];
    words.push(`! ${what}${suspicion.setAside ? " Set aside." : ""}`);
  }
  return words;
}

export function RecordTable({ library, found, suspicions, openId, onOpen }: Props) {
  const [isAll, setIsAll] = useState(false);
  const shown = isAll ? found : found.slice(0, SHOWN_AT_FIRST);
  if (found.length === 0) return <p>No record is found.</p>;
  return (
    <>
      <table className="tests__table">
        <caption className="unseen">Record book</caption>
        <thead>
          <tr>
            <th scope="col">Garment</th>
            <th scope="col">Found</th>
            <th scope="col">Ink and set-up</th>
            <th scope="col">Read</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ print, stands }) => {
            const { garment, lot, mix, setUp, day } = recordName(library, print);
            const suspicion = suspicions.find(({ recordId }) => recordId === print.id);
            const hours = (Date.parse(print.readAt) - Date.parse(print.printedAt)) / MS_PER_HOUR;
            return (
              <tr key={print.id} data-open={print.id === openId} data-stands={stands}>
                <th scope="row">
                  <button
                    type="button"
                    id={rowId(print.id)}
                    className="tests__open"
                    onClick={() => onOpen(print.id)}
                  >
                    {garment}
                    {lot !== "" && <span className="quiet"> lot {lot}</span>}
                  </button>
                </th>
                <td>
                  <strong className="tests__change">{foundWords(print, library)}</strong>
                  {marks(print, stands, suspicion).map((words) => (
                    <span key={words} className="tests__mark">
                      {words}
                    </span>
                  ))}
                </td>
                <td>
                  {mix}
                  <span className="quiet tests__second">{setUp}</span>
                </td>
                <td>
                  {day}, after {restWords(hours)}
                  {print.washCount > 0 && `, ${washWords(print.washCount)}`}
                  <span className="quiet tests__second">
                    {readingsWords(print.readings)}
                    {print.operator !== "" && `, ${print.operator}`}
                  </span>
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {shown.length < found.length && (
        <div className="acts" data-print="hide">
          <ActionButton onClick={() => setIsAll(true)}>
            Show the other {found.length - shown.length}
          </ActionButton>
        </div>
      )}
    </>
  );
}
