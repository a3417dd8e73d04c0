/** What a mix search was asked about, so that it is known when the job has moved on from its answer. */
import type { Documents } from "../../job/documents.ts";
import { mixOf } from "../../job/lookup.ts";
import { sameValue } from "../../job/sameValue.ts";
import type { BasisPart } from "../words/mixSearchSentences.ts";

export type ProposalBasis = Readonly<Record<BasisPart, unknown>>;

/** The parts of the documents that a search of the place depends on; null where the place is gone. */
export function proposalBasis({ job, library }: Documents, placeId: string): ProposalBasis | null {
  const place = job.places.find(({ id }) => id === placeId);
  if (place === undefined) return null;
  const { name: _name, candidates, lineIds, mixRules, id: _id, ...print } = place;
  return {
    garments: [job.lines, lineIds, library.garmentLots],
    target: print,
    light: job.viewing,
    mixes: [candidates, candidates.map(({ mixId }) => mixOf(job, mixId))],
    choices: job.choices.filter((choice) => choice.placeId === placeId),
    rules: mixRules,
    records: [library.testPrints, library.approvals, library.goodsInChecks, library.slipAnswers],
    shelf: library.shelf,
  };
}

/** The parts that differ from the nearest of `bases`; none where one of them holds. */
export function changedParts(
  bases: readonly ProposalBasis[],
  documents: Documents,
  placeId: string,
): readonly BasisPart[] {
  const now = proposalBasis(documents, placeId);
  if (now === null) return ["target"];
  const parts = Object.keys(now) as BasisPart[];
  return bases
    .map((basis) => parts.filter((part) => !sameValue(basis[part], now[part])))
    .reduce((fewest, changed) => (changed.length < fewest.length ? changed : fewest), parts);
}
