/** The figures of a prediction as an instrument would show them. */
import type { Prediction } from "../../core/prediction/prediction.ts";
import type { ViewingDocument } from "../../job/colourDocument.ts";
import { labFigure, viewingWords } from "../words/garmentWords.ts";

interface Props {
  readonly prediction: Prediction;
  readonly viewing: ViewingDocument;
}

export function DetailFigures({ prediction, viewing }: Props) {
  const { bare, printed, spread } = prediction;
  const differences: readonly (readonly [string, string])[] = [
    ["ΔL*", labFigure(prediction.deltaL)],
    ["ΔE00", labFigure(prediction.deltaE00)],
    ["ΔC*", labFigure(prediction.deltaChroma)],
    ["ΔH*", labFigure(prediction.deltaHue)],
    ["grey scale", prediction.greyScaleGrade],
  ];
  const rows = [
    ["bare", bare],
    ["printed", printed],
    ["light end", spread.p95.lab],
    ["dark end", spread.p5.lab],
  ] as const;
  return (
    <div className="figures">
      <table className="figures__lab">
        <caption className="entry__label">{viewingWords(viewing)}, one decimal</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="unseen">Colour</span>
            </th>
            <th scope="col">L*</th>
            <th scope="col">a*</th>
            <th scope="col">b*</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([words, lab]) => (
            <tr key={words}>
              <th scope="row">{words}</th>
              <td>{labFigure(lab.L)}</td>
              <td>{labFigure(lab.a)}</td>
              <td>{labFigure(lab.b)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <dl className="figures__differences">
        {differences.map(([words, figure]) => (
          <div key={words}>
            <dt>{words}</dt>
            <dd>{figure}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
