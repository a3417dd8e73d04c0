/** A mix search of plain data on the first four garments of the demo: what it is asked is kept, it answers when told to. */
import { act, screen, within } from "@testing-library/react";
import type { MixOption } from "../../../src/core/planning/decisions/mixSearch.ts";
import type { DecisionEngine } from "../../../src/engine/decisions/decisionEngine.ts";
import type {
  MixAnswer,
  MixFinding,
  SearchProgress,
} from "../../../src/engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { recipeWithTint } from "../../../src/job/edits/recipe.ts";
import { chosenCandidate, mixOf } from "../../../src/job/lookup.ts";
import { recipeKey } from "../../../src/job/recipeKey.ts";
import type { Recipe } from "../../../src/job/recipeParts.ts";
import { noDecisions } from "../noDecisions.ts";
import { demoDocuments, openMatrix } from "./matrixBench.tsx";

export const GARMENTS = [
  "Ring-spun tee, Navy, Mill A",
  "Everyday heather tee, Light grey heather, Mill A",
  "Blend crew tee, Forest, Mill A",
  "Blend crew tee, Forest, Mill B",
] as const;

/** Four garments on Front; the third has a mix chosen, and approved, as in the demo. */
export function fourGarments(): Documents {
  const { job, library } = demoDocuments();
  const [front, ...others] = job.places;
  if (front === undefined) throw new Error("the demo has no place");
  const lineIds = job.lines.slice(0, 4).map(({ id }) => id);
  return { job: { ...job, places: [{ ...front, lineIds }, ...others] }, library };
}

function only<Item>(item: Item | null | undefined, what: string): Item {
  if (item === null || item === undefined) throw new Error(`the demo has no ${what}`);
  return item;
}

/**
 * Matt clear, which is in the matrix, for the first garment and gloss clear with 0.5 % black, which is not, for the next two;
 * nothing for the fourth. All figures are invented and simple to add.
 */
export function plainFinding(documents: Documents, change: Partial<MixFinding> = {}): MixFinding {
  const { job, library } = documents;
  const { shelf } = library;
  const place = only(job.places[0], "place");
  const [navy, grey, forest, unserved] = job.lines.map(({ id }) => id);
  const base = (name: string) => only(shelf.bases.find((one) => one.name === name)?.id, name);
  const black = only(shelf.colourants.find(({ optics }) => optics.kind === "black")?.id, "black");
  const matt: Recipe = [{ itemId: base("Matt clear"), massFraction: 1 }];
  const gloss = recipeWithTint([{ itemId: base("Gloss clear"), massFraction: 1 }], shelf, black, 0.005);
  const setUp = (index: number) => only(shelf.setUps[index]?.id, "set-up");
  const chosen = only(chosenCandidate(job, only(forest, "line"), place.id), "choice");
  const now = only(mixOf(job, chosen.mixId), "mix");
  const option = (
    garmentId: string | undefined,
    recipe: Recipe,
    setUpId: string,
    [expectedLoss, inkCost, chanceInBand]: readonly [number, number, number],
  ): MixOption => ({
    garmentId: only(garmentId, "line"),
    mixId: recipeKey(recipe),
    setUpId,
    expectedLoss,
    inkCost,
    chanceInBand,
  });
  const from = option(forest, now.recipe, chosen.setUpId, [400, 4, 0.6]);
  const mattInJob = job.mixes.find(({ recipe }) => recipeKey(recipe) === recipeKey(matt));
  return {
    ok: true,
    placeId: place.id,
    proposal: {
      changes: [
        {
          garmentId: only(navy, "line"),
          from: null,
          to: option(navy, matt, setUp(0), [200, 10, 0.7]),
          saved: null,
        },
        {
          garmentId: only(grey, "line"),
          from: null,
          to: option(grey, gloss, setUp(0), [100, 5, 0.8]),
          saved: null,
        },
        { garmentId: from.garmentId, from, to: option(forest, gloss, setUp(1), [90, 3, 0.91]), saved: 311 },
      ],
      unchangedCount: 0,
      mixesAdded: [recipeKey(matt), recipeKey(gloss)],
      mixesDropped: [recipeKey(now.recipe)],
      setUpsAdded: [setUp(1)],
      setUpsDropped: [],
      presentCost: { mixes: 16, setUps: 0, ink: 4, expectedLoss: 400, unserved: 0, total: 420 },
      proposedCost: { mixes: 15, setUps: 25, ink: 3, expectedLoss: 90, unserved: 0, total: 133 },
      gapFraction: 0,
    },
    cost: { mixes: 31, setUps: 25, ink: 18, expectedLoss: 390, unserved: 0, total: 464 },
    proven: true,
    mixes: [
      {
        key: recipeKey(matt),
        recipe: matt,
        jobMixId: mattInJob?.id ?? null,
        openingCost: 16,
        unpriced: ["Matt clear"],
      },
      { key: recipeKey(gloss), recipe: gloss, jobMixId: null, openingCost: 15, unpriced: [] },
      { key: recipeKey(now.recipe), recipe: now.recipe, jobMixId: now.id, openingCost: 16, unpriced: [] },
    ],
    unserved: [
      {
        lineId: only(unserved, "line"),
        reason: "not-known-well-enough",
        helps: ["test-print", "wider-band", "exact-tint"],
        nearest: option(unserved, matt, setUp(0), [900, 12, 0.42]),
        nearestDeltaL: -4.4,
      },
    ],
    counts: { mixes: 30, setUps: 3, lines: 4 },
    ...change,
  };
}

interface Asked {
  readonly documents: Documents;
  readonly placeId: string;
  readonly report: (progress: SearchProgress) => void;
  readonly answer: (answer: MixAnswer) => void;
  readonly fail: (reason: Error) => void;
  isCancelled: boolean;
}

export function toldSearch() {
  const asked: Asked[] = [];
  const decisions: DecisionEngine = {
    ...noDecisions,
    findMixes(documents, placeId, report) {
      let resolve: Asked["answer"] = () => undefined;
      let reject: Asked["fail"] = () => undefined;
      const promise = new Promise<MixAnswer | null>((...ends) => {
        [resolve, reject] = ends;
      });
      const search: Asked = { documents, placeId, report, answer: resolve, fail: reject, isCancelled: false };
      asked.push(search);
      return {
        answer: promise,
        cancel: () => {
          search.isCancelled = true;
        },
      };
    },
  };
  return { decisions, asked };
}

/** The open panel of the search. */
export const panel = () => within(screen.getByRole("region", { name: "Find mixes, Front" }));
export const press = (name: string | RegExp) => panel().getByRole("button", { name });

/** Opens the matrix and the panel; the search answers what `tell` says. */
export async function openSearch(documents = fourGarments()) {
  const { decisions, asked } = toldSearch();
  const matrix = await openMatrix(documents, {}, decisions);
  await matrix.user.click(screen.getByRole("button", { name: "Find mixes" }));
  const start = () => matrix.user.click(press("Start the search"));
  const tell = (answer: MixAnswer, index = asked.length - 1) => act(async () => asked[index]?.answer(answer));
  const rules = () => matrix.now().job.places[0]?.mixRules;
  return { ...matrix, asked, start, tell, rules };
}

/** `openSearch` with the plain finding on the screen. */
export async function openFound(change: Partial<MixFinding> = {}) {
  const search = await openSearch();
  await search.start();
  await search.tell(plainFinding(search.now(), change));
  return search;
}
