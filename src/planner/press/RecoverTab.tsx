/** What can be changed about a print that came out wrong: every way the shop has now, ranked, and one press to take it. */
import { useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { applyProposal } from "../../job/edits/proposal.ts";
import { chosenCandidate, mixOf } from "../../job/lookup.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import type { Recipe } from "../../job/recipeParts.ts";
import { jobAddress, printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { Tick } from "../controls/Tick.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { recipeName } from "../words/mixWords.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { changeWords } from "../words/predictionSentences.ts";
import { RecoverList } from "./RecoverList.tsx";
import { useRecovery } from "./useRecovery.ts";

interface Props {
  readonly documents: Documents;
  readonly run: PressRun;
}

const CANNOT: Readonly<Record<string, string>> = {
  "no-mix-chosen": "No mix is chosen for this garment here.",
  "not-predictable": "This garment cannot be predicted as it stands, so no change of it can.",
};

export function RecoverTab({ documents, run }: Props) {
  const { change } = useJobAddress();
  const edit = usePlanner((state) => state.edit);
  const { job, library } = documents;
  const { shelf } = library;
  const { line, place, firstOff, latest, subject } = run;
  const [halftonesAllowed, setHalftones] = useState(false);
  const [wantedFor, setWantedFor] = useState<string | null>(null);
  /** What was taken, and the choice that it made: another one chosen since, or undo, ends the notice. */
  const [used, setUsed] = useState<{ readonly name: string; readonly before: string } | null>(null);
  // What was passed then may be out of a target that was changed since.
  const isOff = firstOff?.verdict != null && firstOff.verdict.action !== "run";
  const needsIt = isOff || (latest !== null && latest.entry.said.action !== "run");
  const isAsked = needsIt || wantedFor === subject;
  // What was pressed goes with its use; the notice or the list comes in its place.
  const part = useLostFocus<HTMLDivElement>("button, input", `${isAsked} ${subject}`);
  const state = useRecovery(documents, { lineId: line.id, placeId: place.id, halftonesAllowed }, isAsked);
  const candidate = chosenCandidate(job, line.id, place.id);
  const before = (candidate === null ? null : mixOf(job, candidate.mixId))?.recipe ?? [];
  const use = (recipe: Recipe, setUpId: string) => {
    const name = recipeName(recipe, shelf);
    const proposed = {
      lineId: line.id,
      recipe,
      mixName: name,
      setUpId,
      newMixId: newId(),
      newCandidateId: newId(),
    };
    edit((now) => applyProposal(now, place.id, [proposed]));
    const setUp = shelf.setUps.find(({ id }) => id === setUpId)?.name ?? "";
    setUsed({ name: `${name}, ${setUp}`, before: subject });
  };
  const list = printAddress(jobAddress(job.id, "before-the-run", { line: line.id, place: place.id }));
  const defaults = printAddress({ ...jobAddress(job.id, "shelf", { tab: "defaults" }) });
  return (
    <div className="press__part" ref={part}>
      {used !== null && used.before !== subject && (
        <Notice kind="note" announce>
          Chosen for this garment: {used.name}. What was signed for the earlier mix or set-up no longer
          counts: <a href={list}>before the run</a>. This one needs a first-off of its own.{" "}
          <ActionButton weight="plain" onClick={() => change({ tab: "first-off" })}>
            To the first-off
          </ActionButton>
        </Notice>
      )}
      {!isAsked && (
        <div className="press__begin">
          <p>
            {firstOff === null
              ? "No first-off of this lot, mix and set-up is on record. What can be changed is reckoned with what the record book knows by now."
              : "The run stands: nothing has to be changed."}
          </p>
          <ActionButton onClick={() => setWantedFor(subject)}>
            Show what can be changed all the same
          </ActionButton>
        </div>
      )}
      {isAsked && (
        <>
          <div className="press__terms">
            <Tick
              label="Halftones allowed: the artwork may be made anew"
              checked={halftonesAllowed}
              onChange={setHalftones}
            />
            <p className="quiet">
              Minutes and prices are the shop's: <a href={defaults}>change them on the shelf</a>. Only what is
              in stock or at hand is shown.
            </p>
          </div>
          {state.kind === "asking" && <p role="status">Working out every change…</p>}
          {state.kind === "failed" && (
            <Notice kind="problem">The engine could not work it out. Reload the page.</Notice>
          )}
          {state.kind === "found" && !state.answer.ok && (
            <Notice kind="problem">
              {state.answer.problems.map(({ code }) => CANNOT[code] ?? "").join(" ") || (
                <ProblemList problems={state.answer.problems} />
              )}
            </Notice>
          )}
          {state.kind === "found" && state.answer.ok && (
            <>
              {state.answer.unexplained !== null && (
                <Notice kind="caution">
                  It read {changeWords(state.answer.unexplained.readDeltaL)}, which the lot's other prints do
                  not explain. Look for a cause first: strokes, blade, mesh, pot, lot. The list below goes by
                  this first-off.
                </Notice>
              )}
              <RecoverList
                jobId={job.id}
                placeId={place.id}
                shelf={shelf}
                before={before}
                answer={state.answer}
                isApproved={run.lineBand.follows !== null}
                onUse={use}
              />
            </>
          )}
        </>
      )}
    </div>
  );
}
