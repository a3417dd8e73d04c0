/** Takes a proposal over, whole or for one garment: one undo step, said afterwards, and undone from where it is said. */
import { useState } from "react";
import { applyProposal } from "../../job/edits/proposal.ts";
import { newId } from "../state/identity.ts";
import type { Undoable } from "../state/undoableParts.ts";
import { usePlanner, usePlannerStore } from "../state/usePlanner.ts";
import { appliedSentence } from "../words/mixSearchSentences.ts";
import { recipeName } from "../words/mixWords.ts";
import type { ProposedMix, ProposedPrint } from "./proposalOutline.ts";
import type { MixSearch } from "./useMixSearch.ts";

export interface ProposalUse {
  readonly use: (prints: readonly ProposedPrint[]) => void;
  /** What the last use did; null where something else was done since. */
  readonly said: string | null;
  readonly undo: () => void;
}

export function useProposal(
  placeId: string,
  mixes: readonly ProposedMix[],
  accept: MixSearch["accept"],
): ProposalUse {
  const store = usePlannerStore();
  const edit = usePlanner((state) => state.edit);
  const undo = usePlanner((state) => state.undo);
  const undoable = usePlanner((state) => state.undoable);
  const [used, setUsed] = useState<{ readonly left: Undoable | null; readonly said: string } | null>(null);

  const use = (prints: readonly ProposedPrint[]) => {
    const before = store.getState().documents?.job.mixes.length ?? 0;
    edit((now) => {
      const changes = prints.flatMap(({ garmentId, to }) => {
        const mix = mixes.find(({ key }) => key === to.mixId)?.mix;
        if (mix === null || mix === undefined) return [];
        const { recipe, jobMixId } = mix;
        const mixName = recipeName(recipe, now.library.shelf);
        const ids = { newMixId: newId(), newCandidateId: newId() };
        return [{ lineId: garmentId, recipe, jobMixId, mixName, setUpId: to.setUpId, ...ids }];
      });
      return applyProposal(now, placeId, changes);
    });
    const { documents, undoable: left } = store.getState();
    if (documents === null) return;
    accept(documents);
    setUsed({ left, said: appliedSentence(prints.length, documents.job.mixes.length - before) });
  };
  return { use, said: used !== null && used.left === undoable ? used.said : null, undo };
}
