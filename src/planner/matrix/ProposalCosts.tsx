/** What a proposal costs, part by part, beside what is chosen now. */
import type { MixCost } from "../../core/planning/decisions/mixProgram.ts";
import type { MixFinding } from "../../engine/decisions/decisionProtocol.ts";
import { comparedSentence, savedWords } from "../words/mixSearchSentences.ts";
import { moneyWords } from "../words/moneyWords.ts";
import type { ProposalOutline } from "./proposalOutline.ts";

interface Props {
  readonly finding: MixFinding;
  readonly outline: ProposalOutline;
  readonly currency: string;
}

export function ProposalCosts({ finding, outline, currency }: Props) {
  const { proposal, cost } = finding;
  const { comparedCount, servedCount } = outline;
  const isComparedInFull = comparedCount === servedCount;
  // Where all is compared, a kept mix that serves none counts too.
  const proposed = isComparedInFull ? cost : proposal.proposedCost;
  const rows: readonly { readonly part: keyof MixCost; readonly words: string }[] = [
    { part: "mixes", words: "Mixes opened" },
    { part: "setUps", words: "Screens" },
    { part: "ink", words: "Ink" },
    { part: "expectedLoss", words: "Expected loss" },
    { part: "total", words: "Total" },
  ];
  const note = comparedSentence(comparedCount, servedCount);
  return (
    <div className="proposal__costs">
      <table>
        <caption className="unseen">What it costs</caption>
        <thead>
          <tr>
            <th scope="col">{currency === "" ? <span className="unseen">Cost</span> : currency}</th>
            {!isComparedInFull && <th scope="col">all {servedCount}</th>}
            {comparedCount > 0 && (
              <>
                <th scope="col">now</th>
                <th scope="col">proposed</th>
                <th scope="col">saved</th>
              </>
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ part, words }) => (
            <tr key={part} data-part={part}>
              <th scope="row">{words}</th>
              {!isComparedInFull && <td>{moneyWords(cost[part], "")}</td>}
              {comparedCount > 0 && (
                <>
                  <td>{moneyWords(proposal.presentCost[part], "")}</td>
                  <td>{moneyWords(proposed[part], "")}</td>
                  <td>{savedWords(proposal.presentCost[part] - proposed[part])}</td>
                </>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {note !== null && <p className="quiet">{note}</p>}
    </div>
  );
}
