/** The first-off of a line: what stands, the way to take one, and the form while one is read. */
import { useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { firstOffBegins } from "../../job/press/firstOffForm.ts";
import type { LoggedEntry, PressRun } from "../../job/press/pressRun.ts";
import { useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { nowIso } from "../state/identity.ts";
import { useBenchForm } from "../tests/useBenchForm.ts";
import { ACTION_WORDS, FIRST_OFF_STEPS, NO_TOLERANCE } from "../words/pressSentences.ts";
import { FirstOffForm } from "./FirstOffForm.tsx";
import { PressLog } from "./PressLog.tsx";
import { SignFirstOff } from "./SignFirstOff.tsx";
import { VerdictPanel } from "./VerdictPanel.tsx";

interface Props {
  readonly documents: Documents;
  readonly run: PressRun;
}

/** Garments that the last first-off of the job was spread over; what a shop does once it does again. */
function lastPieceCount({ job }: Documents): number {
  const last = job.pressLog.findLast(
    ({ kind, readings }) => kind === "first-off" && readings.kind !== "by-eye",
  );
  return last === undefined || last.readings.kind === "by-eye" ? 1 : last.readings.pieceCount;
}

export function FirstOffTab({ documents, run }: Props) {
  const { change } = useJobAddress();
  const { line, place, firstOff, firstOffs } = run;
  const bench = useBenchForm(`first-off ${line.id} ${place.id}`);
  const [isKept, setIsKept] = useState(false);
  // The form takes the place of what was pressed, and this the place of the form.
  const part = useLostFocus<HTMLDivElement>(".action--strong", bench.form === null ? "read" : "typing");
  const begins = firstOffBegins(documents, line, place);
  if (bench.form !== null) {
    return (
      <FirstOffForm
        documents={documents}
        run={run}
        bench={bench}
        form={bench.form}
        begins={begins}
        onKept={() => setIsKept(true)}
      />
    );
  }
  const start = () => {
    setIsKept(false);
    // What is kept is shown here, also where pulls come next.
    change({ tab: "first-off" });
    // The print comes off now; it is read when it is cured and cool.
    bench.start({ ...begins, pieceCount: lastPieceCount(documents), printedAt: nowIso() });
  };
  const correct = ({ print }: LoggedEntry) => {
    if (print === null) return;
    setIsKept(false);
    bench.correct(print);
  };
  const action = firstOff?.entry.said.action ?? null;
  const today = firstOff?.verdict?.action ?? null;
  const isPassed = action === "run" && today === "run";
  const isUndecided = today === "read-more";
  return (
    <div className="press__part" ref={part}>
      {isKept && firstOff !== null && (
        <Notice kind="note" announce>
          The first-off is kept, and the record book has learned of it.
        </Notice>
      )}
      {run.lineBand.band.tolerance === 0 && <Notice kind="problem">{NO_TOLERANCE}</Notice>}
      {firstOff?.verdict != null && firstOff.reading !== null && (
        <section className="press__stands" aria-label="What stands">
          {today !== action && action !== null && (
            <Notice kind="note">
              When it was kept it said: {ACTION_WORDS[action].toLowerCase()}. The target has been changed
              since.
            </Notice>
          )}
          <VerdictPanel verdict={firstOff.verdict} reading={firstOff.reading} band={run.lineBand.band} />
          <div className="acts">
            {isPassed && (
              <>
                <ActionButton weight="strong" onClick={() => change({ tab: "pulls" })}>
                  Log the next pull
                </ActionButton>
                <SignFirstOff run={run} signer={firstOff.entry.by} />
              </>
            )}
            {!isPassed && (
              <ActionButton
                weight={isUndecided ? "normal" : "strong"}
                onClick={() => change({ tab: "recover" })}
              >
                See what can be changed
              </ActionButton>
            )}
            <ActionButton weight={isUndecided ? "strong" : "normal"} onClick={start}>
              Take another first-off
            </ActionButton>
          </div>
        </section>
      )}
      {firstOff === null && (
        <section className="press__begin" aria-label="Take a first-off">
          <ul className="press__steps">
            {FIRST_OFF_STEPS.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ul>
          {firstOffs.length > 0 && (
            <p>The first-offs below are of an earlier lot, mix or set-up: this one needs its own.</p>
          )}
          <ActionButton weight="strong" onClick={start}>
            Take a first-off
          </ActionButton>
        </section>
      )}
      <PressLog caption="First-offs" entries={firstOffs.toReversed()} onCorrect={correct} />
    </div>
  );
}
