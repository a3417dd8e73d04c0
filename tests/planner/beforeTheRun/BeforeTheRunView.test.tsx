/** Before the run: nothing is released that is not signed, and everything that was ever signed stays to be seen. */
import { act, screen, waitFor } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { changeShelfItem } from "../../../src/job/edits/shelf.ts";
import { ids } from "../../job/exampleDocuments.ts";
import { chosenJob, engineThatSays, openRun } from "./runBench.tsx";

const release = () => screen.getByRole("button", { name: /^Release the run/ });
const reason = () => screen.getByLabelText("Reason, for a hold or an override");

describe("the table", () => {
  it("says of each garment how it stands, and of the job how many are released", async () => {
    const { row } = await openRun();
    expect(screen.getByText("0 of 2 released.")).toBeInTheDocument();
    await waitFor(() => expect(row(0)).toHaveTextContent("blocked by 4"));
    expect(row(0)).toHaveTextContent("4.0 darker, 3.0 to 5.0, model only");
    expect(row(1)).toHaveTextContent("No mix is chosen for this garment here.");
  });

  it("asks the engine for the chosen print and for no other", async () => {
    const said = engineThatSays();
    await openRun(chosenJob(), said);
    expect(said.requests.map(({ rows, columns }) => [rows.length, columns.length])).toEqual([[1, 1]]);
    expect(said.requests[0]?.rows[0]?.lineId).toBe(ids.line);
    expect(said.requests[0]?.columns[0]?.candidateId).toBe(ids.otherCandidate);
  });

  it("leads from a garment without a mix to the matrix, at that garment and place", async () => {
    await openRun();
    expect(
      screen.getByRole("link", { name: /Choose in the matrix for Heavy tee, Forest, Mill B/ }),
    ).toHaveAttribute("href", `#/job/${ids.job}/matrix?line=${ids.otherLine}&place=${ids.place}`);
  });

  it("says why a mix that breaks its data sheet cannot be printed, and offers no override", async () => {
    const limited = changeShelfItem(chosenJob(), "colourants", ids.black, { largestFraction: 0.001 });
    const { row } = await openRun(limited);
    expect(row(0)).toHaveTextContent("Black is 0.5 % of the mix; its data sheet allows 0.1 %.");
    expect(screen.queryByRole("button", { name: /^Override/ })).not.toBeInTheDocument();
    expect(screen.queryByRole("button", { name: /^Release/ })).not.toBeInTheDocument();
  });
});

describe("a signature", () => {
  it("carries name, time, item and what it was given for, and is shown with them", async () => {
    const { user, ledger, pane, row } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer");
    await user.click(pane().getByRole("button", { name: /^Sign cure/ }));
    expect(ledger()).toHaveLength(1);
    expect(ledger()[0]).toMatchObject({
      action: "sign",
      itemCode: "cure",
      signer: "M. Printer",
      lineId: ids.line,
    });
    expect(ledger()[0]?.subject).toContain(`lot:${ids.lot}`);
    expect(pane().getByText(/^signed by M\. Printer, \d+ \w+ \d{4}, \d\d:\d\d$/)).toBeInTheDocument();
    expect(row(0)).toHaveTextContent("blocked by 3");
    expect(screen.getByText(/Signed by: MP M\. Printer/)).toBeInTheDocument();
  });

  it("is not taken without a name, which is asked for", async () => {
    const { user, ledger, pane } = await openRun();
    await user.click(pane().getByRole("button", { name: "Sign cure" }));
    expect(ledger()).toEqual([]);
    expect(screen.getByRole("alert")).toHaveTextContent("Write your name first.");
    expect(screen.getByLabelText("Your name, for what you sign")).toHaveFocus();
  });

  it("can carry a note", async () => {
    const { user, ledger, pane } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Add a note on cure" }));
    await user.type(screen.getByLabelText("Note on cure"), "probe showed it");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    expect(ledger()[0]?.note).toBe("probe showed it");
    expect(pane().getByText("Note: probe showed it")).toBeInTheDocument();
  });

  it("is withdrawn by a further entry, and undo does not touch it", async () => {
    const { user, ledger, pane, store } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    await user.click(pane().getByRole("button", { name: "Withdraw cure as M. Printer" }));
    expect(ledger().map(({ action }) => action)).toEqual(["sign", "withdraw"]);
    expect(pane().getByText(/^withdrawn by M\. Printer/)).toBeInTheDocument();
    act(() => store.getState().undo());
    expect(ledger()).toHaveLength(2);
  });

  it("does not count for another choice, and says that it was given for an earlier one", async () => {
    const { user, pane, store, row } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    const choice = { lineId: ids.line, placeId: ids.place, candidateId: ids.candidate };
    act(() => store.getState().edit((now) => chooseCandidate(now, choice)));
    expect(await pane().findByText(/^signed for an earlier choice by M\. Printer/)).toBeInTheDocument();
    expect(row(0)).toHaveTextContent("earlier choice");
    act(() => store.getState().undo());
    expect(await pane().findByText(/^signed by M\. Printer/)).toBeInTheDocument();
  });

  it("keeps the name for the next garment of this session", async () => {
    const documents = chooseCandidate(chosenJob(), {
      lineId: ids.otherLine,
      placeId: ids.place,
      candidateId: ids.otherCandidate,
    });
    const { user } = await openRun(documents);
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(screen.getByRole("button", { name: "Heavy tee, Forest, Mill B, Front" }));
    expect(screen.getByLabelText("Your name, for what you sign")).toHaveValue("M. Printer");
  });
});

