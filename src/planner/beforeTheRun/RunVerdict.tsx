/** What to do with a line, and why: the verdict in the pane, with the ways to act on it and the money open to edit. */
import type { Documents } from "../../job/documents.ts";
import { chosenCandidate } from "../../job/lookup.ts";
import { jobAddress, printAddress, type ViewName } from "../address.ts";
import { LossFigures } from "../decisions/LossFigures.tsx";
import type { TestPlanState } from "../decisions/useTestPlan.ts";
import {
  isUnpriced,
  otherTestSentence,
  type ShownVerdict,
  verdictReasonSentence,
  verdictWord,
} from "../words/verdictSentences.ts";
import { noTimeSentence } from "../words/worthSentences.ts";
import type { RunLine } from "./runLines.ts";

interface Props {
  readonly documents: Documents;
  readonly run: RunLine;
  readonly verdict: ShownVerdict | null;
  readonly plan: TestPlanState;
}

export function RunVerdict({ documents, run, verdict, plan }: Props) {
  const { currency } = documents.library.shelf.defaults;
  const { failed, runDay } = plan;
  const asksForTest = verdict?.reasons.some(
    ({ code }) => code === "test-pays" || code === "rule-asks-for-test",
  );
  return (
    <section className="run__verdict-part" aria-label="Verdict">
      <h3>{verdict === null ? (failed ? "No verdict" : "Weighing…") : verdictWord(verdict)}</h3>
      {failed && <p>The test plan could not be made, so nothing is said of money here. Reload the page.</p>}
      {verdict !== null && (
        <>
          <ul className="run__verdict-reasons">
            {verdict.reasons.map((reason) => (
              <li key={reason.code}>
                {verdictReasonSentence(reason, currency, isUnpriced(verdict))}
                {reason.code === "test-pays" &&
                  verdict.testOf !== null &&
                  ` ${otherTestSentence(verdict.testOf)}`}
              </li>
            ))}
          </ul>
          {asksForTest === true && runDay === "no-time" && (
            <p>! {noTimeSentence(documents.job.runStartsOn ?? "")}</p>
          )}
          <Ways documents={documents} run={run} verdict={verdict} />
        </>
      )}
      <LossFigures documents={documents} line={run.line} />
    </section>
  );
}

interface Way {
  readonly words: string;
  readonly view: ViewName;
  readonly tab: string | null;
}

function Ways({ documents, run, verdict }: Pick<Props, "documents" | "run"> & { verdict: ShownVerdict }) {
  const { job } = documents;
  const { line, place } = run;
  const at = { line: line.id, place: place.id };
  const mix = chosenCandidate(job, line.id, place.id)?.id ?? null;
  const has = (code: string) => verdict.reasons.some((reason) => reason.code === code);
  const ways: readonly (Way | false)[] = [
    has("test-pays") && { words: "See the test plan", view: "tests", tab: "worth-making" },
    ((verdict.verdict === "print-a-test" && (verdict.testOf === null || has("rule-asks-for-test"))) ||
      has("test-not-recorded")) && {
      words: "Record a test print of it",
      view: "tests",
      tab: "record",
    },
    has("lot-not-approved") && { words: "Enter the goods-in check", view: "tests", tab: "goods-in" },
    verdict.verdict === "choose-a-mix" && { words: "Go to the matrix", view: "matrix", tab: null },
  ];
  const links = ways.filter((way) => way !== false);
  if (links.length === 0) return null;
  return (
    <ul className="run__ways">
      {links.map(({ words, view, tab }) => (
        <li key={words}>
          <a href={printAddress(jobAddress(job.id, view, { ...at, mix, tab }))}>{words}</a>
        </li>
      ))}
    </ul>
  );
}
