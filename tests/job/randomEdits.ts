/** Draws sequences of every edit there is, with arguments that fit the documents they fall on. */
import fc from "fast-check";
import type { Documents } from "../../src/job/documents.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { changeJob, setRunStartsOn } from "../../src/job/edits/job.ts";
import {
  addLine,
  changeGarmentLot,
  changeLine,
  duplicateLine,
  removeLine,
} from "../../src/job/edits/lines.ts";
import {
  addCandidate,
  changeCandidateSetUp,
  changeMix,
  moveCandidate,
  removeCandidate,
  removeTint,
  setTint,
} from "../../src/job/edits/mixes.ts";
import {
  addPlace,
  changePlace,
  NO_MIX_RULES,
  newPlace,
  removePlace,
  setBand,
  setMixRules,
} from "../../src/job/edits/places.ts";
import { applyProposal } from "../../src/job/edits/proposal.ts";
import { tintRoomFraction } from "../../src/job/edits/recipe.ts";
import {
  addShelfItem,
  changeDefaults,
  changeShelfItem,
  chooseReferenceBase,
  removeShelfItem,
} from "../../src/job/edits/shelf.ts";
import { linesAt } from "../../src/job/lookup.ts";
import { shelfItemUse } from "../../src/job/shelfItemUse.ts";
import { exampleId, lotDraft } from "./exampleDocuments.ts";

/** Where an edit falls: which line, place, candidate, mix, item, and a fraction. */
interface Aim {
  readonly at: number;
  readonly other: number;
  readonly fraction: number;
  /** Ids that nothing has yet. */
  readonly fresh: readonly [string, string, string];
}

type RandomEdit = (documents: Documents, aim: Aim) => Documents;

const pick = <Item>(list: readonly Item[], at: number): Item | undefined => list[at % list.length];

/** Applies `edit` to the drawn items, or leaves the documents where the list is empty. */
function on<Item>(item: Item | undefined, documents: Documents, edit: (item: Item) => Documents): Documents {
  return item === undefined ? documents : edit(item);
}

