/** A proposal in the matrix: read against what is chosen, used in one step, and known when it is old. */
import { act, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import type { Documents } from "../../../src/job/documents.ts";
import { removeCandidate } from "../../../src/job/edits/mixes.ts";
import { changePlace } from "../../../src/job/edits/places.ts";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import { chosenCandidate, mixOf } from "../../../src/job/lookup.ts";
import { standInForTheBrowser } from "./matrixBench.tsx";
import { fourGarments, GARMENTS, openFound, panel, plainFinding, press } from "./mixSearchBench.ts";

beforeEach(() => standInForTheBrowser());

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

  it("does not call it the cheapest where a print out of band costs nothing by what is entered", async () => {
    const { cost } = plainFinding(fourGarments());
    await openFound({ cost: { ...cost, expectedLoss: 0 } });
    expect(panel().getByText(/did not prefer mixes that land in the band/)).toBeInTheDocument();
    expect(panel().queryByText(/Nothing can be cheaper/)).toBeNull();
  });

  it("says that there was nothing to weigh, and no reasons of garments", async () => {
    await openFound({ counts: { mixes: 0, setUps: 0, lines: 4 } });
    expect(panel().getByText(/leave no mix to weigh/)).toBeInTheDocument();
    expect(panel().queryByText(/^No mix serves/)).toBeNull();
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
    // The button that was pressed is gone: the keyboard goes on beside it.
    expect(press("Undo this")).toHaveFocus();
    await user.click(press("Undo this"));
    expect(press("Use this proposal")).toHaveFocus();
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
