/** The bench form: few fields, big targets, and beside them what is odd and what the reading says. */
import { useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import { appendSlipAnswer, appendTestPrint } from "../../job/edits/records.ts";
import { type BenchForm, nextForm } from "../../job/recordBook/benchForm.ts";
import { DRAFT_ID, draftPrint, printOfForm } from "../../job/recordBook/benchPrint.ts";
import { samePrint } from "../../job/recordBook/samePrint.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { useLessons } from "../lessons.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { missingSentence } from "../words/testsWords.ts";
import { BenchPrint } from "./BenchPrint.tsx";
import { BenchReadings } from "./BenchReadings.tsx";
import { BenchWhen } from "./BenchWhen.tsx";
import { FindingWords } from "./FindingWords.tsx";
import { OddReadings } from "./OddReadings.tsx";
import { typedBefore } from "./typedBefore.ts";
import type { BenchFormInUse } from "./useBenchForm.ts";
import { useFinding } from "./useFinding.ts";

interface Props {
  readonly documents: Documents;
  readonly bench: BenchFormInUse;
  /** Opens the record book at a record that was just kept. */
  readonly onOpen: (recordId: string) => void;
  /** What a new form begins with, from the address. */
  readonly begin: Partial<BenchForm>;
  /** Goes to the tests that are worth making now. */
  readonly onWorth: () => void;
}

export function BenchTab({ documents, bench, onOpen, begin, onWorth }: Props) {
  const { form } = bench;
  const [kept, setKept] = useState<string | null>(null);
  if (form === null) {
    const begins = () => {
      setKept(null);
      bench.start(begin);
    };
    return <Start kept={kept} onOpen={onOpen} onStart={begins} onWorth={onWorth} />;
  }
  return <Bench documents={documents} bench={bench} form={form} onKept={setKept} />;
}

interface StartProps {
  readonly kept: string | null;
  readonly onOpen: (recordId: string) => void;
  readonly onStart: () => void;
  readonly onWorth: () => void;
}

function Start({ kept, onOpen, onStart, onWorth }: StartProps) {
  const part = useLostFocus<HTMLDivElement>(".action--strong");
  return (
    <div className="tests__start" ref={part}>
      {kept !== null && (
        <Notice kind="note" announce>
          The record is kept.{" "}
          <ActionButton weight="plain" onClick={() => onOpen(kept)}>
            Open it in the record book
          </ActionButton>{" "}
          <ActionButton weight="plain" onClick={onWorth}>
            See which test is worth making next
          </ActionButton>
        </Notice>
      )}
      <p>
        Read bare cloth and print side by side, cold, under one setting of the instrument. A print judged by
        eye on the grey scale counts too.
      </p>
      <ActionButton weight="strong" onClick={onStart}>
        Record a test print
      </ActionButton>
    </div>
  );
}

interface BenchProps {
  readonly documents: Documents;
  readonly bench: BenchFormInUse;
  readonly form: BenchForm;
  readonly onKept: (recordId: string) => void;
}

function Bench({ documents, bench, form, onKept }: BenchProps) {
  const record = usePlanner((state) => state.record);
  const part = useLostFocus<HTMLDivElement>("select:not(:disabled), input:not(:disabled)");
  const { lessons } = useLessons();
  const [isAsked, setIsAsked] = useState(false);
  const { library } = documents;
  const { testPrints } = library;
  const viewing = library.shelf.defaults.instrument.viewing;
  const draft = useMemo(() => draftPrint(form, DRAFT_ID), [form]);
  const finding = useFinding(documents, draft);
  const made = printOfForm(form, DRAFT_ID);
  const same =
    draft === null || form.printedAt === null || form.readsAgainId !== null
      ? null
      : samePrint(testPrints, draft);
  const keep = (isNext: boolean) => {
    const whole = printOfForm(form, newId());
    if (!whole.ok) {
      setIsAsked(true);
      return;
    }
    const { print } = whole;
    record((now) => appendTestPrint(now, print));
    const suspected = lessons?.suspicions.find(({ recordId }) => recordId === print.supersedesId);
    if (suspected !== undefined) {
      record((now) =>
        appendSlipAnswer(now, {
          id: newId(),
          testPrintId: suspected.recordId,
          slip: suspected.slip ?? "none",
          answer: "corrected",
          by: print.operator,
          at: nowIso(),
        }),
      );
    }
    bench.put(isNext ? nextForm(form) : null);
    setIsAsked(false);
    onKept(whole.print.id);
  };
  const corrects = testPrints.find(({ id }) => id === form.supersedesId);
  return (
    <div className="tests__bench" ref={part}>
      <form className="tests__form" onSubmit={(event) => event.preventDefault()} noValidate>
        {corrects !== undefined && (
          <Notice kind="note">
            This corrects a record of the book, which then no longer counts and stays to be seen.
          </Notice>
        )}
        {form.readsAgainId !== null && (
          <Notice kind="note">
            The same print, read again: cloth, ink, set-up and hour stand as recorded.
          </Notice>
        )}
        <BenchPrint form={form} documents={documents} onChange={bench.change} />
        <BenchReadings
          form={form}
          instruments={typedBefore(testPrints.map(({ instrument }) => instrument))}
          backings={typedBefore(testPrints.map(({ backing }) => backing))}
          onChange={bench.change}
        />
        <BenchWhen
          form={form}
          people={typedBefore(testPrints.map(({ operator }) => operator))}
          onChange={bench.change}
        />
      </form>
      <section className="tests__says panel" aria-label="What the reading says">
        <h3>What the reading says</h3>
        {draft === null ? (
          <p className="quiet">As soon as a garment, a mix, a set-up and a reading are there.</p>
        ) : (
          <FindingWords print={draft} finding={finding} viewing={viewing} />
        )}
        <OddReadings documents={documents} form={form} viewing={viewing} />
        {same !== null && (
          <Notice kind="note">
            Lot, ink, set-up and hour are those of a record in the book, so this counts as the same print read
            again. For another print, enter another minute.
          </Notice>
        )}
        {isAsked && !made.ok && (
          <Notice kind="problem" announce>
            {missingSentence(made.problems)}
          </Notice>
        )}
        {!isAsked && !made.ok && <p className="quiet">{missingSentence(made.problems)}</p>}
        <div className="acts">
          <ActionButton weight="strong" onClick={() => keep(false)}>
            Keep this record
          </ActionButton>
          {form.readsAgainId === null && form.supersedesId === null && (
            <ActionButton onClick={() => keep(true)}>Keep it, and record the next</ActionButton>
          )}
          <ActionButton weight="plain" onClick={() => bench.put(null)}>
            Throw this form away
          </ActionButton>
        </div>
      </section>
    </div>
  );
}
