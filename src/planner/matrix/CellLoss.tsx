/** What the line may lose in refused pieces with the cell's print, in money, with all that it is made of open to edit. */
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import type { Documents } from "../../job/documents.ts";
import type { Line } from "../../job/jobDocument.ts";
import { LossFigures } from "../decisions/LossFigures.tsx";
import { lossMadeOf } from "../words/lossSentences.ts";
import { moneyWords } from "../words/moneyWords.ts";

interface Props {
  readonly documents: Documents;
  readonly line: Line;
  readonly chanceInBand: number;
}

export function CellLoss({ documents, line, chanceInBand }: Props) {
  const { currency } = documents.library.shelf.defaults;
  const loss = lineLoss(documents, line, chanceInBand);
  return (
    <div className="detail__loss">
      <p>
        <span className="number">{moneyWords(loss.expectedLoss, currency)}</span> expected loss
      </p>
      <p className="detail__summary">{lossMadeOf(loss, currency)}</p>
      <LossFigures documents={documents} line={line} />
    </div>
  );
}
