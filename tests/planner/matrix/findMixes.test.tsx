/** The mix search in the matrix: rules that are stored, a proposal that is read, used in one step, and known when it is old. */
import { act, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import type { MixAnswer } from "../../../src/engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { removeCandidate } from "../../../src/job/edits/mixes.ts";
import { changePlace } from "../../../src/job/edits/places.ts";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import { chosenCandidate, mixOf } from "../../../src/job/lookup.ts";
import { recipeKey } from "../../../src/job/recipeKey.ts";
import { openMatrix, standInForTheBrowser } from "./matrixBench.tsx";
import { fourGarments, GARMENTS, plainFinding, toldSearch } from "./mixSearchBench.ts";

beforeEach(() => standInForTheBrowser());

const panel = () => within(screen.getByRole("region", { name: "Find mixes, Front" }));
const press = (name: string | RegExp) => panel().getByRole("button", { name });

async function openSearch(documents = fourGarments()) {
  const { decisions, asked } = toldSearch();
  const matrix = await openMatrix(documents, {}, decisions);
  await matrix.user.click(screen.getByRole("button", { name: "Find mixes" }));
  const start = () => matrix.user.click(press("Start the search"));
  const tell = (answer: MixAnswer, index = asked.length - 1) => act(async () => asked[index]?.answer(answer));
  const rules = () => matrix.now().job.places[0]?.mixRules;
  return { ...matrix, asked, start, tell, rules };
}

async function openFound(change: Parameters<typeof plainFinding>[1] = {}) {
  const search = await openSearch();
  await search.start();
  await search.tell(plainFinding(search.now(), change));
  return search;
}

/** What is chosen on Front, as "mix, set-up" by garment. */
function chosen({ job, library }: Documents): (string | null)[] {
  return job.lines.slice(0, 4).map(({ id }) => {
    const candidate = chosenCandidate(job, id, job.places[0]?.id ?? "");
    if (candidate === null) return null;
    const setUp = library.shelf.setUps.find((one) => one.id === candidate.setUpId);
    return `${mixOf(job, candidate.mixId)?.name}; ${setUp?.name}`;
  });
}

const PROPOSED = [
  "Matt clear; 61-64, one stroke",
  "Gloss clear + 0.5 % black; 61-64, one stroke",
  "Gloss clear + 0.5 % black; 90-48, one stroke",
  null,
];

describe("the rules of the search", () => {
  it("are stored with the place, each as one step that undo takes back", async () => {
    const { user, rules, store } = await openSearch();
    await user.type(panel().getByRole("textbox", { name: "At most … mixes" }), "3{Enter}");
    for (const name of ["Only what is in stock", "Only low-cure bases", "Exact tints too"]) {
      await user.click(panel().getByRole("checkbox", { name }));
    }
    expect(rules()).toMatchObject({ atMostMixes: 3, stockOnly: true, lowCureOnly: true, exactTints: true });
    store.getState().undo();
    expect(rules()).toMatchObject({ exactTints: false, lowCureOnly: true });
    await user.clear(panel().getByRole("textbox", { name: "At most … mixes" }));
    await user.tab();
    expect(rules()?.atMostMixes).toBeNull();
  });

  it("keep a mix or leave it out, never both, and allow it again", async () => {
    const { user, rules, now } = await openSearch();
    const matt = recipeKey(now().job.mixes.find(({ name }) => name === "Matt clear")?.recipe ?? []);
    await user.click(panel().getByText("Mixes to keep or leave out: none"));
    await user.click(press("Keep Matt clear"));
    expect(rules()).toMatchObject({ keptRecipes: [matt], forbiddenRecipes: [] });
    await user.click(press("Do not use Matt clear"));
    expect(rules()).toMatchObject({ keptRecipes: [], forbiddenRecipes: [matt] });
    expect(panel().getByText("Mixes to keep or leave out: 1 left out")).toBeInTheDocument();
    await user.click(press("Allow again Matt clear"));
    expect(rules()).toMatchObject({ keptRecipes: [], forbiddenRecipes: [] });
  });

  it("name a mix that is in no matrix by its recipe, so that it can be allowed again", async () => {
    const { user, rules, store } = await openFound();
    await user.click(press("Do not use Gloss clear + 0.5 % black"));
    const [key] = rules()?.forbiddenRecipes ?? [];
    expect(key).toMatch(/=0\.005000000/);
    await user.click(panel().getByText(/^Mixes to keep or leave out/));
    const row = panel()
      .getAllByText("Gloss clear + 0.5 % black")
      .map((name) => name.closest("li"))
      .find((item) => item !== null);
    await user.click(within(row as HTMLElement).getByRole("button", { name: /^Allow again/ }));
    expect(rules()?.forbiddenRecipes).toEqual([]);
    store.getState().undo();
    expect(rules()?.forbiddenRecipes).toEqual([key]);
  });
});

describe("the search", () => {
  it("is asked for the place as it stands, says how far it is, and is stopped", async () => {
    const { user, asked, start, now, tell } = await openSearch();
    await start();
    expect(asked[0]?.documents).toBe(now());
    expect(asked[0]?.placeId).toBe(now().job.places[0]?.id);
    const words = () => panel().getAllByRole("status")[0]?.textContent;
    await act(async () => asked[0]?.report({ stage: "predicting", doneFraction: 0.5 }));
    expect(words()).toBe("Predicting: 2 of 4 garments done.");
    await act(async () => asked[0]?.report({ stage: "solving", doneFraction: 0.012 }));
    expect(words()).toBe("Solving: the best plan so far costs at most 1.2\u00a0% more than the cheapest.");
    await user.click(press("Stop the search"));
    expect(asked[0]?.isCancelled).toBe(true);
    expect(words()).toBe("Stopped. Nothing was changed.");
    // An answer that was on its way comes too late.
    await tell(plainFinding(now()));
    expect(panel().queryByRole("region", { name: "What the search found" })).toBeNull();
  });

  it("is cancelled when the place is left", async () => {
    const { user, asked, start } = await openSearch();
    await start();
    await user.click(screen.getByRole("button", { name: "Back" }));
    expect(asked[0]?.isCancelled).toBe(true);
  });

  it("keeps its answer while the panel is closed", async () => {
    const { user } = await openFound();
    await user.click(press("Close"));
    expect(screen.queryByRole("region", { name: "Find mixes, Front" })).toBeNull();
    await user.click(screen.getByRole("button", { name: "Find mixes" }));
    expect(panel().getByRole("heading", { level: 3 })).toHaveTextContent("2 mixes through 2 set-ups");
  });

  it("says that it failed, and that nothing was changed", async () => {
    const { asked, start } = await openSearch();
    await start();
    await act(async () => asked[0]?.fail(new Error("the solver could not be started")));
    expect(panel().getByRole("alert")).toHaveTextContent(
      "The search failed: the solver could not be started. Nothing in the job was changed",
    );
  });

  it("says which rules contradict each other, and when too few mixes are allowed", async () => {
    const { user, start, tell, now } = await openSearch();
    const mixId = recipeKey(now().job.mixes.find(({ name }) => name === "Matt clear")?.recipe ?? []);
    await start();
    await tell({
      ok: false,
      impossible: false,
      faults: [
        { code: "kept-not-allowed", mixId, rule: "low-cure-only" },
        { code: "kept-more-than-allowed", keptCount: 3, atMostMixes: 1 },
      ],
    });
    expect(panel().getByRole("alert")).toHaveTextContent(
      /Matt clear is to be kept, but it is not of low-cure/,
    );
    expect(panel().getByRole("alert")).toHaveTextContent("no more than 1 mix are allowed");
    await user.click(press("Search again"));
    await tell({ ok: false, impossible: true, faults: [] });
    expect(panel().getByRole("alert")).toHaveTextContent(/^! ProblemSo few mixes cannot serve/);
    await user.click(press("Search again"));
    await tell({ ok: false, impossible: false, faults: [] });
    expect(panel().getByRole("alert")).toHaveTextContent(/No plan was found in a minute/);
  });

  it("can be begun where the place has no mix yet", async () => {
    const documents = fourGarments();
    const [front] = documents.job.places;
    if (front === undefined) throw new Error("the demo has no place");
    const bare = front.candidates.reduce((now, { id }) => removeCandidate(now, front.id, id), documents);
    const { decisions, asked } = toldSearch();
    const { user } = await openMatrix(bare, {}, decisions);
    const next = within(screen.getByRole("region", { name: "What to do next" }));
    await user.click(next.getByRole("button", { name: "Find the cheapest mixes" }));
    await user.click(press("Start the search"));
    expect(asked).toHaveLength(1);
  });
});

describe("the proposal", () => {
  const row = (name: string) => panel().getByRole("row", { name: new RegExp(`^${name}`) });
  const cells = (element: HTMLElement) =>
    within(element)
      .getAllByRole("cell")
      .map(({ textContent }) => textContent);

  it("says first how many mixes serve how many garments, and that nothing is cheaper", async () => {
    await openFound();
    expect(panel().getByRole("heading", { level: 3 })).toHaveTextContent(
      "2 mixes through 2 set-ups serve 3 of 4 garments",
    );
    expect(panel().getByText(/Nothing can be cheaper under these rules/)).toBeInTheDocument();
    expect(panel().getByText(/Ink of Matt clear is counted as nothing/)).toBeInTheDocument();
    expect(panel().getByText(/No longer printed: Curable clear\. Screens to add: 90-48/)).toBeInTheDocument();
  });

  it("gives the gap where it is not proven", async () => {
    const { proposal } = plainFinding(fourGarments());
    await openFound({ proven: false, proposal: { ...proposal, gapFraction: 0.00312 } });
    expect(panel().getByText(/within 0\.31 % of the cheapest possible/)).toBeInTheDocument();
    expect(panel().queryByText(/Nothing can be cheaper/)).toBeNull();
  });

  it("costs all that it serves, and compares what has a mix already", async () => {
    await openFound();
    expect(cells(row("Mixes opened"))).toEqual(["31", "16", "15", "1"]);
    expect(cells(row("Screens"))).toEqual(["25", "0", "25", "\u221225"]);
    expect(cells(row("Total"))).toEqual(["464", "420", "133", "287"]);
    expect(panel().getByText(/stand for the 1 garment with a mix already; the other 2/)).toBeInTheDocument();
  });

  it("lists each garment under its mix: from what to what, chance, money", async () => {
    await openFound();
    expect(row(GARMENTS[0])).toHaveTextContent("nothing chosen yet");
    expect(cells(row(GARMENTS[2])).slice(0, 5)).toEqual([
      "90-48, one stroke",
      "91\u00a0%now 60\u00a0%",
      "90now 400",
      "3",
      "311",
    ]);
    expect(row(GARMENTS[2])).toHaveTextContent("now: Curable clear, 61-64, one stroke");
    expect(row(GARMENTS[2])).toHaveTextContent("! The customer approved what is chosen now.");
    expect(row(GARMENTS[0])).not.toHaveTextContent("approved");
    expect(row("Gloss clear \\+ 0.5 % black")).toHaveTextContent("new, 2 garments, 15 EUR to make");
    expect(row("Matt clear")).toHaveTextContent(/Matt clear1 garment, 16 EUR to make/);
  });

  it("says why a garment is served by none, what comes nearest, and leads to what would help", async () => {
    const { user, rules, now } = await openFound();
    const unserved = within(panel().getByRole("region", { name: "Garments that no mix serves" }));
    expect(unserved.getByText(/too little is known of it/)).toHaveTextContent(GARMENTS[3]);
    expect(
      unserved.getByText("Nearest: Matt clear, 61-64, one stroke; 4.4 darker, 42 % in band."),
    ).toBeInTheDocument();
    const href = unserved.getByRole("link", { name: /test print/ }).getAttribute("href") ?? "";
    expect(href).toContain("/tests?");
    expect(new URLSearchParams(href.split("?")[1]).get("tab")).toBe("worth-making");
    expect(new URLSearchParams(href.split("?")[1]).get("line")).toBe(now().job.lines[3]?.id);
    await user.click(unserved.getByRole("button", { name: "Allow exact tints" }));
    expect(rules()?.exactTints).toBe(true);
    await user.click(unserved.getByRole("button", { name: "Change the target" }));
    expect(screen.getByRole("region", { name: "Target band, Front" })).toBeInTheDocument();
  });

  it("changes nothing until it is used, then all of it in one step that one undo takes back", async () => {
    const { user, now, store } = await openFound();
    const before = now();
    expect(chosen(before)).toEqual([null, null, "Curable clear; 61-64, one stroke", null]);
    expect(store.getState().canUndo).toBe(false);
    await user.click(press("Use this proposal"));
    expect(chosen(now())).toEqual(PROPOSED);
    // Matt clear has its mix and column already.
    expect(now().job.mixes).toHaveLength(before.job.mixes.length + 1);
    expect(now().job.places[0]?.candidates).toHaveLength((before.job.places[0]?.candidates.length ?? 0) + 2);
    expect(panel().getByText("Chosen for 3 garments. 1 mix came into the matrix.")).toBeInTheDocument();
    expect(panel().queryByRole("button", { name: "Use this proposal" })).toBeNull();
    expect(panel().queryByText(/older than the job/)).toBeNull();
    await user.click(press("Undo this"));
    expect(now()).toEqual(before);
    expect(store.getState().canUndo).toBe(false);
    expect(panel().queryByText(/Chosen for 3 garments/)).toBeNull();
    expect(press("Use this proposal")).toBeInTheDocument();
  });

  it("is used for one garment alone, and for those left afterwards", async () => {
    const { user, now, store } = await openFound();
    await user.click(press(`Use this for ${GARMENTS[1]}`));
    expect(chosen(now())).toEqual([null, PROPOSED[1], "Curable clear; 61-64, one stroke", null]);
    expect(row(GARMENTS[1])).toHaveTextContent("in use");
    expect(document.activeElement).toHaveTextContent(GARMENTS[1]);
    expect(panel().getByText("Changes the other 2 garments in one step.")).toBeInTheDocument();
    await user.click(press("Use this proposal"));
    expect(chosen(now())).toEqual(PROPOSED);
    store.getState().undo();
    store.getState().undo();
    expect(store.getState().canUndo).toBe(false);
  });

  it("offers no undo of its own once something else was done", async () => {
    const { user, store } = await openFound();
    await user.click(press("Use this proposal"));
    await act(async () =>
      store.getState().edit((now) => changePlace(now, now.job.places[1]?.id ?? "", { widthMm: 99 })),
    );
    expect(panel().queryByRole("button", { name: "Undo this" })).toBeNull();
  });

  it.each<[string, (documents: Documents) => Documents, string]>([
    [
      "the rules",
      (d) =>
        changePlace(d, d.job.places[0]?.id ?? "", {
          mixRules: { ...d.job.places[0]!.mixRules, stockOnly: true },
        }),
      "the rules",
    ],
    [
      "the target",
      (d) => changePlace(d, d.job.places[0]?.id ?? "", { band: { deltaL: -5, tolerance: 1, hueLimit: 2 } }),
      "the target or the print",
    ],
    ["the garments", (d) => changePlace(d, d.job.places[0]?.id ?? "", { lineIds: null }), "the garments"],
    ["the shelf", (d) => changeDefaults(d, { refusedFraction: 0.2 }), "the shelf"],
    [
      "a mix in the matrix",
      (d) => removeCandidate(d, d.job.places[0]?.id ?? "", d.job.places[0]?.candidates[1]?.id ?? ""),
      "the mixes in the matrix",
    ],
  ])("is not used any more once %s changed, until that is taken back", async (_, change, words) => {
    const { user, store, asked } = await openFound();
    await act(async () => store.getState().edit(change));
    expect(
      panel().getByText(
        `This proposal is older than the job. Changed since: ${words}. Search again before you use it.`,
      ),
    ).toBeInTheDocument();
    expect(panel().queryByRole("button", { name: /^Use/ })).toBeNull();
    await act(async () => store.getState().undo());
    expect(press("Use this proposal")).toBeInTheDocument();
    await act(async () => store.getState().redo());
    await user.click(panel().getAllByRole("button", { name: "Search again" })[1] as HTMLElement);
    expect(asked).toHaveLength(2);
    expect(panel().queryByRole("region", { name: "What the search found" })).toBeNull();
  });

  it("is older than a record that was added since, which no undo takes back", async () => {
    const { store } = await openFound();
    await act(async () =>
      store.getState().record((d) => {
        const print = d.library.testPrints[0]!;
        const testPrints = [...d.library.testPrints, { ...print, id: crypto.randomUUID() }];
        return { ...d, library: { ...d.library, testPrints } };
      }),
    );
    expect(panel().getByText(/Changed since: the record book\./)).toBeInTheDocument();
  });

  it("stays what it was while another place is changed", async () => {
    const { store } = await openFound();
    await act(async () =>
      store.getState().edit((d) => changePlace(d, d.job.places[1]?.id ?? "", { widthMm: 99 })),
    );
    expect(press("Use this proposal")).toBeInTheDocument();
  });
});

describe("the expected loss of a cell", () => {
  it("stands in its details with what it is made of, and follows what is edited there", async () => {
    const { user } = await openMatrix();
    const pane = within(screen.getByRole("region", { name: "The cell looked at" }));
    // 900 pieces of 3.10 and a print of 0.39, 70 % refused, 44 % in band: 900 × 3.49 × 0.7 × 0.56.
    expect(await pane.findByText("1,231 EUR")).toBeInTheDocument();
    expect(pane.getByText(/^of 2,199 EUR: 900 pieces, 3\.49 EUR each, 70 % refused/)).toBeInTheDocument();
    await user.click(pane.getByText("What the money rests on"));
    const refused = pane.getByRole("textbox", { name: /^Refused where out of band/ });
    await user.clear(refused);
    await user.type(refused, "50{Enter}");
    expect(pane.getByText("879 EUR")).toBeInTheDocument();
  });
});
