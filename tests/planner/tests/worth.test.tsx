/** Tests worth making: the list and its money, when it is planned anew, what limits it, and the way to the bench. */
import { act, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { TestsFinding } from "../../../src/engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { appendChecklistEntry } from "../../../src/job/edits/checklist.ts";
import { changeJob, setRunStartsOn } from "../../../src/job/edits/job.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import { today } from "../../../src/planner/state/identity.ts";
import { exampleDocuments, exampleEntry, exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { exampleFinding, plansOnDemand } from "../plansOnDemand.ts";
import { openTests } from "./testsBench.tsx";

function inEuros(): Documents {
  return changeDefaults(exampleDocuments(), { currency: "EUR" });
}

async function openWorth(documents = inEuros(), finding: TestsFinding | null = exampleFinding()) {
  const plans = plansOnDemand();
  const opened = await openTests(documents, { decisions: plans.engine }, { tab: "worth-making" });
  if (finding !== null) await plans.answer(finding);
  return { ...opened, plans };
}

const rows = () =>
  within(screen.getByRole("table", { name: /^Test prints worth making/ }))
    .getAllByRole("row")
    .slice(1);
const textOf = (element: HTMLElement | null | undefined) =>
  element?.textContent?.replaceAll("\u00a0", " ") ?? "";
const page = () => textOf(document.querySelector<HTMLElement>(".worth"));

describe("the plan", () => {
  it("opens first, and says in a sentence which three come first and what they settle", async () => {
    await openWorth();
    expect(screen.getByRole("tab", { name: "Worth making", selected: true })).toBeVisible();
    expect(page()).toContain(
      "Print these 3 first: Forest (Mill B) with gloss clear + 20 % soft-hand additive, Forest (Mill A) and Forest (Mill B) with gloss clear + 0.5 % black.",
    );
    expect(page()).toContain(
      "Of 30 possible test prints these 3 settle 50 % of the avoidable risk; all 4 that are worth their price settle 91 %.",
    );
  });

  it("says that nothing can be weighed where a miss costs nothing by what is entered, and calls no test worthless", async () => {
    const { lines } = exampleFinding();
    const free = { lossNow: 0, avoidable: 0, netWorth: 0, tests: [] };
    const next = { ...exampleFinding().next!, riskRemoved: 0, cost: 0 };
    await openWorth(inEuros(), exampleFinding({ ...free, next, lines }));
    expect(page()).toContain("No test print can be weighed in money yet.");
    expect(page()).not.toMatch(/worth its price|lost whatever is tested/);
  });

  it("says in money what skipping costs, what is saved, and what no test can take away", async () => {
    await openWorth();
    const figures = [...document.querySelectorAll<HTMLElement>(".worth__figures > div")].map((figure) => [
      textOf(figure.querySelector<HTMLElement>("dd")),
      textOf(figure.querySelector<HTMLElement>("dt")),
    ]);
    // 1186 + 602 + 505 + 40; the fourth alone; four tests at 25 off; 5000 - 2600.
    expect(figures).toEqual([
      ["2,333 EUR", "expected to be lost if all are skipped"],
      ["40 EUR", "expected to be lost if only the first 3 are made and the other 1 skipped"],
      ["2,233 EUR", "saved in expectation. The 4 tests cost 100 EUR, already taken off"],
      ["2,400 EUR", "expected to be lost whatever is tested, see below"],
    ]);
  });

  it("ranks the tests with print, pairs, range, money, share and whom they inform", async () => {
    await openWorth();
    const [first, second, , rest] = rows();
    expect(textOf(first)).toContain("1.Forest (Mill B)Heavy tee, lot B-7, front");
    expect(textOf(first)).toContain("Gloss clear + 20 % soft-hand additive 61-64, one stroke");
    expect(textOf(first)).toContain("2 pieces, 6 pairs; expected now 1.5 to 9.5 darker");
    expect(textOf(first)).toContain("1,186 EURthe test 25 EUR26 %itself 1,186 EUR");
    expect(textOf(second)).toContain("itself 425 EURForest (Mill B) 177 EUR");
    expect(textOf(rest)).toBe("One more is worth its price: skipping it costs 40 EUR in expectation.");
  });

  it("folds what a test tells of others after three", async () => {
    const documents = inEuros();
    const { line, otherLine, place } = ids;
    const [one] = exampleFinding().tests;
    const informs = [otherLine, line, otherLine, line, otherLine].map((lineId, index) => ({
      lineId,
      placeId: place,
      riskRemoved: index === 4 ? 1 : 100 - index,
    }));
    await openWorth(documents, exampleFinding({ tests: [{ ...one!, informs }] }));
    expect(screen.getByText("and 1 more")).toBeInTheDocument();
    // Under a hundredth of what the test removes is not worth a line.
    expect(page()).not.toContain(" 1 EUR");
  });

  it("says which comes next and why it is not on the list", async () => {
    await openWorth();
    expect(page()).toContain(
      "Next would be Forest (Mill A), but a test there removes 24.69 EUR of risk and costs 25 EUR: not worth its price.",
    );
  });

  it("reads its curve aloud", async () => {
    await openWorth();
    expect(textOf(screen.getByRole("img", { name: /by the number of test prints/ }))).toContain(
      "4 tests: 91 %",
    );
    const name = screen.getByRole("img", { name: /by the number/ }).getAttribute("aria-label");
    expect(name?.replaceAll("\u00a0", " ")).toContain("1 test 26 %, 3 tests 50 %, 4 tests 91 %.");
  });

  it("shows apart what no test can take away, with the way to the matrix where no mix serves", async () => {
    await openWorth(inEuros(), exampleFinding({ lossNow: 130, avoidable: 73 }));
    const stays = within(screen.getByRole("region", { name: "What no test can take away" }));
    // Thirty pieces at 3 and the print, 0.7 refused: 55 of it stays, so hardly any chance is left.
    const told = stays.getAllByRole("listitem");
    expect(told).toHaveLength(1);
    expect(textOf(told[0])).toMatch(/^Forest \(Mill A\)55 EURat best \d+ % in band\. No mix in the matrix/);
    expect(stays.getByRole("link", { name: "See Forest (Mill A) in the matrix" })).toHaveAttribute(
      "href",
      `#/job/${ids.job}/matrix?line=${ids.line}&place=${ids.place}`,
    );
    expect(page()).toContain("The rest: Forest (Mill B) 2 EUR.");
  });

  it("says that none is worth its price where none is", async () => {
    await openWorth(inEuros(), exampleFinding({ tests: [], netWorth: 0 }));
    expect(page()).toContain("No test print is worth its price now.");
    expect(page()).toContain("The best would be Forest (Mill A), but a test there removes 24.69 EUR");
    expect(screen.queryByRole("table")).toBeNull();
  });
});

describe("recording a test of the list", () => {
  it("opens the bench form with its garment, mix and set-up, and keeps them in the address", async () => {
    const { user } = await openWorth();
    await user.click(screen.getAllByRole("button", { name: /^Record this print: Forest \(Mill B\)/ })[1]!);
    expect(screen.getByLabelText("Garment lot")).toHaveValue(ids.otherLot);
    expect(screen.getByLabelText("Set-up")).toHaveValue(ids.setUp);
    expect(screen.getByLabelText("Mix")).toHaveDisplayValue(/a little black/);
    const address = new URLSearchParams(window.location.hash.split("?")[1]);
    expect(Object.fromEntries(address)).toEqual({
      line: ids.otherLine,
      place: ids.place,
      mix: ids.otherCandidate,
      tab: "record",
    });
  });

  it("lets a record that is being typed come first, unchanged", async () => {
    const { user, openTab } = await openWorth();
    await user.click(
      screen.getByRole("button", { name: /^Record this print: Forest \(Mill A\), Gloss clear \+ 20/ }),
    );
    await openTab("Worth making");
    await user.click(screen.getAllByRole("button", { name: /^Finish the record/ })[0]!);
    expect(screen.getByLabelText("Garment lot")).toHaveValue(ids.lot);
  });
});

describe("the plan is made anew", () => {
  it("once a record is kept: the last one stays readable, the first pick is told as soon as it is known", async () => {
    const { store, plans } = await openWorth();
    act(() => store.getState().record((now) => appendTestPrint(now, exampleTestPrint(7))));
    expect(plans.asked).toHaveLength(2);
    expect(plans.asked[1]?.documents.library.testPrints).toHaveLength(1);
    expect(screen.getByText("Planning… Until then this is the last plan.")).toBeVisible();
    expect(document.querySelector(".worth__plan")).toHaveAttribute("data-stale");
    expect(rows()).toHaveLength(5);
    act(() => plans.asked[1]?.onFirst?.({ lineId: ids.line, placeId: ids.place }));
    expect(screen.getByText(/^Planning… First comes Forest \(Mill A\)\./)).toBeVisible();
    const [, second] = exampleFinding().tests;
    await plans.answer(exampleFinding({ tests: [second!] }));
    expect(page()).toContain("Print this one: Forest (Mill A).");
    expect(screen.queryByText(/^Planning/)).toBeNull();
    expect(document.querySelector(".worth__plan")).not.toHaveAttribute("data-stale");
  });

  it("when a line, a choice, a price or the shelf changes, and not when something else does", async () => {
    const { store, plans } = await openWorth();
    const { edit, record } = store.getState();
    act(() => edit((now) => changeJob(now, { customer: "Another name" })));
    act(() => record((now) => appendChecklistEntry(now, exampleEntry(1))));
    expect(plans.asked).toHaveLength(1);
    act(() => edit((now) => changeLine(now, ids.line, { piecePrice: 9 })));
    expect(plans.asked).toHaveLength(2);
    await plans.answer();
    const { prices } = store.getState().documents!.library.shelf.defaults;
    act(() => edit((now) => changeDefaults(now, { prices: { ...prices, testPrint: 60 } })));
    expect(plans.asked).toHaveLength(3);
  });

  it("and not asked again where the tab is opened again", async () => {
    const { plans, openTab } = await openWorth();
    await openTab("Record book");
    await openTab("Worth making");
    expect(rows()).toHaveLength(5);
    expect(plans.asked).toHaveLength(1);
  });

  it("is asked again where a question from elsewhere overtook it", async () => {
    const { plans } = await openWorth(inEuros(), null);
    await plans.answer(null);
    expect(plans.asked).toHaveLength(2);
    await plans.answer();
    expect(rows()).toHaveLength(5);
  });

  it("says in words when it fails", async () => {
    const { plans } = await openWorth(inEuros(), null);
    await plans.fail();
    expect(screen.getByRole("alert")).toHaveTextContent("The test plan could not be made.");
  });
});

describe("what limits the tests", () => {
  it("is the day of the run and the shop's pace, each open to edit", async () => {
    const { fill, plans, now } = await openWorth(
      setRunStartsOn(inEuros(), "9998-03-02"),
      exampleFinding({ atMostTests: 12 }),
    );
    const { testing } = inEuros().library.shelf.defaults;
    expect(page()).toContain("Before 9998-03-02 there is time for 12 test prints");
    await fill("Printed and read in a day", "3");
    expect(now().library.shelf.defaults.testing).toEqual({ ...testing, perDay: 3 });
    await fill("The run starts on", "9999-03-02");
    expect(now().job.runStartsOn).toBe("9999-03-02");
    await plans.answer();
    await waitFor(() => expect(plans.asked.at(-1)?.documents.job.runStartsOn).toBe("9999-03-02"));
    expect(plans.asked.at(-1)?.documents.library.shelf.defaults.testing.perDay).toBe(3);
    expect(plans.asked.at(-1)?.today).toBe(today());
  });

  it("is none where the day is over, which is said", async () => {
    const { plans } = await openWorth(setRunStartsOn(inEuros(), "2020-01-31"));
    expect(plans.asked[0]?.documents.job.runStartsOn).toBeNull();
    expect(page()).toContain("The day the run was to start, 2020-01-31, is over");
  });

  it("is said where no test fits before the run, with the list of a run that can wait", async () => {
    const { plans } = await openWorth(setRunStartsOn(inEuros(), today()));
    expect(plans.asked[0]?.documents.job.runStartsOn).toBeNull();
    expect(page()).toContain(`No test can be printed, rested and read before the run on ${today()}.`);
    expect(rows()).toHaveLength(5);
  });

  it("is the spare pieces of each garment, with its price beside them", async () => {
    const { fill, now } = await openWorth();
    fireEvent.click(screen.getByText("Spare pieces and prices of the garments"));
    const details = screen.getByText("Spare pieces and prices of the garments").closest("details")!;
    details.open = true;
    fireEvent(details, new Event("toggle"));
    await fill("Spare pieces of Heavy tee, Forest, Mill B, spare pieces", "4");
    await fill("Price of a piece of Heavy tee, Forest, Mill B, EUR a piece", "5.5");
    expect(now().job.lines[1]).toMatchObject({ sparePieceCount: 4, piecePrice: 5.5 });
  });
});

describe("nothing to weigh", () => {
  it("leads to the matrix where it has no mix, and asks nothing", async () => {
    const documents = inEuros();
    const job = {
      ...documents.job,
      places: documents.job.places.map((place) => ({ ...place, candidates: [] })),
    };
    const { plans } = await openWorth({ ...documents, job }, null);
    expect(page()).toContain("The matrix has no mix yet");
    expect(screen.getByRole("link", { name: "Go to the matrix" })).toBeVisible();
    expect(plans.asked).toEqual([]);
  });

  it("names what could not be predicted", async () => {
    await openWorth(inEuros(), exampleFinding({ left: [{ lineId: ids.line, placeId: ids.place }] }));
    expect(page()).toContain("Not weighed, because they cannot be predicted yet: Forest (Mill A).");
  });
});