export const randomEdits: Readonly<Record<string, RandomEdit>> = {
  addLine: (d, { fresh }) => addLine(d, { lineId: fresh[0], lotId: fresh[1], lot: lotDraft }),
  duplicateLine: (d, { at, fresh }) =>
    on(pick(d.job.lines, at), d, ({ id }) => duplicateLine(d, id, { lineId: fresh[0], lotId: fresh[1] })),
  removeLine: (d, { at }) => on(pick(d.job.lines, at), d, ({ id }) => removeLine(d, id)),
  changeLine: (d, { at, other }) =>
    on(pick(d.job.lines, at), d, ({ id }) =>
      changeLine(d, id, {
        note: `note ${other}`,
        piecePrice: other,
        sparePieceCount: other % 3 === 0 ? null : other,
      }),
    ),
  changeGarmentLot: (d, { at, other }) =>
    on(pick(d.library.garmentLots, at), d, ({ id }) => changeGarmentLot(d, id, { lot: `lot ${other}` })),
  addCandidate: (d, { at, other, fraction, fresh }) =>
    on(pick(d.job.places, at), d, ({ id }) =>
      on(pick(d.library.shelf.setUps, other), d, (setUp) =>
        on(pick(d.library.shelf.bases, at), d, (base) =>
          on(pick(d.library.shelf.colourants, other), d, (colourant) =>
            addCandidate(d, id, {
              candidateId: fresh[0],
              setUpId: setUp.id,
              mix: {
                id: fresh[1],
                name: "",
                clothCoverFraction: null,
                recipe: [
                  { itemId: base.id, massFraction: 1 - fraction },
                  { itemId: colourant.id, massFraction: fraction },
                ],
              },
            }),
          ),
        ),
      ),
    ),
  addCandidateOfSameMix: (d, { at, other, fresh }) =>
    on(pick(d.job.places, at), d, ({ id }) =>
      on(pick(d.library.shelf.setUps, other), d, (setUp) =>
        on(pick(d.job.mixes, other), d, (mix) =>
          addCandidate(d, id, { candidateId: fresh[0], setUpId: setUp.id, mix }),
        ),
      ),
    ),
  removeCandidate: (d, { at, other }) =>
    on(pick(d.job.places, at), d, (place) =>
      on(pick(place.candidates, other), d, ({ id }) => removeCandidate(d, place.id, id)),
    ),
  moveCandidate: (d, { at, other }) =>
    on(pick(d.job.places, at), d, (place) =>
      on(pick(place.candidates, other), d, ({ id }) =>
        moveCandidate(d, place.id, id, at % place.candidates.length),
      ),
    ),
  changeCandidateSetUp: (d, { at, other }) =>
    on(pick(d.job.places, at), d, (place) =>
      on(pick(place.candidates, other), d, ({ id }) =>
        on(pick(d.library.shelf.setUps, at), d, (setUp) => changeCandidateSetUp(d, place.id, id, setUp.id)),
      ),
    ),
  changeMix: (d, { at, other }) =>
    on(pick(d.job.mixes, at), d, ({ id }) => changeMix(d, id, { name: `mix ${other}` })),
  setTint: (d, { at, other, fraction }) =>
    on(pick(d.job.mixes, at), d, (mix) =>
      on(pick(d.library.shelf.colourants, other), d, ({ id }) => {
        const hasBase = mix.recipe.some(
          ({ itemId, massFraction }) =>
            massFraction > 0 && d.library.shelf.bases.some((base) => base.id === itemId),
        );
        return hasBase
          ? setTint(d, mix.id, id, fraction * 0.99 * tintRoomFraction(mix, d.library.shelf, id))
          : d;
      }),
    ),
  removeTint: (d, { at, other }) =>
    on(pick(d.job.mixes, at), d, (mix) =>
      on(pick(d.library.shelf.colourants, other), d, ({ id }) =>
        mix.recipe.some(({ itemId }) => d.library.shelf.bases.some((base) => base.id === itemId))
          ? removeTint(d, mix.id, id)
          : d,
      ),
    ),
  addPlace: (d, { at, fresh }) => {
    const first = pick(d.job.lines, at);
    const lineIds = at % 2 === 0 || first === undefined ? null : [first.id];
    return addPlace(d, { ...newPlace(fresh[0], "Back"), lineIds });
  },
  changePlace: (d, { at, other }) =>
    on(pick(d.job.places, at), d, ({ id }) =>
      changePlace(d, id, {
        smoothed: other % 2 === 0,
        lineIds: other % 3 === 0 ? null : d.job.lines.slice(other % 2).map((line) => line.id),
      }),
    ),
  removePlace: (d, { at }) => on(pick(d.job.places, at), d, ({ id }) => removePlace(d, id)),
  setBand: (d, { at, fraction }) =>
    on(pick(d.job.places, at), d, ({ id }) =>
      setBand(d, id, { deltaL: -10 * fraction, tolerance: 1, hueLimit: 2 }),
    ),
  setMixRules: (d, { at, other }) =>
    on(pick(d.job.places, at), d, ({ id }) =>
      setMixRules(d, id, { ...NO_MIX_RULES, atMostMixes: other + 1, stockOnly: other % 2 === 0 }),
    ),
  applyProposal: (d, { at, other, fraction, fresh }) =>
    on(pick(d.job.places, at), d, (place) =>
      on(pick(linesAt(d.job, place), other), d, (line) =>
        on(pick(d.library.shelf.setUps, other), d, (setUp) =>
          on(pick(d.library.shelf.bases, at), d, (base) =>
            on(pick(d.library.shelf.colourants, other), d, (colourant) =>
              applyProposal(d, place.id, [
                {
                  lineId: line.id,
                  recipe: [
                    { itemId: base.id, massFraction: 1 - fraction },
                    { itemId: colourant.id, massFraction: fraction },
                  ],
                  mixName: "",
                  setUpId: setUp.id,
                  newMixId: fresh[0],
                  newCandidateId: fresh[1],
                },
              ]),
            ),
          ),
        ),
      ),
    ),
  setRunStartsOn: (d, { other }) => setRunStartsOn(d, other % 3 === 0 ? null : `2026-03-${10 + other}`),
  chooseCandidate: (d, { at, other }) =>
    on(pick(d.job.places, at), d, (place) =>
      on(pick(linesAt(d.job, place), other), d, (line) =>
        chooseCandidate(d, {
          lineId: line.id,
          placeId: place.id,
          candidateId: other % 4 === 0 ? null : (pick(place.candidates, at)?.id ?? null),
        }),
      ),
    ),
  changeJob: (d, { other }) => changeJob(d, { customer: `customer ${other}` }),
  addShelfItem: (d, { at, fresh }) =>
    on(pick(d.library.shelf.bases, at), d, (base) =>
      addShelfItem(d, "bases", { ...base, id: fresh[0], reference: false }),
    ),
  addMesh: (d, { at, fresh }) =>
    on(pick(d.library.shelf.meshes, at), d, (mesh) => addShelfItem(d, "meshes", { ...mesh, id: fresh[0] })),
  changeShelfItem: (d, { at, fraction }) =>
    on(pick(d.library.shelf.colourants, at), d, ({ id }) =>
      changeShelfItem(d, "colourants", id, { largestFraction: fraction }),
    ),
  removeShelfItem: (d, { at, other }) => {
    const list = pick(["bases", "colourants", "meshes", "squeegees", "setUps"] as const, other) ?? "bases";
    return on(pick<{ id: string }>(d.library.shelf[list], at), d, ({ id }) =>
      shelfItemUse(d, list, id).length === 0 ? removeShelfItem(d, list, id) : d,
    );
  },
  chooseReferenceBase: (d, { at }) =>
    on(pick(d.library.shelf.bases, at), d, ({ id }) => chooseReferenceBase(d, id)),
  changeDefaults: (d, { other }) => changeDefaults(d, { testAboveCount: other }),
};

export interface Draw {
  readonly edit: string;
  readonly at: number;
  readonly other: number;
  readonly fraction: number;
}

export const arbitraryDraw: fc.Arbitrary<Draw> = fc.record({
  edit: fc.constantFrom(...Object.keys(randomEdits)),
  at: fc.nat(11),
  other: fc.nat(11),
  fraction: fc.double({ min: 0, max: 1, noNaN: true }),
});

/** The documents after the `step`th drawn edit. */
export function withDraw(documents: Documents, { edit, at, other, fraction }: Draw, step: number): Documents {
  const first = 0x100000 + step * 3;
  const fresh = [exampleId(first), exampleId(first + 1), exampleId(first + 2)] as const;
  const apply = randomEdits[edit];
  if (apply === undefined) throw new RangeError(`edit must be one of randomEdits; got ${edit}`);
  return apply(documents, { at, other, fraction, fresh });
}
