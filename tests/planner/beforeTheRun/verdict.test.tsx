/** Before the run follows the evidence: verdicts with money and chance, lots that changed, and the record of a release. */
import { act, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import type { TestsFinding } from "../../../src/engine/decisions/decisionProtocol.ts";
import { lineLoss } from "../../../src/job/decisions/lineMoney.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { setRunStartsOn } from "../../../src/job/edits/job.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import { MODEL_VERSION } from "../../../src/job/modelVersion.ts";
import type { Approval } from "../../../src/job/recordDocument.ts";
import { today } from "../../../src/planner/state/identity.ts";
import { exampleId, exampleTestPrint, ids, time } from "../../job/exampleDocuments.ts";
import { exampleFinding, exampleTest, plansOnDemand } from "../plansOnDemand.ts";
import { chosenJob, engineThatSays, openRun } from "./runBench.tsx";

function inEuros(documents = chosenJob()): Documents {
  return changeDefaults(documents, { currency: "EUR" });
}

/** A plan in which the first line, chosen as it is, is not worth a test. */
const NONE = exampleFinding({ tests: [], netWorth: 0 });
const OF_CHOSEN = exampleTest({ lineId: ids.line, candidateId: ids.otherCandidate });
/** The first line's chosen print is worth a test. */
const WANTED = exampleFinding({ tests: [OF_CHOSEN] });

function untested(documents = inEuros()): Documents {
  return { ...documents, library: { ...documents.library, testPrints: [] } };
}

const approval: Approval = {
  id: exampleId(0x30000),
  garmentLotId: ids.otherLot,
  testPrintId: exampleTestPrint(2).id,
  approvedBy: "A. Buyer",
  approvedAt: time,
  note: "",
  modelVersion: MODEL_VERSION,
  said: { deltaL: -3, p5: -4, p95: -2, evidence: "this lot", chanceInBand: 0.9 },
  supersedesId: null,
};

/** The first line stands in for the lot of Mill B, which the buyer approved. */
function substituted(documents = inEuros()): Documents {
  const testPrints = [
    ...documents.library.testPrints,
    exampleTestPrint(2, { garmentLotId: ids.otherLot, recipe: documents.job.mixes[1]!.recipe }),
  ];
  const changed = changeLine(documents, ids.line, { substitutedForLotId: ids.otherLot });
  return { ...changed, library: { ...changed.library, testPrints, approvals: [approval] } };
}

async function openWith(documents: Documents, finding: TestsFinding | null, said = engineThatSays()) {
  const plans = plansOnDemand();
  const opened = await openRun(documents, said, ids.line, true, plans.engine);
  if (finding !== null) await plans.answer(finding);
  const wordsOf = (element: HTMLElement | null) => element?.textContent?.replaceAll("\u00a0", " ") ?? "";
  const verdict = (index: number) => wordsOf(opened.row(index).querySelector<HTMLElement>(".run__verdict"));
  const part = () => within(opened.pane().getByRole("region", { name: "Verdict" }));
  return { ...opened, plans, verdict, part, wordsOf };
}

describe("the verdict", () => {
  it("runs on evidence, with chance and expected loss, where nothing asks for more", async () => {
    const { verdict, part } = await openWith(inEuros(), NONE);
    const documents = inEuros();
    const { expectedLoss } = lineLoss(documents, documents.job.lines[0]!, 0.9);
    expect(verdict(0)).toBe(`Run on evidence: 90 % in band, expected loss ${expectedLoss.toFixed(2)} EUR`);
    expect(part().getByText(/is on record/)).toBeVisible();
  });

  it("says of no test that it is not worth its price where time or spare pieces keep it out of the plan", async () => {
    const wide = engineThatSays({ deltaL5: -8, deltaL95: -2 });
    const full = exampleFinding({ tests: [exampleTest()], atMostTests: 1, next: null });
    const late = await openWith(untested(), full, wide);
    expect(late.part().getByText(/The days before the run are taken up/)).toBeVisible();
    expect(late.part().queryByText(/worth its price/)).toBeNull();
    late.view.unmount();
    const bare = await openWith(changeLine(untested(), ids.line, { sparePieceCount: 0 }), NONE, wide);
    expect(bare.part().getByText(/too few spare pieces/)).toBeVisible();
  });

  it("asks for a test that the plan wants though no rule does, with both prices and the ways there", async () => {
    const { verdict, part } = await openWith(inEuros(), WANTED);
    expect(verdict(0)).toBe("Print a test: skipping it costs 1,186 EUR in expectation, the test 25 EUR");
    const at = `line=${ids.line}&mix=${ids.otherCandidate}&place=${ids.place}`;
    const ways = part()
      .getAllByRole("link")
      .map((link) => [link.textContent, link.getAttribute("href")]);
    expect(ways).toEqual([
      ["See the test plan", `#/job/${ids.job}/tests?${at}&tab=worth-making`],
      ["Record a test print of it", `#/job/${ids.job}/tests?${at}&tab=record`],
    ]);
    expect(part().getByText("What the money rests on")).toBeVisible();
  });

  it("asks for a test that a rule wants though the money does not, and says what it is worth", async () => {
    const wide = engineThatSays({ deltaL5: -8, deltaL95: -2 });
    const { verdict, part } = await openWith(untested(), NONE, wide);
    expect(verdict(0)).toBe("Print a test: a rule asks for it; by the money alone it is not worth its price");
    expect(part().getByText(/removes no more than 24\.69.EUR of risk and costs 25.EUR/)).toBeVisible();
  });

  it("says of a test that only a rule asks for where another mix comes first", async () => {
    const wide = engineThatSays({ deltaL5: -8, deltaL95: -2, chanceInBand: 0.2 });
    const { verdict } = await openWith(untested(), NONE, wide);
    expect(verdict(0)).toBe(
      "Print a test: a rule asks for it, but it has 20 % in band: choose another mix first",
    );
  });

  it("says what a rule asks for before the plan is there, and nothing else", async () => {
    const wide = engineThatSays({ deltaL5: -8, deltaL95: -2 });
    const { verdict, plans } = await openWith(untested(), null, wide);
    expect(verdict(0)).toBe("Print a test: a rule asks for it");
    expect(verdict(1)).toBe("Choose a mix");
    await plans.answer(WANTED);
    expect(verdict(0)).toContain("skipping it costs 1,186 EUR");
  });

  it("sends a garment without a mix to the matrix, with what its best mix there can do", async () => {
    const { verdict } = await openWith(inEuros(), exampleFinding());
    expect(verdict(1)).toBe(
      "Choose a mix: the best in the matrix has 60 % in band; skipping its test costs 1,186 EUR",
    );
  });

  it("does not run on evidence what is likelier out of band than in it", async () => {
    const { verdict, part } = await openWith(inEuros(), NONE, engineThatSays({ chanceInBand: 0.31 }));
    expect(
      part().getByText(/likelier out of the band than in it; the best of the matrix has 10/),
    ).toBeVisible();
    expect(verdict(0)).toMatch(/^Choose another mix: 31 % in band, expected loss \d+(\.\d\d)? EUR$/);
    expect(part().getByRole("link", { name: "Go to the matrix" })).toBeVisible();
  });

  it("asks to check the goods where another lot was approved and the test is signed for or made", async () => {
    const { verdict, part } = await openWith(substituted(), NONE);
    expect(verdict(0)).toBe("Check the goods: the lot differs from the approved one");
    expect(part().getByRole("link", { name: "Enter the goods-in check" })).toHaveAttribute(
      "href",
      expect.stringContaining("tab=goods-in"),
    );
  });

  it("says that the run would have to wait where no test fits before it", async () => {
    const { part, plans } = await openWith(setRunStartsOn(inEuros(), today()), WANTED);
    expect(plans.asked[0]?.documents.job.runStartsOn).toBeNull();
    expect(part().getByText(/the run would have to wait for it/)).toBeVisible();
  });

  it("is summed up in one sentence above the table", async () => {
    await openWith(inEuros(), WANTED);
    expect(document.querySelector(".run__summary")?.textContent?.replaceAll("\u00a0", " ")).toContain(
      "By evidence and money: 1 to test-print, 1,186 EUR expected to be lost if skipped; 1 to choose a mix for.",
    );
  });

  it("says that nothing is said of money where the plan fails", async () => {
    const { plans, part, verdict } = await openWith(inEuros(), null);
    await plans.fail();
    expect(part().getByText(/The test plan could not be made/)).toBeVisible();
    expect(verdict(0)).toBe("");
  });
});

describe("a lot that changed", () => {
  it("after approval is said at the line, with what was approved, by whom and when", async () => {
    const { row, wordsOf } = await openWith(substituted(), NONE);
    expect(wordsOf(row(1))).toMatch(
      /^! another lot Approved was lot B-7 of Heavy tee, Forest, Mill B by A\. Buyer, 17 Feb 2026: that does not hold for lot A-1\.$/,
    );
  });

  it("after release is said at the line, and the release holds no longer", async () => {
    const { user, signAll, store, row, wordsOf } = await openWith(inEuros(), NONE);
    await signAll("M. Printer");
    await user.click(screen.getByRole("button", { name: /^Release the run/ }));
    act(() => store.getState().edit((now) => changeLine(now, ids.line, { garmentLotId: ids.otherLot })));
    await waitFor(() => expect(row(0)).toHaveTextContent("Heavy tee, Forest, Mill B"));
    expect(wordsOf(row(1))).toMatch(
      /^! another lot Released was lot A-1 of Heavy tee, Forest, Mill A by M\. Printer, .*: that no longer holds, this is lot B-7\./,
    );
    expect(screen.getByText("0 of 2 released.")).toBeVisible();
  });
});

describe("the release record", () => {
  it("has who, what and what was said, and beside it what is known today", async () => {
    const documents = inEuros();
    const { user, signAll, store, view, ledger } = await openWith(documents, NONE);
    await signAll("M. Printer");
    expect(screen.queryByRole("region", { name: "Release records" })).toBeNull();
    await user.click(screen.getByRole("button", { name: /^Release the run/ }));
    const { expectedLoss } = lineLoss(documents, documents.job.lines[0]!, 0.9);
    expect(ledger().at(-1)?.said).toMatchObject({ chanceInBand: 0.9, expectedLoss });
    const now = store.getState().documents!;
    view.unmount();
    const later = engineThatSays({ deltaL: -3.2, deltaL5: -3.5, deltaL95: -2.9, chanceInBand: 0.99 });
    const { wordsOf } = await openWith(now, NONE, later);
    const records = within(screen.getByRole("region", { name: "Release records" }));
    const record = records.getByRole("region", { name: /^Release record of Heavy tee, Forest, Mill A/ });
    expect(wordsOf(record)).toMatch(
      /^Heavy tee, Forest, Mill A, lot A-1, frontReleased by M\. Printer, .*: 30 pieces, Clear, a little black \(Gloss clear \+ 0\.5 % black\), 61-64, one stroke\./,
    );
    expect(wordsOf(record)).toContain("Signed: cure by M. Printer");
    const figures = within(record)
      .getAllByRole("row")
      .map((row) => wordsOf(row));
    const today = lineLoss(documents, documents.job.lines[0]!, 0.99).expectedLoss;
    expect(figures).toEqual([
      "Said at the releaseKnown today",
      "Prediction4.0 darker, 3.0 to 5.0 in nine of ten3.2 darker, 2.9 to 3.5 in nine of ten",
      "Chance in band90 %99 %",
      "Evidencemodel onlymodel only",
      `Expected loss${expectedLoss.toFixed(2)} EUR${today.toFixed(2)} EUR`,
      `Model version${MODEL_VERSION}${MODEL_VERSION}`,
    ]);
  });

  it("keeps every override with its reason", async () => {
    const { user, pane, wordsOf } = await openWith(inEuros(), NONE);
    await user.type(screen.getByLabelText("Your name, for what you sign"), "M. Printer{Enter}");
    await user.type(pane().getByLabelText(/^Reason/), "customer accepts");
    await user.click(pane().getByRole("button", { name: /^Override/ }));
    await user.click(screen.getByRole("button", { name: /^Release the run/ }));
    const record = within(screen.getByRole("region", { name: "Release records" })).getByRole("region");
    expect(wordsOf(record)).toMatch(/! Override by M\. Printer, .*: customer accepts/);
  });
});
