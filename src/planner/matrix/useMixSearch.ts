/** A mix search of one place as it runs: how far it is, its answer, and whether the job has moved on since. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { RunningSearch } from "../../engine/decisions/decisionEngine.ts";
import type { MixAnswer, MixFinding, SearchProgress } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { useDecisions } from "../services.tsx";
import type { BasisPart } from "../words/mixSearchSentences.ts";
import { changedParts, type ProposalBasis, proposalBasis } from "./proposalBasis.ts";

export type SearchState =
  | { readonly is: "idle" | "stopped" }
  | { readonly is: "running"; readonly progress: SearchProgress }
  | { readonly is: "failed"; readonly words: string }
  | { readonly is: "refused"; readonly answer: Extract<MixAnswer, { ok: false }> }
  | {
      readonly is: "found";
      readonly finding: MixFinding;
      /** As they were when it was asked. */
      readonly documents: Documents;
      /** What it holds for: as asked, and as its own use left the job. */
      readonly bases: readonly ProposalBasis[];
    };

export interface MixSearch {
  readonly state: SearchState;
  /** What changed since the answer; empty while it holds. */
  readonly stale: readonly BasisPart[];
  readonly start: () => void;
  readonly stop: () => void;
  /** The answer holds for these documents too: they are what using it made. */
  readonly accept: (documents: Documents) => void;
}

const BEGINNING: SearchProgress = { stage: "predicting", doneFraction: 0 };
const NOTHING_CHANGED: readonly BasisPart[] = [];

export function useMixSearch(documents: Documents, placeId: string): MixSearch {
  const decisions = useDecisions();
  const [state, setState] = useState<SearchState>({ is: "idle" });
  const running = useRef<RunningSearch | null>(null);
  const stop = useCallback(() => {
    if (running.current === null) return;
    running.current.cancel();
    running.current = null;
    setState({ is: "stopped" });
  }, []);
  // Nobody waits for the answer of a place that was left.
  useEffect(() => stop, [stop]);

  const start = () => {
    running.current?.cancel();
    setState({ is: "running", progress: BEGINNING });
    const search = decisions.findMixes(documents, placeId, (progress) => {
      if (running.current === search) setState({ is: "running", progress });
    });
    running.current = search;
    const end = (next: SearchState) => {
      if (running.current !== search) return;
      running.current = null;
      setState(next);
    };
    search.answer.then(
      (answer) => {
        if (answer === null) return end({ is: "stopped" });
        if (!answer.ok) return end({ is: "refused", answer });
        const basis = proposalBasis(documents, placeId);
        end({ is: "found", finding: answer, documents, bases: basis === null ? [] : [basis] });
      },
      (error) => end({ is: "failed", words: error instanceof Error ? error.message : String(error) }),
    );
  };
  const accept = useCallback(
    (left: Documents) => {
      const basis = proposalBasis(left, placeId);
      setState((now) =>
        now.is === "found" && basis !== null ? { ...now, bases: [...now.bases, basis] } : now,
      );
    },
    [placeId],
  );
  const bases = state.is === "found" ? state.bases : null;
  const stale = useMemo(
    () => (bases === null ? NOTHING_CHANGED : changedParts(bases, documents, placeId)),
    [bases, documents, placeId],
  );
  return { state, stale, start, stop, accept };
}
