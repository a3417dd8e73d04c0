/** A record that looks wrong, and the three answers to it: keep it, set it aside, correct it. None is given for anybody. */
import type { Suspicion } from "../../core/evidence/suspicious.ts";
import type { Documents } from "../../job/documents.ts";
import { appendSlipAnswer } from "../../job/edits/records.ts";
import { latestAnswers } from "../../job/evidenceInputs.ts";
import type { SlipAnswer, TestPrint } from "../../job/recordDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { useLessons } from "../lessons.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useSigner } from "../state/signerMemory.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { answerSentence, setAsideSentence } from "../words/slipWords.ts";

interface Props {
  readonly documents: Documents;
  readonly print: TestPrint;
  readonly onCorrect: (print: TestPrint) => void;
}

export function SlipAnswers({ documents, print, onCorrect }: Props) {
  const { lessons } = useLessons();
  const record = usePlanner((state) => state.record);
  const [signer, setSigner] = useSigner();
  const suspicion = lessons?.suspicions.find(({ recordId }) => recordId === print.id);
  const answer = latestAnswers(documents.library.slipAnswers).get(print.id);
  if (suspicion === undefined && answer === undefined) return null;
  const give = (given: SlipAnswer["answer"]) =>
    record((now) =>
      appendSlipAnswer(now, {
        id: newId(),
        testPrintId: print.id,
        slip: suspicion?.slip ?? "none",
        answer: given,
        by: signer,
        at: nowIso(),
      }),
    );
  return (
    <section className="tests__answers" aria-label="Does this record count?">
      <h4>Does this record count?</h4>
      <p role="status">{standingWords(suspicion, answer)}</p>
      <div className="tests__approve" data-print="hide">
        <TextEntry
          label="Your name, for the answer"
          value={signer}
          maxLength={120}
          onCommit={setSigner}
          required="An answer needs a name."
        />
      </div>
      <div className="acts" data-print="hide">
        <ActionButton disabled={signer === "" || answer?.answer === "keep"} onClick={() => give("keep")}>
          Keep it: it is right
        </ActionButton>
        <ActionButton
          disabled={signer === "" || answer?.answer === "set-aside"}
          onClick={() => give("set-aside")}
        >
          Set it aside
        </ActionButton>
        <ActionButton onClick={() => onCorrect(print)}>Correct it</ActionButton>
      </div>
    </section>
  );
}

function standingWords(suspicion: Suspicion | undefined, answer: SlipAnswer | undefined): string {
  if (answer !== undefined) return answerSentence(answer);
  return setAsideSentence(suspicion?.setAside ?? false);
}
