/** Everything about the cell that is looked at: change, charts, what the spread is made of, reasons, figures. */

import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { printAddress, useJobAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Teachers } from "../tests/Teachers.tsx";
import { mixHeading } from "../words/mixWords.ts";
import {
  BAND_FOLLOWS_APPROVED,
  bandWords,
  byWeight,
  chanceWords,
  changeWords,
  EVIDENCE_SENTENCES,
  REASON_SENTENCES,
  rangeWords,
  WARNING_SENTENCES,
} from "../words/predictionSentences.ts";
import { sentenceForProblem } from "../words/problemSentences.ts";
import { ChanceBar } from "./CellFace.tsx";
import { CellLoss } from "./CellLoss.tsx";
import { DetailFigures } from "./DetailFigures.tsx";
import { depositWords } from "./depositWords.ts";
import { KnitSwatch } from "./KnitSwatch.tsx";
import type { MatrixCandidate, MatrixLine } from "./matrixInputs.ts";
import { garmentTitle } from "./RowHead.tsx";
import { SpectrumChart, spectrumSummary } from "./SpectrumChart.tsx";
import { SpreadParts } from "./SpreadParts.tsx";
import { TintChart, tintSummary } from "./TintChart.tsx";
import { tintFraction, tintOf } from "./tintEdit.ts";
import type { ShownDetail } from "./useCellDetail.ts";

const SWATCH = { widthPx: 352, heightPx: 112 };

interface Props {
  readonly documents: Documents;
  readonly line: MatrixLine;
  readonly column: MatrixCandidate;
  readonly place: Place;
  readonly shown: ShownDetail | null;
  readonly hasFailed: boolean;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
  readonly onUnchoose: () => void;
  readonly onClose: () => void;
}

export function DetailPane(props: Props) {
  const { documents, line, column, shown, hasFailed, isChosen } = props;
  const { shelf } = documents.library;
  const { address } = useJobAddress();
  const isBehind =
    shown !== null && (shown.lineId !== line.line.id || shown.candidateId !== column.candidate.id);
  const { mix } = column;
  const heading = mix === null ? null : mixHeading(mix, shelf);
  const problems = [...line.problems, ...column.problems];
  return (
    <section className="pane panel detail" aria-label="The cell looked at" aria-busy={isBehind}>
      <div className="pane__head">
        <div>
          <h2 tabIndex={-1}>
            {garmentTitle(line.lot)}
            {line.lot !== null && line.lot.mill !== "" && `, ${line.lot.mill}`}
          </h2>
          <p>
            {heading?.title}, {heading?.recipe}
          </p>
          {column.setUp !== null && column.application !== null && (
            <p className="quiet">
              {column.setUp.name}; {depositWords(column.application, column.setUp, shelf.defaults.units)}
            </p>
          )}
        </div>
        <div className="pane__actions">
          {isChosen ? (
            <ActionButton onClick={props.onUnchoose}>Take the choice back</ActionButton>
          ) : (
            <ActionButton weight="strong" disabled={problems.length > 0} onClick={props.onChoose}>
              Choose this mix
            </ActionButton>
          )}
          <a
            className="action action--normal"
            href={printAddress({ ...address, view: "tests", tab: "record" })}
          >
            Record a test print
          </a>
          <ActionButton onClick={props.onClose}>Close</ActionButton>
        </div>
      </div>
      {problems.map((problem) => (
        <p key={`${problem.code} ${problem.where}`}>! {sentenceForProblem(problem)}</p>
      ))}
      {problems.length === 0 && shown === null && (
        <p role="status">
          {hasFailed ? "! The details could not be predicted. Reload the page." : "Predicting…"}
        </p>
      )}
      {problems.length === 0 && shown !== null && <Detail {...props} shown={shown} />}
    </section>
  );
}

function Detail({ documents, line, column, place, shown }: Props & { readonly shown: ShownDetail }) {
  const { job, library } = documents;
  const { shelf } = library;
  const { detail } = shown;
  const { prediction, tintCurve } = detail;
  const { spread } = prediction;
  const change = { deltaL: prediction.deltaL, deltaL5: spread.p5.deltaL, deltaL95: spread.p95.deltaL };
  const warnings = detail.screenColourMoved
    ? [...new Set([...prediction.warnings, "screen-colour-moved" as const])]
    : prediction.warnings;
  const colourant = column.mix === null ? null : tintOf(column.mix, shelf);
  const present = column.mix === null || colourant === null ? 0 : tintFraction(column.mix, colourant.id);
  const tintName = colourant?.name.toLowerCase() ?? "tint";
  return (
    <div className="detail__blocks">
      <div className="detail__cloth surround">
        <KnitSwatch
          {...SWATCH}
          bareHex={detail.bareHex}
          lightHex={detail.lightHex}
          darkHex={detail.darkHex}
          evidence={prediction.evidence}
        />
        <p className="detail__ends" aria-hidden="true">
          <span>light end</span>
          <span>dark end</span>
        </p>
      </div>
      <div>
        <p className="detail__change">
          <span className="detail__number">{changeWords(change.deltaL)}</span>
          <span>{rangeWords(change)} in nine of ten</span>
        </p>
        <p className="cell__chance">
          <ChanceBar chance={spread.chanceInBand} />
          <span>
            {chanceWords(spread.chanceInBand)} in band, {bandWords(line.band)}
          </span>
        </p>
        <p>
          <span className="evidence" data-evidence={prediction.evidence}>
            {prediction.evidence}
          </span>
        </p>
        <CellLoss documents={documents} line={line.line} chanceInBand={spread.chanceInBand} />
      </div>
      <ul className="detail__sentences">
        <li>{EVIDENCE_SENTENCES[prediction.evidence]}</li>
        {line.band.deltaL !== place.band.deltaL && <li>{BAND_FOLLOWS_APPROVED}</li>}
        {prediction.reasons.map((reason) => (
          <li key={reason}>{REASON_SENTENCES[reason]}</li>
        ))}
        {byWeight(warnings).map(({ warning, isLoud }) => (
          <li key={warning} className={isLoud ? "detail__warning" : undefined}>
            {isLoud && "! "}
            {WARNING_SENTENCES[warning]}
          </li>
        ))}
      </ul>
      <Teachers line={line} column={column} viewing={job.viewing} evidence={prediction.evidence} />
      {tintCurve.length > 1 && (
        <figure>
          <figcaption>
            <h3>With more or less {tintName}</h3>
          </figcaption>
          <TintChart
            curve={tintCurve}
            band={line.band}
            tintName={tintName}
            presentFraction={present}
            presentDeltaL={prediction.deltaL}
          />
          <p className="detail__summary">{tintSummary({ curve: tintCurve, band: line.band, tintName })}</p>
        </figure>
      )}
      <div>
        <h3>What the spread is made of</h3>
        <p className="detail__summary">Each unknown's share of the variance of ΔL*.</p>
        <SpreadParts sources={spread.sources} />
      </div>
      <figure>
        <figcaption>
          <h3>Bare and printed spectrum</h3>
        </figcaption>
        <SpectrumChart {...prediction} />
        <p className="detail__summary">{spectrumSummary(prediction)}</p>
      </figure>
      <div>
        <h3>Figures</h3>
        <DetailFigures prediction={prediction} viewing={job.viewing} />
      </div>
    </div>
  );
}
