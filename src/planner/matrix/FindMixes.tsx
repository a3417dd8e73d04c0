/** The panel of the mix search: its rules, how far it is, what it found, and what the money rests on. */
import { useMemo } from "react";
import type { Documents } from "../../job/documents.ts";
import { setMixRules } from "../../job/edits/places.ts";
import type { Place, MixRules as Rules } from "../../job/jobDocument.ts";
import { linesAt } from "../../job/lookup.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { LossFigures } from "../decisions/LossFigures.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import {
  faultSentence,
  headlineWords,
  IMPOSSIBLE_SENTENCE,
  NONE_FOUND_SENTENCE,
  progressWords,
} from "../words/mixSearchSentences.ts";
import { MixRules } from "./MixRules.tsx";
import { Proposal } from "./Proposal.tsx";
import { mixNames, proposalOutline } from "./proposalOutline.ts";
import { RuledMixes } from "./RuledMixes.tsx";
import type { MixSearch, SearchState } from "./useMixSearch.ts";
import "./findMixes.css";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly search: MixSearch;
  /** Opens the target band. */
  readonly onTarget: () => void;
  readonly onClose: () => void;
}

export function FindMixes({ documents, place, search, onTarget, onClose }: Props) {
  const edit = usePlanner((state) => state.edit);
  const nameOf = useMemo(() => mixNames(documents), [documents]);
  const { state, start, stop } = search;
  const garmentCount = linesAt(documents.job, place).length;
  const onRules = (change: (rules: Rules) => Rules) =>
    edit((now) => {
      const rules = now.job.places.find(({ id }) => id === place.id)?.mixRules;
      return rules === undefined ? now : setMixRules(now, place.id, change(rules));
    });
  return (
    <section className="matrix__panel panel find-mixes" aria-label={`Find mixes, ${place.name}`}>
      <div className="find-mixes__ask">
        <MixRules place={place} onRules={onRules} />
        <div className="find-mixes__acts">
          {state.is === "running" ? (
            <ActionButton weight="strong" onClick={stop}>
              Stop the search
            </ActionButton>
          ) : (
            <ActionButton
              weight={state.is === "found" ? "normal" : "strong"}
              disabled={garmentCount === 0}
              onClick={start}
            >
              {state.is === "idle" ? "Start the search" : "Search again"}
            </ActionButton>
          )}
          <ActionButton onClick={onClose}>Close</ActionButton>
        </div>
        <RuledMixes documents={documents} place={place} nameOf={nameOf} onRules={onRules} />
      </div>
      <div className="find-mixes__progress">
        {state.is === "running" && (
          <progress
            aria-label="Mix search"
            {...(state.progress.stage === "predicting" ? { value: state.progress.doneFraction ?? 0 } : {})}
          />
        )}
        <p role="status" className={state.is === "found" ? "unseen" : undefined}>
          {stateWords(state, garmentCount)}
        </p>
      </div>
      {state.is === "failed" && (
        <Notice kind="problem" announce>
          <p>The search failed: {state.words}. Nothing in the job was changed; search again.</p>
        </Notice>
      )}
      {state.is === "refused" && (
        <Notice kind="problem" announce>
          {state.answer.faults.map((fault) => (
            <p key={JSON.stringify(fault)}>{faultSentence(fault, nameOf)}</p>
          ))}
          {state.answer.faults.length === 0 && (
            <p>{state.answer.impossible ? IMPOSSIBLE_SENTENCE : NONE_FOUND_SENTENCE}</p>
          )}
        </Notice>
      )}
      {state.is === "found" && (
        <Proposal
          documents={documents}
          place={place}
          found={state}
          search={search}
          nameOf={nameOf}
          onRules={onRules}
          onTarget={onTarget}
        />
      )}
      <LossFigures documents={documents} />
    </section>
  );
}

/** What a screen reader hears of the search; what was found the sighted read below. */
function stateWords(state: SearchState, garmentCount: number): string {
  if (state.is === "running") return progressWords(state.progress, garmentCount);
  if (state.is === "stopped") return "Stopped. Nothing was changed.";
  if (state.is === "found") {
    const { finding, documents } = state;
    return `Found: ${headlineWords(proposalOutline(finding, documents))}.`;
  }
  return "";
}
