/** The ledger before the run: every entry is listed, with what the planner said when it was written. */
import { act, screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { MODEL_VERSION } from "../../../src/job/modelVersion.ts";
import { ids } from "../../job/exampleDocuments.ts";
import { chosenJob, engineThatSays, openRun } from "./runBench.tsx";

describe("the ledger", () => {
  it("lists every entry, the latest first, with a choice that has passed marked as such", async () => {
    const { user, pane, store } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    await user.click(pane().getByRole("button", { name: "Withdraw cure as M. Printer" }));
    const entries = () =>
      [...document.querySelectorAll(".run__ledger li")].map((entry) =>
        entry.textContent?.replace(/^.*?\d\d:\d\d/, ""),
      );
    expect(entries()).toEqual([
      "M. Printer withdrew: cureHeavy tee, Forest, Mill A, Front",
      "M. Printer signed: cure said then: 4.0 darker, 90\u00a0% in band, model onlyHeavy tee, Forest, Mill A, Front",
    ]);
    const choice = { lineId: ids.line, placeId: ids.place, candidateId: null };
    act(() => store.getState().edit((now) => chooseCandidate(now, choice)));
    expect(entries()[0]).toContain("(an earlier choice)");
  });

  it("keeps what was predicted at a signature or an override, and says it when the prediction is another", async () => {
    const { user, ledger, pane, store, view } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    const { prices, refusedFraction } = chosenJob().library.shelf.defaults;
    const said = {
      deltaL: -4,
      p5: -5,
      p95: -3,
      chanceInBand: 0.9,
      evidence: "model only",
      // Thirty pieces at 3, half polyester, so printed without surcharge.
      expectedLoss: expect.closeTo(30 * (3 + prices.print) * refusedFraction * (1 - 0.9), 9),
      modelVersion: MODEL_VERSION,
    };
    expect(ledger()[0]?.said).toEqual(said);
    const sentence = "said then: 4.0 darker, 90 % in band, model only";
    const shown = () => screen.getByRole("region", { name: "Ledger" });
    expect(shown()).toHaveTextContent(sentence);
    await user.click(pane().getByRole("button", { name: "Withdraw cure as M. Printer" }));
    await user.type(pane().getByLabelText(/^Reason/), "cloth is damp");
    await user.click(pane().getByRole("button", { name: /^Hold the run/ }));
    await user.type(pane().getByLabelText(/^Reason/), "the customer asked");
    await user.click(pane().getByRole("button", { name: /^Override/ }));
    expect(ledger().map((entry) => [entry.action, entry.said])).toEqual([
      ["sign", said],
      ["withdraw", null],
      ["hold", null],
      ["override", said],
    ]);
    const documents = store.getState().documents;
    view.unmount();
    await openRun(documents!, engineThatSays({ deltaL: -6, deltaL50: -6, chanceInBand: 0.1 }));
    expect(pane().getByText("6.0 darker")).toBeInTheDocument();
    expect(shown()).toHaveTextContent(sentence);
  });
});
