/** Which test prints are worth making: the list, what it settles, what skipping it costs, and what no test can change. */
import type { TestsFinding, WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { linesAt } from "../../job/lookup.ts";
import { jobAddress, printAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { type LineAt, namedLine } from "../decisions/namedLine.ts";
import { isWeighable, type TestPlanState, useTestPlan } from "../decisions/useTestPlan.ts";
import { recipeName } from "../words/mixWords.ts";
import {
  endSentence,
  firstSentence,
  headlineNames,
  isUnpriced,
  NAMED_FIRST,
  planningSentence,
  runDayNotice,
  settledSentence,
  UNPRICED_HEADLINE,
  UNPRICED_SENTENCE,
  unpredictedSentence,
  unweighedSentence,
  worthFigures,
} from "../words/worthSentences.ts";
import { WorthCurve } from "./WorthCurve.tsx";
import { WorthLimits } from "./WorthLimits.tsx";
import { WorthLines } from "./WorthLines.tsx";
import { WorthTable } from "./WorthTable.tsx";
import "./worth.css";

interface Props {
  readonly documents: Documents;
  /** Opens the bench form for a test of the list. */
  readonly onRecord: (test: WorthwhileTest) => void;
  /** Whether a record is being typed: it comes before the next. */
  readonly isTyping: boolean;
}

export function WorthTab({ documents, onRecord, isTyping }: Props) {
  const plan = useTestPlan(documents);
  const { finding, isCurrent, runDay } = plan;
  const { job } = documents;
  const hasPlan = isWeighable(documents);
  return (
    <div className="worth" aria-busy={hasPlan && !isCurrent && !plan.failed}>
      {hasPlan ? (
        <>
          <Progress plan={plan} documents={documents} />
          {runDay !== "open" && <Notice kind="caution">{runDayNotice(runDay, job.runStartsOn ?? "")}</Notice>}
          {finding !== null && (
            <div className="worth__plan" data-stale={isCurrent ? undefined : ""}>
              <Summary documents={documents} finding={finding} />
              <WorthTable documents={documents} finding={finding} isTyping={isTyping} onRecord={onRecord} />
              <End documents={documents} finding={finding} />
              <WorthLines documents={documents} finding={finding} />
              <Unweighed documents={documents} finding={finding} />
            </div>
          )}
        </>
      ) : (
        <NothingToWeigh documents={documents} />
      )}
      <WorthLimits documents={documents} atMostTests={runDay === "open" ? finding?.atMostTests : undefined} />
    </div>
  );
}

/** What is missing before anything can be weighed, and the way there. */
function NothingToWeigh({ documents: { job } }: { readonly documents: Documents }) {
  const isGarmentMissing = job.lines.length === 0;
  const view = isGarmentMissing ? "garments" : "matrix";
  return (
    <p>
      {isGarmentMissing
        ? "The job has no garment yet, so no test print can be weighed."
        : "The matrix has no mix yet, so no test print can be weighed: add one or let mixes be found."}{" "}
      <a href={printAddress(jobAddress(job.id, view))}>
        {isGarmentMissing ? "Add garments" : "Go to the matrix"}
      </a>
    </p>
  );
}

function Progress({ plan, documents }: { readonly plan: TestPlanState; readonly documents: Documents }) {
  const { isCurrent, failed, first, finding } = plan;
  if (failed) {
    return (
      <Notice kind="problem" announce>
        The test plan could not be made. Reload the page; what you entered is kept.
      </Notice>
    );
  }
  const name = first === null ? null : (namedLine(documents, first)?.name ?? null);
  return (
    <p className="worth__progress" role="status" data-print={isCurrent ? "hide" : undefined}>
      {isCurrent ? "" : planningSentence(name, finding !== null)}
    </p>
  );
}

interface Found {
  readonly documents: Documents;
  readonly finding: TestsFinding;
}

const nameOf = (documents: Documents, at: LineAt) => namedLine(documents, at)?.name ?? "a removed garment";

function Summary({ documents, finding }: Found) {
  const { tests } = finding;
  const { shelf } = documents.library;
  const { currency } = shelf.defaults;
  const first = tests.slice(0, NAMED_FIRST).map((test) => {
    return { name: nameOf(documents, test), mix: recipeName(test.recipe, shelf) };
  });
  return (
    <section className="worth__summary" aria-label="The plan">
      <div className="worth__said">
        {isUnpriced(finding) ? (
          <>
            <h3 className="worth__first">{UNPRICED_HEADLINE}</h3>
            <p>{UNPRICED_SENTENCE}</p>
          </>
        ) : tests.length === 0 ? (
          <h3 className="worth__first">No test print is worth its price now.</h3>
        ) : (
          <>
            <h3 className="worth__first">{firstSentence(headlineNames(first))}</h3>
            <p>{settledSentence(finding)}</p>
          </>
        )}
        <dl className="worth__figures">
          {(isUnpriced(finding) ? [] : worthFigures(finding, currency)).map(({ key, amount, words }) => (
            <div key={key}>
              <dt>{words}</dt>
              <dd className="number">{amount}</dd>
            </div>
          ))}
        </dl>
        <div className="acts">
          {tests.length > 0 && <ActionButton onClick={() => window.print()}>Print this list</ActionButton>}
        </div>
      </div>
      {tests.length > 1 && <WorthCurve tests={tests} />}
    </section>
  );
}

function End({ documents, finding }: Found) {
  const { next, candidateCount } = finding;
  const { currency } = documents.library.shelf.defaults;
  if (candidateCount === 0 || isUnpriced(finding)) return null;
  return (
    <p className="worth__end">
      {endSentence(finding, next === null ? null : nameOf(documents, next), currency)}
    </p>
  );
}

/** What the plan does not speak of: lines that cannot be predicted, places without a mix. */
function Unweighed({ documents, finding }: Found) {
  const { job } = documents;
  const bare = job.places.filter((place) => place.candidates.length === 0 && linesAt(job, place).length > 0);
  const left = finding.left.map((at) => nameOf(documents, at));
  if (bare.length === 0 && left.length === 0) return null;
  return (
    <Notice kind="note">
      {left.length > 0 && <p>{unpredictedSentence(left)}</p>}
      {bare.length > 0 && <p>{unweighedSentence(bare.map(({ name }) => name))}</p>}
    </Notice>
  );
}
