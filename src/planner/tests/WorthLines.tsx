/** What no test can take away, apart from the list: the garments that carry it, and what would help them. */
import type { LineRisk, TestsFinding } from "../../engine/decisions/decisionProtocol.ts";
import { lineLoss } from "../../job/decisions/lineMoney.ts";
import { LEAST_CHANCE } from "../../job/decisions/verdictOfLine.ts";
import type { Documents } from "../../job/documents.ts";
import { jobAddress, printAddress } from "../address.ts";
import { type NamedLine, namedLine } from "../decisions/namedLine.ts";
import { expectedMoney, othersSentence, staysSentence, staysSummary } from "../words/worthSentences.ts";

interface Props {
  readonly documents: Documents;
  readonly finding: TestsFinding;
}

/** Of the loss of today so much stays: tests hardly change it. Invented default. */
const HARDLY_AVOIDABLE = 0.8;
/** A line that keeps less than this part of all that stays is not named for it. Invented default. */
const NAMED_FRACTION = 0.03;

interface Stays {
  readonly risk: LineRisk;
  readonly named: NamedLine;
  /** In band, were all known that tests can tell. */
  readonly chanceIfKnown: number;
  readonly isServed: boolean;
}

/** The lines by what stays on them, the most first. */
function linesThatKeep(documents: Documents, { lines }: TestsFinding): Stays[] {
  return lines
    .flatMap((risk): Stays[] => {
      const named = namedLine(documents, risk);
      if (named === null) return [];
      const { lossIfOutOfBand } = lineLoss(documents, named.line, 0);
      const chanceIfKnown = lossIfOutOfBand > 0 ? Math.max(0, 1 - risk.lossIfKnown / lossIfOutOfBand) : 1;
      const isServed = Math.max(chanceIfKnown, risk.best.chanceInBand) >= LEAST_CHANCE;
      return [{ risk, named, chanceIfKnown, isServed }];
    })
    .toSorted((one, other) => other.risk.lossIfKnown - one.risk.lossIfKnown);
}

export function WorthLines({ documents, finding }: Props) {
  const { job, library } = documents;
  const { currency } = library.shelf.defaults;
  const stays = linesThatKeep(documents, finding);
  const total = finding.lossNow - finding.avoidable;
  const isTold = ({ risk, isServed }: Stays) =>
    risk.lossIfKnown > NAMED_FRACTION * total &&
    (!isServed || risk.lossIfKnown > HARDLY_AVOIDABLE * risk.lossNow);
  const told = stays.filter(isTold);
  const rest = stays.filter((one) => !isTold(one) && one.risk.lossIfKnown >= 1);
  if (told.length === 0 && rest.length === 0) return null;
  const amount = ({ risk }: Stays) => expectedMoney(risk.lossIfKnown, currency);
  return (
    <section className="worth__stays" aria-labelledby="worth-stays">
      <h3 id="worth-stays">What no test can take away</h3>
      <p>{staysSummary(finding, currency)}</p>
      {told.length > 0 && (
        <ul className="worth__told">
          {told.map((one) => {
            const { lineId, placeId } = one.risk;
            const matrix = printAddress(jobAddress(job.id, "matrix", { line: lineId, place: placeId }));
            return (
              <li key={`${lineId} ${placeId}`}>
                <strong>{one.named.name}</strong>
                <span className="number">{amount(one)}</span>
                <span>{staysSentence(one.risk, one.isServed, one.chanceIfKnown)}</span>
                <a href={matrix} data-print="hide" aria-label={`See ${one.named.name} in the matrix`}>
                  See it in the matrix
                </a>
              </li>
            );
          })}
        </ul>
      )}
      {rest.length > 0 && (
        <p className="quiet">{othersSentence(rest.map((one) => `${one.named.name} ${amount(one)}`))}</p>
      )}
    </section>
  );
}
