/** The garments that one test print tells something of, with the money; beyond three they are folded away. */
import type { WorthwhileTest } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { namedLine } from "../decisions/namedLine.ts";
import { expectedMoney } from "../words/worthSentences.ts";

const UNFOLDED = 3;
/** Below this part of what the test removes a garment is not named. Invented default. */
const NAMED_FRACTION = 0.01;

interface Props {
  readonly documents: Documents;
  readonly test: WorthwhileTest;
}

export function WorthInforms({ documents, test }: Props) {
  const { currency } = documents.library.shelf.defaults;
  const named = test.informs.flatMap((at) => {
    const found = namedLine(documents, at);
    const isNamed = at.riskRemoved >= NAMED_FRACTION * test.riskRemoved;
    if (found === null || !isNamed) return [];
    const isItself = at.lineId === test.lineId && at.placeId === test.placeId;
    return [
      {
        key: `${at.lineId} ${at.placeId}`,
        words: `${isItself ? "itself" : found.name} ${expectedMoney(at.riskRemoved, currency)}`,
      },
    ];
  });
  const folded = named.slice(UNFOLDED);
  return (
    <>
      <ul className="worth__informs">
        {named.slice(0, UNFOLDED).map(({ key, words }) => (
          <li key={key}>{words}</li>
        ))}
      </ul>
      {folded.length > 0 && (
        <details data-print="hide">
          <summary>and {folded.length} more</summary>
          <ul className="worth__informs">
            {folded.map(({ key, words }) => (
              <li key={key}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
