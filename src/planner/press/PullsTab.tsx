/** Later pulls of a run: one being read with what it says, the run so far as a chart, and the log. */
import { useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { appendPressEntry } from "../../job/edits/press.ts";
import { MODEL_VERSION } from "../../job/modelVersion.ts";
import { meanOf } from "../../job/press/firstOffReading.ts";
import { type LoggedEntry, nextPoint, type PressRun } from "../../job/press/pressRun.ts";
import { newPullForm, type PullForm, pullCorrection, readingsOfPull } from "../../job/press/pullForm.ts";
import type { PressEntry } from "../../job/pressDocument.ts";
import { useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { typedBefore } from "../tests/typedBefore.ts";
import { viewingWords } from "../words/garmentWords.ts";
import { ACTION_WORDS, NO_TOLERANCE } from "../words/pressSentences.ts";
import { PressLog } from "./PressLog.tsx";
import { PullChart } from "./PullChart.tsx";
import { PullEntry } from "./PullEntry.tsx";
import { PullSays } from "./PullSays.tsx";
import { usePullDraft } from "./usePullDraft.ts";

interface Props {
  readonly documents: Documents;
  readonly run: PressRun;
}

/** Before the first pull: as the first-off was read, and by whom. */
function readerOf(firstOff: LoggedEntry | null) {
  if (firstOff === null) return null;
  const { entry, print } = firstOff;
  return { readings: entry.readings, by: print?.operator ?? entry.by };
}

export function PullsTab({ documents, run }: Props) {
  const { change } = useJobAddress();
  const record = usePlanner((state) => state.record);
  const { job } = documents;
  const { line, place, points, firstOff, latest, lineBand, lot } = run;
  const pulls = run.entries.filter(({ entry }) => entry.kind === "pull");
  const last = pulls.at(-1)?.entry ?? readerOf(firstOff);
  const [form, put] = usePullDraft(`pull ${line.id} ${place.id}`, () => newPullForm(last));
  const [refusal, setRefusal] = useState<string | null>(null);
  const people = useMemo(() => typedBefore(job.pressLog.map(({ by }) => by)), [job.pressLog]);
  const readings = useMemo(() => readingsOfPull(form), [form]);
  const reading = readings === null || lot === null ? null : meanOf(readings, lot, run.referenceSd);
  const point = reading === null ? null : nextPoint(run, reading, form.change, form.supersedesId);
  const onChange = (part: Partial<PullForm>) => {
    setRefusal(null);
    put({ ...form, ...part });
  };
  const keep = () => {
    if (readings === null || reading === null) return setRefusal("Still missing: a reading.");
    if (point === null) return setRefusal(NO_TOLERANCE);
    if (form.by === "") return setRefusal("Still missing: who read it.");
    const { deltaL, tolerance } = lineBand.band;
    const { mean, standardUncertainty } = reading;
    const { action, conformanceProbability } = point;
    const entry: PressEntry = {
      id: newId(),
      lineId: line.id,
      placeId: place.id,
      kind: "pull",
      change: form.change,
      subject: run.subject,
      readings,
      testPrintId: null,
      band: { deltaL, tolerance },
      said: { action, mean, standardUncertainty, conformanceProbability, modelVersion: MODEL_VERSION },
      by: form.by,
      at: nowIso(),
      note: form.note,
      supersedesId: form.supersedesId,
    };
    record((now) => appendPressEntry(now, entry));
    put(newPullForm(entry));
  };
  const mayPull = firstOff?.entry.said.action === "run";
  const stands = latest?.entry.kind === "pull" ? latest.entry.said.action : "run";
  return (
    <div className="press__part">
      {!mayPull && (
        <Notice kind="caution">
          {firstOff === null
            ? "No first-off of this lot, mix and set-up is on record yet."
            : "The latest first-off was not passed."}{" "}
          <ActionButton weight="plain" onClick={() => change({ tab: "first-off" })}>
            To the first-off
          </ActionButton>
        </Notice>
      )}
      {mayPull && stands !== "run" && (
        <Notice kind="caution">
          The last pull said: {ACTION_WORDS[stands].toLowerCase()}.{" "}
          <ActionButton
            weight="plain"
            onClick={() => change({ tab: stands === "first-off" ? "first-off" : "recover" })}
          >
            {stands === "first-off" ? "To the first-off" : "See what can be changed"}
          </ActionButton>
        </Notice>
      )}
      <p className="quiet">
        Every 250 pieces or half an hour, and after each change of lot, pot or shift and each restart (from
        memory, no source).
      </p>
      <div className="press__reading tests">
        <form className="press__form" onSubmit={(event) => event.preventDefault()} noValidate>
          {form.supersedesId !== null && (
            <Notice kind="note">This corrects a pull of the log, which stays to be seen.</Notice>
          )}
          <PullEntry form={form} people={people} light={viewingWords(job.viewing)} onChange={onChange} />
        </form>
        <section className="press__says panel" aria-label="What the pull says">
          <PullSays point={point} reading={reading} band={lineBand.band} />
          {refusal !== null && (
            <Notice kind="problem" announce>
              {refusal}
            </Notice>
          )}
          <div className="acts">
            <ActionButton weight="strong" onClick={keep}>
              Keep this pull
            </ActionButton>
            {form.supersedesId !== null && (
              <ActionButton weight="plain" onClick={() => put(newPullForm(last))}>
                Leave it as it was
              </ActionButton>
            )}
            {(point?.action === "stop" || point?.action === "adjust") && (
              <ActionButton onClick={() => change({ tab: "recover" })}>See what can be changed</ActionButton>
            )}
          </div>
        </section>
      </div>
      <PullChart points={points} band={lineBand.band} />
      <PressLog
        caption="Pulls"
        entries={pulls.toReversed()}
        onCorrect={({ entry }) => {
          setRefusal(null);
          put(pullCorrection(entry));
        }}
      />
    </div>
  );
}
