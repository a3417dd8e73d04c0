/** Recover: what the engine ranked, in words, and taking one of it as one step that undo takes back. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { checklistSubject } from "../../../src/job/checklistSubject.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import { ids } from "../../job/exampleDocuments.ts";
import { examplePressEntry } from "../../job/exampleRecords.ts";
import { AS_IT_IS, chosenJob, openPress, ranked, way } from "./pressBench.tsx";

const STOP = {
  action: "stop" as const,
  mean: -8,
  standardUncertainty: 0.2,
  conformanceProbability: 0,
  modelVersion: "2",
};

/** The chosen job with a first-off that was stopped. */
function stopped(action: "stop" | "run" = "stop"): Documents {
  const documents = chosenJob();
  return appendPressEntry(
    documents,
    examplePressEntry(1, {
      kind: "first-off",
      subject: checklistSubject(documents, ids.line, ids.place),
      readings:
        action === "run"
          ? { kind: "pairs", deltaL: [-4, -4.1, -3.9, -4], pieceCount: 4 }
          : { kind: "pairs", deltaL: [-8, -8.1], pieceCount: 2 },
      said: { ...STOP, action },
    }),
  );
}

const FINER = way({
  changes: [{ kind: "screen", screenKey: ids.fineMesh }],
  screenChange: true,
});
const SOFT = way({
  changes: [{ kind: "tint", colourantKey: ids.black, massFraction: 0.001 }],
  prediction: { deltaL5: -6, deltaL50: -5, deltaL95: -4, chanceInBand: 0.5 },
  minutes: 15,
  cost: 27.5,
  distance: 1.2,
});
const STROKES = way({
  changes: [
    { kind: "screen", screenKey: ids.fineMesh },
    { kind: "strokes", strokeCount: 2 },
  ],
  printing: { ...way({ changes: [] }).printing, screenKey: ids.fineMesh, strokeCount: 2 },
  screenChange: true,
});
const HALFTONE = way({
  changes: [{ kind: "halftone", halftoneFraction: 0.6 }],
  screenChange: true,
  cautions: ["needs-new-screen"],
});
const WHITE = way({
  changes: [{ kind: "tint", colourantKey: ids.white, massFraction: 0.02 }],
  cautions: ["milky-haze"],
});

const ways = () => screen.getAllByRole("listitem").filter((item) => item.classList.contains("press__way"));

