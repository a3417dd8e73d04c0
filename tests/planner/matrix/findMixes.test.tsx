/** The mix search in the matrix: rules that are stored, progress, stopping, and what it says where there is no answer. */
import { act, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { removeCandidate } from "../../../src/job/edits/mixes.ts";
import { recipeKey } from "../../../src/job/recipeKey.ts";
import { openMatrix, standInForTheBrowser } from "./matrixBench.tsx";
import {
  fourGarments,
  openFound,
  openSearch,
  panel,
  plainFinding,
  press,
  toldSearch,
} from "./mixSearchBench.ts";

beforeEach(() => standInForTheBrowser());

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
