/** A first-off being read: few fields, and the verdict beside them at once. */
import { useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { appendPressEntry } from "../../job/edits/press.ts";
import { appendTestPrint } from "../../job/edits/records.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import type { PullChange } from "../../job/press/pullForm.ts";
import { isSameRecipe } from "../../job/recipeParts.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { DRAFT_ID, printOfForm } from "../../job/recordBook/benchPrint.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { LongText } from "../controls/LongText.tsx";
import { Notice } from "../controls/Notice.tsx";
import { RadioRow } from "../controls/RadioRow.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { TimeEntry } from "../controls/TimeEntry.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { newId, nowIso } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { PieceCountEntry, ReadingConditions, ReadingEntry } from "../tests/BenchReadings.tsx";
import { typedBefore } from "../tests/typedBefore.ts";
import type { BenchFormInUse } from "../tests/useBenchForm.ts";
import { GEOMETRIES, viewingWords } from "../words/garmentWords.ts";
import { CHANGES, NO_TOLERANCE, OTHER_LIGHT } from "../words/pressSentences.ts";
import { missingSentence } from "../words/testsWords.ts";
import { FirstOffSays } from "./FirstOffSays.tsx";
import { keptFirstOff } from "./keepFirstOff.ts";

interface Props {
  readonly documents: Documents;
  readonly run: PressRun;
  readonly bench: BenchFormInUse;
  readonly form: BenchForm;
  /** What is chosen now; null where nothing is. */
  readonly begins: Partial<BenchForm> | null;
  readonly onKept: () => void;
}

/** Whether lot, mix or set-up were changed since the form was begun: what is read then is not what is chosen. */
function isStale(form: BenchForm, begins: Partial<BenchForm> | null): boolean {
  if (form.supersedesId !== null) return false;
  return (
    begins === null ||
    form.garmentLotId !== begins.garmentLotId ||
    form.setUpId !== begins.setUpId ||
    form.halftoneFraction !== begins.halftoneFraction ||
    !isSameRecipe(form.recipe ?? [], begins.recipe ?? [])
  );
}

/** What was changed before it, as the log makes likely: another choice than the last entry's is a recovery. */
function likelyChange({ entries }: PressRun): PullChange {
  const last = entries.at(-1);
  if (last === undefined) return "none";
  return last.isOfThisChoice ? "none" : "recovery";
}

function conditionWords({ way, illuminant, observer, geometry, instrument, byEye }: BenchForm): string {
  if (way === "by-eye") return `under ${byEye.light}`;
  const light =
    illuminant === null || observer === null ? "light not said" : viewingWords({ illuminant, observer });
  const how = GEOMETRIES.find(({ value }) => value === geometry)?.label ?? "geometry not said";
  return [light, how, instrument].filter((part) => part !== "").join(", ");
}

export function FirstOffForm({ documents, run, bench, form, begins, onKept }: Props) {
  const record = usePlanner((state) => state.record);
  // Whoever signed last on this tablet has not passed this one.
  const [signer, setSigner] = useState("");
  const [refusal, setRefusal] = useState<string | null>(null);
  const [chosenChange, setChange] = useState<PullChange | null>(null);
  const { testPrints } = documents.library;
  const people = useMemo(() => typedBefore(testPrints.map(({ operator }) => operator)), [testPrints]);
  const change = chosenChange ?? likelyChange(run);
  const corrected = run.firstOffs.find(({ print }) => print !== null && print.id === form.supersedesId);
  const stale = isStale(form, begins);
  const part = useLostFocus<HTMLDivElement>(".tests__side input, .press__form input");
  const keep = () => {
    if (stale)
      return setRefusal("The mix or set-up was changed: take what is chosen now, or throw this away.");
    const kept = keptFirstOff(documents, run, form, {
      entryId: newId(),
      printId: newId(),
      at: nowIso(),
      change: corrected?.entry.change ?? change,
      signer,
    });
    if (kept.ok) {
      record((now) => appendPressEntry(appendTestPrint(now, kept.print), kept.entry));
      setRefusal(null);
      onKept();
      bench.put(null);
    } else if ("problems" in kept) {
      setRefusal(missingSentence(kept.problems) ?? "It cannot be kept as it is typed.");
    } else {
      setRefusal(
        kept.reason === "no-signer"
          ? "A run needs the name of the person who passes it."
          : kept.reason === "no-tolerance"
            ? NO_TOLERANCE
            : OTHER_LIGHT,
      );
    }
  };
  const at = form.readAt ?? form.printedAt;
  const made = printOfForm({ ...form, readAt: at, printedAt: form.printedAt ?? at }, DRAFT_ID);
  const missing = made.ok ? null : missingSentence(made.problems);
  return (
    <div className="press__reading tests" ref={part}>
      <form className="press__form" onSubmit={(event) => event.preventDefault()} noValidate>
        {corrected !== undefined && (
          <Notice kind="note">
            This corrects the first-off of the log and its record; both stay to be seen.
          </Notice>
        )}
        {stale && (
          <Notice kind="caution">
            Lot, mix or set-up were changed since this form was begun.{" "}
            {begins !== null && (
              <ActionButton weight="plain" onClick={() => bench.change(begins)}>
                Take what is chosen now
              </ActionButton>
            )}
          </Notice>
        )}
        <ReadingEntry form={form} onChange={bench.change} />
        <div className="fields">
          {form.way !== "by-eye" && <PieceCountEntry pieceCount={form.pieceCount} onChange={bench.change} />}
          <TextEntry
            label="Printed and read by"
            value={form.operator}
            maxLength={120}
            suggestions={people}
            onCommit={(operator) => bench.change({ operator })}
          />
          <TextEntry
            label="Passed by, a second person"
            value={signer}
            maxLength={120}
            suggestions={people}
            onCommit={setSigner}
          />
        </div>
        {signer !== "" && signer === form.operator && (
          <Notice kind="caution">
            The same person printed it: a second one should pass it (common practice, no source).
          </Notice>
        )}
        <details className="press__more">
          <summary>Read {conditionWords(form)}; time, cause, note</summary>
          <div className="press__more-fields">
            <ReadingConditions
              form={form}
              instruments={typedBefore(testPrints.map(({ instrument }) => instrument))}
              backings={typedBefore(testPrints.map(({ backing }) => backing))}
              withoutPieces
              onChange={bench.change}
            />
            <TimeEntry
              label="Printed"
              iso={form.printedAt}
              onChange={(printedAt) => bench.change({ printedAt })}
            />
            {corrected === undefined && (
              <RadioRow
                label="Changed just before it"
                value={change}
                options={CHANGES}
                onChange={setChange}
              />
            )}
            <LongText
              label="Note"
              value={form.note}
              maxLength={2000}
              rows={2}
              onChange={(note) => bench.change({ note })}
            />
          </div>
        </details>
      </form>
      <section className="press__says panel" aria-label="Verdict">
        <FirstOffSays documents={documents} run={run} form={form} />
        {refusal !== null ? (
          <Notice kind="problem" announce>
            {refusal}
          </Notice>
        ) : (
          missing !== null && <p className="quiet">{missing}</p>
        )}
        <div className="acts">
          <ActionButton weight="strong" onClick={keep}>
            Keep this first-off
          </ActionButton>
          <ActionButton weight="plain" onClick={() => bench.put(null)}>
            Throw this form away
          </ActionButton>
        </div>
      </section>
    </div>
  );
}
