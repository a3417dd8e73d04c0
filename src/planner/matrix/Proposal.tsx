/** What a mix search found, against what is chosen now: the outcome, its cost, whom it serves, and the button to use it. */
import { useMemo } from "react";
import type { Documents } from "../../job/documents.ts";
import type { MixRules, Place } from "../../job/jobDocument.ts";
import { linesAt } from "../../job/lookup.ts";
import { jobAddress, printAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { useLostFocus } from "../controls/useLostFocus.ts";
import { listed } from "../words/listed.ts";
import {
  approvedSentence,
  headlineWords,
  isLossUnpriced,
  LOSS_UNPRICED_SENTENCE,
  nothingWeighedSentence,
  piecesUnpricedSentence,
  provenSentence,
  staleSentence,
  unpricedSentence,
  weighedSentence,
  whatUseDoes,
} from "../words/mixSearchSentences.ts";
import { ProposalCosts } from "./ProposalCosts.tsx";
import { ProposedMixes } from "./ProposedMixes.tsx";
import { printNames } from "./printNames.ts";
import { proposalOutline } from "./proposalOutline.ts";
import { UnservedLines } from "./UnservedLines.tsx";
import type { MixSearch, SearchState } from "./useMixSearch.ts";
import { useProposal } from "./useProposal.ts";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly found: Extract<SearchState, { is: "found" }>;
  readonly search: MixSearch;
  readonly nameOf: (key: string) => string;
  readonly onRules: (change: (rules: MixRules) => MixRules) => void;
  readonly onTarget: () => void;
}

export function Proposal({ documents, place, found, search, nameOf, onRules, onTarget }: Props) {
  const { finding } = found;
  const { proposal } = finding;
  const outline = useMemo(() => proposalOutline(finding, found.documents), [finding, found.documents]);
  const { mixes, unpriced, changeCount } = outline;
  const { use, said, undo } = useProposal(place.id, mixes, search.accept);
  const { currency } = documents.library.shelf.defaults;
  const nothing = nothingWeighedSentence(finding, documents.library.shelf);
  const lossUnpriced = isLossUnpriced(finding);
  const isStale = search.stale.length > 0;
  const names = printNames(documents, place, nameOf);
  const open = mixes.flatMap(({ prints }) => prints).filter((print) => !names.now(print).isInUse);
  // The button that was pressed goes with its use, and comes back with its undoing.
  const part = useLostFocus<HTMLElement>(".proposal__acts button", `${open.length} ${said ?? ""}`);
  const approvedCount = open.filter((print) => names.now(print).isApproved).length;
  const noPrice = linesAt(documents.job, place).filter(({ piecePrice }) => piecePrice === null);
  const differences = [
    proposal.mixesDropped.length > 0 && `No longer printed: ${listed(proposal.mixesDropped.map(nameOf))}.`,
    proposal.setUpsAdded.length > 0 && `Screens to add: ${listed(proposal.setUpsAdded.map(names.setUp))}.`,
    proposal.setUpsDropped.length > 0 &&
      `Screens not needed: ${listed(proposal.setUpsDropped.map(names.setUp))}.`,
    unpriced.length > 0 && unpricedSentence(unpriced),
    noPrice.length > 0 && piecesUnpricedSentence(noPrice.map(({ id }) => names.garment(id))),
  ].filter((words) => words !== false);
  return (
    <section ref={part} className="proposal" aria-label="What the search found" data-stale={isStale}>
      <div className="proposal__head">
        <div className="proposal__outcome">
          <h3 className="number">{headlineWords(outline)}</h3>
          <p>
            {outline.servedCount > 0 && !lossUnpriced && `${provenSentence(finding)} `}
            <span className="quiet">{weighedSentence(finding)}</span>
          </p>
          {nothing !== null && (
            <p>
              {nothing} <a href={printAddress(jobAddress(documents.job.id, "shelf"))}>Open the shelf</a>
            </p>
          )}
          {nothing === null && differences.length > 0 && <p>{differences.join(" ")}</p>}
          {lossUnpriced && (
            <Notice kind="caution">
              <p>{LOSS_UNPRICED_SENTENCE}</p>
            </Notice>
          )}
          {isStale && (
            <Notice kind="caution" announce>
              <p>{staleSentence(search.stale)}</p>
              <ActionButton weight="strong" onClick={search.start}>
                Search again
              </ActionButton>
            </Notice>
          )}
          {!isStale && open.length > 0 && (
            <div className="proposal__acts">
              <ActionButton weight="strong" onClick={() => use(open)}>
                Use this proposal
              </ActionButton>
              <span className="quiet">{whatUseDoes(open.length, changeCount)}</span>
              {approvedCount > 0 && <span>{approvedSentence(approvedCount)}</span>}
            </div>
          )}
          {open.length === 0 && outline.servedCount > 0 && said === null && (
            <p>All that is proposed is chosen.</p>
          )}
          <div className="proposal__acts" role="status">
            {said !== null && (
              <>
                <span>{said}</span>
                <ActionButton onClick={undo}>Undo this</ActionButton>
              </>
            )}
          </div>
        </div>
        {outline.servedCount > 0 && <ProposalCosts finding={finding} outline={outline} currency={currency} />}
      </div>
      {nothing === null && finding.unserved.length > 0 && (
        <UnservedLines
          documents={documents}
          place={place}
          unserved={finding.unserved}
          nameOf={nameOf}
          onRules={onRules}
          onTarget={onTarget}
        />
      )}
      {mixes.length > 0 && (
        <ProposedMixes
          documents={documents}
          place={place}
          mixes={mixes}
          nameOf={nameOf}
          onRules={onRules}
          onUse={isStale ? null : (print) => use([print])}
        />
      )}
    </section>
  );
}
