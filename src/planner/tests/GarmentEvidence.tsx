/** One garment under one base: its curve before and after the prints, in words too, and the records it rests on. */
import type { Documents } from "../../job/documents.ts";
import { lotReadings } from "../../job/recordBook/lotReadings.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { useScreenGamut } from "../look/screenGamut.ts";
import type { MatrixCandidate, MatrixLine } from "../matrix/matrixInputs.ts";
import { tintOf } from "../matrix/tintEdit.ts";
import { useCellDetail } from "../matrix/useCellDetail.ts";
import { useEngine } from "../services.tsx";
import { curveSentence, wouldTeachSentence } from "../words/curveSentences.ts";
import { bandWords, chanceWords, changeSentence, EVIDENCE_SENTENCES } from "../words/predictionSentences.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import { LearnedChart } from "./LearnedChart.tsx";
import { foundWords } from "./RecordTable.tsx";
import { recordName } from "./recordName.ts";
import { Teachers } from "./Teachers.tsx";

interface Props {
  readonly documents: Documents;
  readonly line: MatrixLine;
  readonly column: MatrixCandidate;
  readonly onOpen: (recordId: string) => void;
}

export function GarmentEvidence({ documents, line, column, onOpen }: Props) {
  const engine = useEngine();
  const { job, library } = documents;
  const { shelf } = library;
  const gamut = useScreenGamut();
  const { shown, hasFailed } = useCellDetail(engine, {
    line,
    column,
    viewing: job.viewing,
    band: line.band,
    gamut,
    shelf,
  });
  const tint = column.mix === null ? null : tintOf(column.mix, shelf);
  const problems = [...line.problems, ...column.problems];
  if (problems.length > 0 || column.mix === null) {
    return problems.map((problem) => (
      <p key={`${problem.code} ${problem.where}`}>! {sentenceForProblem(problem)}</p>
    ));
  }
  const isCurrent = shown?.lineId === line.line.id && shown.candidateId === column.candidate.id;
  if (shown === null || !isCurrent) {
    return (
      <p role="status">
        {hasFailed ? "! This garment could not be predicted. Reload the page." : "Predicting…"}
      </p>
    );
  }
  const { prediction, tintCurve, priorCurve } = shown.detail;
  const { spread } = prediction;
  const { points, otherCount } = lotReadings(
    library,
    line.line.garmentLotId,
    { recipe: column.mix.recipe, setUpId: column.candidate.setUpId, tintId: tint?.id ?? null },
    job.viewing,
  );
  const wouldTeach = wouldTeachSentence(prediction.reasons);
  return (
    <div className="tests__evidence">
      <p className="tests__now">
        <span className="evidence" data-evidence={prediction.evidence}>
          {prediction.evidence}
        </span>{" "}
        {changeSentence({
          deltaL: prediction.deltaL,
          deltaL5: spread.p5.deltaL,
          deltaL95: spread.p95.deltaL,
        })}{" "}
        Chance of {bandWords(line.band)}: {chanceWords(spread.chanceInBand)}.
      </p>
      <p>{EVIDENCE_SENTENCES[prediction.evidence]}</p>
      <Teachers line={line} column={column} viewing={job.viewing} evidence={prediction.evidence} />
      {wouldTeach !== null && <p>{wouldTeach}</p>}
      {tintCurve.length > 1 && (
        <figure>
          <LearnedChart
            curve={tintCurve}
            prior={priorCurve}
            points={points}
            band={line.band}
            tintName={tint?.name.toLowerCase() ?? "tint"}
          />
          <figcaption>{curveSentence(tintCurve, priorCurve, points)}</figcaption>
        </figure>
      )}
      {otherCount > 0 && (
        <p className="quiet">
          {otherCount === 1 ? "One more print" : `${otherCount} more prints`} of this lot, with another base
          or set-up, another light or by eye, {otherCount === 1 ? "is" : "are"} not drawn.
        </p>
      )}
      {points.length > 0 && (
        <ul className="tests__others" data-print="hide">
          {points.map(({ record }) => (
            <li key={record.id}>
              <ActionButton weight="plain" onClick={() => onOpen(record.id)}>
                Open the record: {foundWords(record, library)}, {recordName(library, record).day}
              </ActionButton>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
