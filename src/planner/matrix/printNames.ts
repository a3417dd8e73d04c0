/** Garments, set-ups and present choices of a place in words, for a proposal that speaks of them by id. */
import { approvedReference } from "../../job/approvedReference.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { chosenCandidate, lotOfLine, mixOf, setUpOf } from "../../job/lookup.ts";
import { isSameRecipe } from "../../job/recipeParts.ts";
import { mixName } from "../words/mixWords.ts";
import { keyOfMix, type ProposedPrint } from "./proposalOutline.ts";

export interface PrintNow {
  readonly words: string;
  /** What is proposed is what is chosen. */
  readonly isInUse: boolean;
  /** The customer approved a print of the mix that is chosen, and another one is proposed. */
  readonly isApproved: boolean;
}

export interface PrintNames {
  readonly garment: (lineId: string) => string;
  readonly setUp: (setUpId: string) => string;
  readonly now: (print: ProposedPrint) => PrintNow;
}

/** @param nameOf a mix by its key */
export function printNames(documents: Documents, place: Place, nameOf: (key: string) => string): PrintNames {
  const { job, library } = documents;
  const { shelf } = library;
  const lotOf = (lineId: string) => {
    const line = job.lines.find(({ id }) => id === lineId);
    return line === undefined ? null : lotOfLine(documents, line);
  };
  const setUp = (setUpId: string) => setUpOf(shelf, setUpId)?.name ?? "a set-up no longer on the shelf";
  return {
    garment: (lineId) => {
      const lot = lotOf(lineId);
      return lot === null ? "Unknown garment" : lineName(lot);
    },
    setUp,
    now: ({ garmentId, from, to }) => {
      const candidate = chosenCandidate(job, garmentId, place.id);
      const mix = candidate === null ? null : mixOf(job, candidate.mixId);
      if (candidate === null || mix === null) {
        return { words: "nothing chosen yet", isInUse: false, isApproved: false };
      }
      if (candidate.setUpId === to.setUpId && keyOfMix(mix, shelf) === to.mixId) {
        const words = from === null ? "" : `before: ${nameOf(from.mixId)}, ${setUp(from.setUpId)}`;
        return { words, isInUse: true, isApproved: false };
      }
      const approved = approvedReference(library, lotOf(garmentId)?.id ?? "");
      return {
        words: `now: ${mixName(mix, shelf)}, ${setUp(candidate.setUpId)}`,
        isInUse: false,
        isApproved:
          approved !== null &&
          approved.approval !== null &&
          isSameRecipe(approved.testPrint.recipe, mix.recipe),
      };
    },
  };
}