describe("the release", () => {
  it("is blocked until every blocking item is signed, and says by what", async () => {
    const { user, pane, signAll, ledger, row } = await openRun();
    expect(release()).toBeDisabled();
    expect(pane().getByText("Blocked by cure, wash test, first-off and sample kept.")).toBeInTheDocument();
    await signAll("M. Printer");
    expect(release()).toBeEnabled();
    await user.click(release());
    expect(ledger().at(-1)).toMatchObject({ action: "release", itemCode: null, signer: "M. Printer" });
    expect(screen.getByText("1 of 2 released.")).toBeInTheDocument();
    expect(row(0)).toHaveTextContent(/released by M\. Printer/);
    expect(release()).toBeDisabled();
  });

  it("does not wait for what is only advised", async () => {
    const untested = { ...chosenJob(), library: { ...chosenJob().library, testPrints: [] } };
    const { pane, user, ledger } = await openRun(untested);
    expect(pane().getByText("advised")).toBeInTheDocument();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    for (const item of ["cure", "wash test", "first-off", "sample kept"]) {
      await user.click(pane().getByRole("button", { name: `Sign ${item} as M. Printer` }));
    }
    await user.click(release());
    expect(ledger().at(-1)?.action).toBe("release");
  });

  it("waits for the test print once there are more pieces than the shop's limit", async () => {
    const untested = { ...chosenJob(), library: { ...chosenJob().library, testPrints: [] } };
    const many = changeLine(untested, ids.line, { quantities: [{ size: "M", count: 145 }] });
    const { pane } = await openRun(many);
    expect(pane().getByText(/Blocked by test print, cure/)).toBeInTheDocument();
    expect(pane().getByText(/145 pieces: the shop's limit without a test is 144/)).toBeInTheDocument();
  });

  it("no longer counts when something it stood on is withdrawn", async () => {
    const { user, pane, signAll, row } = await openRun();
    await signAll("M. Printer");
    await user.click(release());
    await user.click(pane().getByRole("button", { name: "Withdraw wash test as M. Printer" }));
    expect(screen.getByText("0 of 2 released.")).toBeInTheDocument();
    expect(row(0)).toHaveTextContent("blocked by 1");
    expect(pane().getByText(/It was released by M\. Printer/)).toBeInTheDocument();
  });

  it("is held by a further entry, and released again by another", async () => {
    const { user, signAll, ledger, pane } = await openRun();
    await signAll("M. Printer");
    await user.click(release());
    await user.type(reason(), "lot mixed up");
    await user.click(screen.getByRole("button", { name: "Hold the run as M. Printer" }));
    expect(screen.getByText("0 of 2 released.")).toBeInTheDocument();
    expect(pane().getByText(/^Held by M\. Printer/)).toBeInTheDocument();
    expect(pane().getByText("Note: lot mixed up")).toBeInTheDocument();
    await user.click(release());
    expect(
      ledger()
        .slice(-3)
        .map(({ action }) => action),
    ).toEqual(["release", "hold", "release"]);
    expect(screen.getByText("1 of 2 released.")).toBeInTheDocument();
  });
});

describe("an override", () => {
  it("needs a reason", async () => {
    const { user, ledger, pane } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Override the open items as M. Printer" }));
    expect(ledger()).toEqual([]);
    expect(screen.getByRole("alert")).toHaveTextContent("An override needs a reason.");
  });

  it("opens the release and stays visible with its reason, in the pane and in the table", async () => {
    const { user, pane, row } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.type(reason(), "customer accepts");
    await user.click(pane().getByRole("button", { name: "Override the open items as M. Printer" }));
    expect(row(0)).toHaveTextContent("ready by override");
    expect(release()).toHaveFocus();
    await user.click(release());
    // In a row of its own below the garment's, so that a long reason has the table's width.
    expect(row(1)).toHaveTextContent(/! override of .*, by M\. Printer, .*: customer accepts/);
    await user.click(screen.getByRole("button", { name: "Hold the run as M. Printer" }));
    expect(row(1)).toHaveTextContent(/\(no longer in force\): customer accepts/);
    expect(
      pane().getByText(/Override by M\. Printer, .* \(no longer in force\): customer accepts/),
    ).toBeInTheDocument();
    expect(release()).toBeDisabled();
  });
});

describe("a reason or a note", () => {
  it("is not lost where the name is missing: it stays in its field until it is taken down", async () => {
    const { user, ledger, pane } = await openRun();
    await user.type(reason(), "customer accepts");
    await user.click(pane().getByRole("button", { name: "Override the open items" }));
    expect(ledger()).toEqual([]);
    expect(reason()).toHaveValue("customer accepts");
    await user.click(pane().getByRole("button", { name: "Add a note on cure" }));
    expect(screen.getByLabelText("Note on cure")).toHaveFocus();
    await user.keyboard("read at both ends");
    await user.click(pane().getByRole("button", { name: "Sign cure" }));
    expect(screen.getByLabelText("Note on cure")).toHaveValue("read at both ends");
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(pane().getByRole("button", { name: "Sign cure as M. Printer" }));
    expect(ledger()).toMatchObject([{ action: "sign", itemCode: "cure", note: "read at both ends" }]);
  });

  it("is refused where it is too long, and stays to be cut", async () => {
    const { user, ledger, pane } = await openRun();
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.click(reason());
    await user.paste("x".repeat(2001));
    await user.click(pane().getByRole("button", { name: "Override the open items as M. Printer" }));
    expect(ledger()).toEqual([]);
    expect(screen.getByRole("alert")).toHaveTextContent("At most 2000 characters; these are 2001.");
    await user.type(reason(), "{Backspace}");
    await user.click(pane().getByRole("button", { name: "Override the open items as M. Printer" }));
    expect(ledger()).toHaveLength(1);
  });
});

describe("a prediction", () => {
  it("that is not there yet holds the release back", async () => {
    const said = engineThatSays();
    const never = { ...said.engine, predictMatrix: () => new Promise<null>(() => {}) };
    const { row, pane } = await openRun(chosenJob(), { ...said, engine: never }, ids.line, false);
    expect(row(0)).toHaveTextContent("predicting…");
    expect(pane().getByText("The prediction is on its way.")).toBeInTheDocument();
    expect(release()).toBeDisabled();
  });

  it("that fails is said, and releases nothing", async () => {
    const said = engineThatSays();
    const failing = { ...said.engine, predictMatrix: async () => Promise.reject(new Error("planted")) };
    const { row, pane, signAll } = await openRun(chosenJob(), { ...said, engine: failing });
    await waitFor(() => expect(row(0)).toHaveTextContent("blocked"));
    await signAll("M. Printer");
    expect(pane().getByText("The prediction failed: reload the page.")).toBeInTheDocument();
    expect(release()).toBeDisabled();
  });

  it("that is wider than the tolerance brings the test print, with both figures", async () => {
    const untested = { ...chosenJob(), library: { ...chosenJob().library, testPrints: [] } };
    const { pane } = await openRun(untested, engineThatSays({ deltaL5: -8, deltaL95: -2 }));
    expect(
      await pane().findByText(/only known to ± 3\.0 in nine of ten; the tolerance is ± 1\.5/),
    ).toBeInTheDocument();
  });
});

describe("the cure", () => {
  it("is shown as the shop entered it, in its unit, and as missing where it did not", async () => {
    const cure = { filmCelsius: 160, seconds: 60, note: "sheet of the maker" };
    const entered = changeShelfItem(chosenJob(), "bases", ids.clear, { cure });
    const { units } = entered.library.shelf.defaults;
    entered.library.shelf.defaults.units = { ...units, temperature: "fahrenheit" };
    const { pane } = await openRun(entered);
    expect(pane().getByText(/film 320 °F, 60 s \(as entered on the shelf\)/)).toBeInTheDocument();
    expect(pane().getByText("not entered")).toBeInTheDocument();
    expect(pane().getByText(/One part of the mix has no cure on the shelf/)).toBeInTheDocument();
  });
});
