/** What a first-off says while it is typed: the verdict, and what is odd or was not expected. */
import { useMemo } from "react";
import type { Documents } from "../../job/documents.ts";
import { judgeReading } from "../../job/press/firstOffReading.ts";
import { typedReadings } from "../../job/press/pressReadings.ts";
import type { PressRun } from "../../job/press/pressRun.ts";
import type { BenchForm } from "../../job/recordBook/benchForm.ts";
import { DRAFT_ID, draftPrint } from "../../job/recordBook/benchPrint.ts";
import { Notice } from "../controls/Notice.tsx";
import { OddReadings } from "../tests/OddReadings.tsx";
import { useFinding } from "../tests/useFinding.ts";
import { expectedWords, residualSentence, suspicionSentence } from "../words/findingSentences.ts";
import { NO_TOLERANCE, OTHER_LIGHT } from "../words/pressSentences.ts";
import { VerdictPanel } from "./VerdictPanel.tsx";

interface Props {
  readonly documents: Documents;
  readonly run: PressRun;
  readonly form: BenchForm;
}

/** The verdict says itself how many pairs it wants, against this target and not in general. */
const SAID_BY_THE_VERDICT = "bench-few-reads";

export function FirstOffSays({ documents, run, form }: Props) {
  const { viewing } = documents.job;
  const read = useMemo(() => typedReadings(form, viewing), [form, viewing]);
  const judged =
    read.ok && run.lot !== null ? judgeReading(read.readings, run.lot, run.lineBand, run.referenceSd) : null;
  const draft = useMemo(() => draftPrint(form, DRAFT_ID), [form]);
  const state = useFinding(documents, draft);
  const finding = draft !== null && state.kind === "found" ? state.finding : null;
  return (
    <>
      {judged === null && (read.ok || read.reason === "nothing-read") && (
        <>
          <h4>Verdict</h4>
          <p className="quiet">As soon as the L* of a bare cloth and of the print beside it are there.</p>
        </>
      )}
      {!read.ok && read.reason === "other-light" && <Notice kind="problem">{OTHER_LIGHT}</Notice>}
      {judged !== null && !judged.ok && <Notice kind="problem">{NO_TOLERANCE}</Notice>}
      {judged?.ok && (
        <VerdictPanel verdict={judged.verdict} reading={judged.reading} band={run.lineBand.band} announce />
      )}
      {finding !== null && judged?.ok && (
        <p>
          Expected before it: {expectedWords(finding.expected)}.{" "}
          {residualSentence(judged.reading.mean, finding.expected)}
        </p>
      )}
      {finding?.suspicion != null && <Notice kind="caution">{suspicionSentence(finding.suspicion)}</Notice>}
      <OddReadings documents={documents} form={form} viewing={viewing} saidElsewhere={SAID_BY_THE_VERDICT} />
    </>
  );
}
