/** Records that look wrong: what does, what would explain it, and who answered. Nothing here is dropped in silence. */
import type { Documents } from "../../job/documents.ts";
import { latestAnswers } from "../../job/evidenceInputs.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { standing } from "../../job/standing.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { useLessons } from "../lessons.tsx";
import { suspicionSentence } from "../words/findingSentences.ts";
import { foundWords } from "./RecordTable.tsx";
import { recordName } from "./recordName.ts";
import { SlipAnswers } from "./SlipAnswers.tsx";

interface Props {
  readonly documents: Documents;
  readonly onOpen: (recordId: string) => void;
  readonly onCorrect: (print: TestPrint) => void;
}

export function SuspiciousTab({ documents, onOpen, onCorrect }: Props) {
  const { lessons } = useLessons();
  const { library } = documents;
  const suspicions = lessons?.suspicions ?? [];
  const answers = latestAnswers(library.slipAnswers);
  const named = suspicions.map(({ recordId }) => recordId);
  const prints = standing(library.testPrints).filter(
    ({ id }) => named.includes(id) || (answers.has(id) && answers.get(id)?.answer !== "keep"),
  );
  if (lessons === null) return <p role="status">Looking through the record book…</p>;
  if (prints.length === 0) {
    return (
      <p>
        No record stands out. One that disagrees with all others by more than three standard deviations is
        named here, and one from two on where a slip of the bench would explain it.
      </p>
    );
  }
  return (
    <ul className="tests__suspects">
      {prints.map((print) => {
        const { garment, lot, mix, day } = recordName(library, print);
        const suspicion = suspicions.find(({ recordId }) => recordId === print.id);
        return (
          <li key={print.id} className="tests__suspect">
            <h3>
              {garment}
              {lot !== "" && `, lot ${lot}`}
            </h3>
            <p>
              {mix}, printed {day}: <strong>{foundWords(print, library)}</strong>
            </p>
            {suspicion !== undefined && <p>! {suspicionSentence(suspicion)}</p>}
            <SlipAnswers documents={documents} print={print} onCorrect={onCorrect} />
            <div className="acts" data-print="hide">
              <ActionButton weight="plain" onClick={() => onOpen(print.id)}>
                Open the record
              </ActionButton>
            </div>
          </li>
        );
      })}
    </ul>
  );
}