describe("ways to recover", () => {
  it("are asked for at once after a first-off that is not run, with the first-off in the documents", async () => {
    const { asks } = await openPress(stopped(), { tab: "recover" });
    expect(asks.map(({ ask }) => ask)).toEqual([
      { lineId: ids.line, placeId: ids.place, halftonesAllowed: false },
    ]);
    expect(asks[0]?.documents.job.pressLog).toHaveLength(1);
  });

  it("are asked for on request where the run stands or nothing is on record", async () => {
    const { asks, press, view } = await openPress(stopped("run"), { tab: "recover" });
    expect(asks).toEqual([]);
    expect(screen.getByText(/The run stands/)).toBeInTheDocument();
    await press("Show what can be changed all the same");
    expect(asks).toHaveLength(1);
    view.unmount();
    await openPress(chosenJob(), { tab: "recover" });
    expect(screen.getByText(/No first-off of this lot, mix and set-up is on record/)).toBeInTheDocument();
  });

  it("say what is changed, how sure it is, how far from the approved print, and what it takes", async () => {
    const answer = () => ranked([[FINER], [SOFT, { evidence: "this lot" }], [AS_IT_IS]], { best: 1 });
    await openPress(stopped(), { tab: "recover", answer });
    const [finer, soft, asItIs] = ways();
    expect(finer).toHaveTextContent("1. Same mix, through 120-34");
    expect(finer).toHaveTextContent("another screen · 9 min, 21");
    expect(finer).toHaveTextContent("80 % in band");
    expect(finer).toHaveTextContent("4.0 darker, 3.0 to 5.0");
    expect(finer).toHaveTextContent("ΔE00 0.6 from the target");
    expect(finer).toHaveTextContent("related prints");
    expect(soft).toHaveTextContent("2. With 0.1 % black");
    expect(soft).toHaveTextContent("no screen change · 15 min, 27.50 · best without a screen change");
    expect(soft).toHaveTextContent("L* 1.2 from the target");
    expect(asItIs).toHaveTextContent("Print on as it is");
    expect(within(asItIs!).queryByRole("button")).not.toBeInTheDocument();
  });

  it("are summed up by what the best of them can do", async () => {
    const sure = way({ ...FINER, prediction: { ...FINER.prediction, chanceInBand: 0.93 } });
    const cases = [
      [ranked([[AS_IT_IS]], { suffices: true }), /^No change helps more than printing on\./],
      [ranked([[FINER], [SOFT], [AS_IT_IS]], { best: 1 }), /^No change is sure .* the best has 80.% in band/],
      [ranked([[sure], [SOFT], [AS_IT_IS]], { best: 1 }), /^No change suffices without another screen/],
      [ranked([[sure], [AS_IT_IS]]), /^Nothing helps without another screen/],
    ] as const;
    for (const [answer, words] of cases) {
      const { view } = await openPress(stopped(), { tab: "recover", answer: () => answer });
      expect(screen.getByText(words)).toBeInTheDocument();
      view.unmount();
    }
  });

  it("keep the best without a screen change in sight, and printing on last, however many there are", async () => {
    const many = Array.from({ length: 9 }, (_, index) =>
      way({
        changes: [{ kind: "screen", screenKey: index % 2 === 0 ? ids.fineMesh : ids.mesh }],
        screenChange: true,
      }),
    );
    const answer = () => ranked([...many.map((one) => [one] as const), [SOFT], [AS_IT_IS]], { best: 9 });
    const { press } = await openPress(stopped(), { tab: "recover", answer });
    expect(ways()).toHaveLength(7);
    expect(ways()[5]).toHaveTextContent("10. With 0.1 % black");
    expect(ways().at(-1)).toHaveTextContent("Print on as it is");
    await press("Show 4 more");
    // The button is gone with the last of them: the keyboard goes on at the first that came.
    expect(within(ways()[5]!).getByRole("button")).toHaveFocus();
    expect(ways()).toHaveLength(11);
    expect(ways().at(-1)).toHaveTextContent("Print on as it is");
  });

  it("leave halftones out until they are allowed, and say that the artwork has to be made anew", async () => {
    const { asks, user } = await openPress(stopped(), {
      tab: "recover",
      answer: ({ halftonesAllowed }) => ranked(halftonesAllowed ? [[HALFTONE], [AS_IT_IS]] : [[AS_IT_IS]]),
    });
    expect(ways()).toHaveLength(1);
    await user.click(screen.getByRole("checkbox", { name: /^Halftones allowed/ }));
    expect(asks.at(-1)?.ask.halftonesAllowed).toBe(true);
    const [halftone] = ways();
    expect(halftone).toHaveTextContent("Same mix, as a halftone of 60 %");
    expect(halftone).toHaveTextContent("! The artwork has to be made as a halftone");
    expect(within(halftone!).queryByRole("button")).not.toBeInTheDocument();
    expect(within(halftone!).getByRole("link", { name: "set it in the matrix" })).toHaveAttribute(
      "href",
      `#/job/${ids.job}/matrix?place=${ids.place}`,
    );
  });

  it("warn of white in a clear, and lead to the shelf where it has no such set-up", async () => {
    const answer = () => ranked([[WHITE], [STROKES, { setUpId: null }], [AS_IT_IS]]);
    await openPress(stopped(), { tab: "recover", answer });
    const [white, strokes] = ways();
    expect(white).toHaveTextContent("turns them milky");
    expect(strokes).toHaveTextContent("At the press: 120-34, squeegee 70/90/70, two strokes.");
    expect(within(strokes!).queryByRole("button")).not.toBeInTheDocument();
    expect(within(strokes!).getByRole("link", { name: "put it on the shelf" })).toHaveAttribute(
      "href",
      `#/job/${ids.job}/shelf?tab=set-ups`,
    );
  });

  it("say what the engine says where it cannot be worked out, or where the first-off is not explained", async () => {
    const refused = () => ({ ok: false as const, problems: [{ code: "not-predictable", where: "line" }] });
    const { view } = await openPress(stopped(), { tab: "recover", answer: refused });
    expect(screen.getByText(/cannot be predicted as it stands/)).toBeInTheDocument();
    view.unmount();
    const unexplained = { readDeltaL: -8, expectedDeltaL5: -5, expectedDeltaL95: -3 };
    const answer = () => ({ ...ranked([[AS_IT_IS]]), unexplained }) as ReturnType<typeof ranked>;
    await openPress(stopped(), { tab: "recover", answer });
    expect(screen.getByText(/Look for a cause first/)).toBeInTheDocument();
  });
});

describe("taking one", () => {
  const answer = () => ranked([[FINER], [AS_IT_IS]]);

  it("chooses mix and set-up for the line in one step, says that signatures no longer count, and wants a first-off", async () => {
    const { press, now, store } = await openPress(stopped(), { tab: "recover", answer });
    const before = checklistSubject(now(), ids.line, ids.place);
    await press("Use this: Same mix, through 120-34");
    const { choices, places, mixes } = now().job;
    const chosen = places[0]?.candidates.find(({ id }) => id === choices[0]?.candidateId);
    expect(chosen?.setUpId).toBe(ids.otherSetUp);
    expect(mixes.find(({ id }) => id === chosen?.mixId)?.name).toBe("Gloss clear");
    expect(
      screen.getByText(/What was signed for the earlier mix or set-up no longer counts/),
    ).toBeInTheDocument();
    expect(screen.getByText(/No first-off of this lot, mix and set-up is on record/)).toBeInTheDocument();
    act(() => store.getState().undo());
    expect(checklistSubject(now(), ids.line, ids.place)).toBe(before);
    expect(now().job.mixes).toHaveLength(2);
    expect(screen.queryByText(/no longer counts/)).not.toBeInTheDocument();
  });

  it("leads to a first-off of its own", async () => {
    const { press } = await openPress(stopped(), { tab: "recover", answer });
    await press("Use this: Same mix, through 120-34");
    expect(screen.getByRole("button", { name: "To the first-off" })).toHaveFocus();
    await press("To the first-off");
    expect(screen.getByText(/The first-offs below are of an earlier lot, mix or set-up/)).toBeInTheDocument();
    await press("Take a first-off");
    expect(screen.getByRole("radio", { name: "a change to recover" })).toBeChecked();
  });
});
