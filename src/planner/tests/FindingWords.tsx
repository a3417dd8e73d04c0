/** What a reading says, at once: found against expected, what it teaches, what looks wrong. */

import type { ViewingDocument } from "../../job/colourDocument.ts";
import type { Problem } from "../../job/problem.ts";
import { readingMeans } from "../../job/readingMeans.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { Notice } from "../controls/Notice.tsx";
import {
  byEyeResidualSentence,
  expectedWords,
  residualSentence,
  suspicionSentence,
  teachingSentences,
} from "../words/findingSentences.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { changeWords } from "../words/predictionSentences.ts";
import { byEyeWords, readingsWords } from "../words/testsWords.ts";
import type { FindingState } from "./useFinding.ts";

interface Props {
  readonly print: TestPrint;
  readonly finding: FindingState;
  /** Light and observer that spectra are seen under. */
  readonly viewing: ViewingDocument;
}

export function FindingWords({ print, finding, viewing }: Props) {
  const { readings } = print;
  const means = readings.kind === "by-eye" ? null : readingMeans(readings, viewing);
  const deltaL = means === null ? null : means.print.L - means.bare.L;
  return (
    <div className="tests__finding">
      <p>
        <span className="tests__found">
          {readings.kind === "by-eye" ? byEyeWords(readings) : changeWords(deltaL ?? 0)}
        </span>{" "}
        found, {readingsWords(readings)}.
      </p>
      {finding.kind === "refused" && <Refused problems={finding.problems} />}
      {finding.kind === "failed" && <p>! The engine could not answer. Reload the page.</p>}
      {finding.kind === "asking" && <p role="status">Comparing…</p>}
      {finding.kind === "found" && (
        <>
          <p>
            Expected from everything else: {expectedWords(finding.finding.expected)},{" "}
            <span className="evidence" data-evidence={finding.finding.expected.evidence}>
              {finding.finding.expected.evidence}
            </span>
            .
          </p>
          <p>
            {readings.kind === "by-eye"
              ? byEyeResidualSentence(readings.grade, finding.finding.expected)
              : residualSentence(deltaL ?? 0, finding.finding.expected)}
          </p>
          {teachingSentences(finding.finding).map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
          {finding.finding.suspicion !== null && (
            <Notice kind="caution">{suspicionSentence(finding.finding.suspicion)}</Notice>
          )}
          {finding.finding.afterwards !== null && (
            <p className="quiet">
              With this record, the same print is expected {expectedWords(finding.finding.afterwards)}.
            </p>
          )}
        </>
      )}
    </div>
  );
}

function Refused({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <Notice kind="caution">
      <p>It can be kept, and teaches nothing as long as this stands:</p>
      <ProblemList problems={problems} />
    </Notice>
  );
}
