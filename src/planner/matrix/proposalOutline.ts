/** A proposal as it is read: by mix, with the garments on each, and the counts of its headline. */
import type { GarmentChange } from "../../core/planning/decisions/mixProposal.ts";
import type { MixOption } from "../../core/planning/decisions/mixSearch.ts";
import type { FoundMix, MixFinding } from "../../engine/decisions/decisionProtocol.ts";
import { candidateOf } from "../../job/decisions/mixCandidates.ts";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { chosenCandidate, linesAt, mixOf } from "../../job/lookup.ts";
import type { Mix } from "../../job/mixDocument.ts";
import { recipeOfKey } from "../../job/recipeKey.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import type { Served } from "../words/mixSearchSentences.ts";
import { mixName, recipeName } from "../words/mixWords.ts";

/** A garment that the proposal gives another print than it has. */
export interface ProposedPrint extends GarmentChange {
  readonly to: MixOption;
}

export interface ProposedMix {
  readonly key: string;
  readonly mix: FoundMix | null;
  readonly prints: readonly ProposedPrint[];
  /** Lines that have it already, through the set-up that is proposed. */
  readonly unchangedLineIds: readonly string[];
}

export interface ProposalOutline extends Served {
  /** That on most garments first. */
  readonly mixes: readonly ProposedMix[];
  readonly changeCount: number;
  /** Garments whose cost now and as proposed are both known. */
  readonly comparedCount: number;
  /** Parts of the mixes used that have no price. */
  readonly unpriced: readonly string[];
}

/** What the mix search names a mix of the job by; null where its data sheet refuses it. */
export function keyOfMix(mix: Mix, shelf: Shelf): string | null {
  const { id: mixId, clothCoverFraction } = mix;
  return candidateOf(mix.recipe, shelf, { mixId, clothCoverFraction })?.key ?? null;
}

/** Names mixes by their keys: the job's own name where it has one of that recipe. */
export function mixNames({ job, library: { shelf } }: Documents): (key: string) => string {
  const own = new Map(job.mixes.toReversed().map((mix) => [keyOfMix(mix, shelf), mixName(mix, shelf)]));
  return (key) => own.get(key) ?? recipeName(recipeOfKey(key), shelf);
}

/** `documents` are those that were searched. */
export function proposalOutline(finding: MixFinding, documents: Documents): ProposalOutline {
  const { job, library } = documents;
  const place = requirePlace(finding, documents);
  const { changes, unchangedCount } = finding.proposal;
  const prints = changes.flatMap(({ to, ...change }): ProposedPrint[] =>
    to === null ? [] : [{ ...change, to }],
  );
  const spokenOf = new Set([
    ...changes.map(({ garmentId }) => garmentId),
    ...finding.unserved.map(({ lineId }) => lineId),
  ]);
  const unchanged = linesAt(job, place).flatMap(({ id: lineId }) => {
    const candidate = spokenOf.has(lineId) ? null : chosenCandidate(job, lineId, place.id);
    const mix = candidate === null ? null : mixOf(job, candidate.mixId);
    const key = mix === null ? null : keyOfMix(mix, library.shelf);
    return candidate === null || key === null ? [] : [{ lineId, key, setUpId: candidate.setUpId }];
  });
  const kept = place.mixRules.keptRecipes.filter((key) => finding.mixes.some((mix) => mix.key === key));
  const keys = new Set([...prints.map(({ to }) => to.mixId), ...unchanged.map(({ key }) => key), ...kept]);
  const mixes = [...keys]
    .map((key) => ({
      key,
      mix: finding.mixes.find((one) => one.key === key) ?? null,
      prints: prints.filter(({ to }) => to.mixId === key),
      unchangedLineIds: unchanged.filter((one) => one.key === key).map(({ lineId }) => lineId),
    }))
    .toSorted((one, other) => garmentsOn(other) - garmentsOn(one));
  const setUpIds = [...prints.map(({ to }) => to.setUpId), ...unchanged.map(({ setUpId }) => setUpId)];
  const servedCount = prints.length + unchangedCount;
  return {
    mixes,
    changeCount: prints.length,
    mixCount: mixes.length,
    setUpCount: new Set(setUpIds).size,
    servedCount,
    garmentCount: servedCount + finding.unserved.length,
    comparedCount: prints.filter(({ from }) => from !== null).length + unchangedCount,
    unpriced: [...new Set(mixes.flatMap(({ mix }) => mix?.unpriced ?? []))],
  };
}

function requirePlace({ placeId }: MixFinding, { job }: Documents): Place {
  const place = job.places.find(({ id }) => id === placeId);
  if (place === undefined) throw new RangeError(`the place that was searched must exist; got id ${placeId}`);
  return place;
}

function garmentsOn({ prints, unchangedLineIds }: ProposedMix): number {
  return prints.length + unchangedLineIds.length;
}
