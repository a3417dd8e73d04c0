/** The record book, suspicious records, references and what was learned: found, answered, approved, consented to. */
import { screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { DEFAULT_PRIOR_SCALES } from "../../../src/core/evidence/priorScales.ts";
import { exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { openTests, SWAPPED, withPrints } from "./testsBench.tsx";

const rows = () =>
  within(screen.getByRole("table", { name: "Record book" }))
    .getAllByRole("row")
    .slice(1);
const pane = () => within(screen.getByRole("region", { name: "The record opened" }));

describe("the record book", () => {
  it("is searched by words and keeps corrected records out until they are asked for", async () => {
    const prints = [
      exampleTestPrint(1, { note: "by the window" }),
      exampleTestPrint(2, { supersedesId: exampleTestPrint(1).id }),
      exampleTestPrint(3, { garmentLotId: ids.otherLot, operator: "B. Reader" }),
    ];
    const { user } = await openTests(withPrints(prints), {}, { tab: "book" });
    expect(rows()).toHaveLength(2);
    await user.type(screen.getByRole("searchbox"), "b. reader");
    expect(rows()).toHaveLength(1);
    await user.clear(screen.getByRole("searchbox"));
    await user.click(screen.getByLabelText("Corrected records too"));
    expect(rows()).toHaveLength(3);
    expect(screen.getByText("corrected by a later record")).toBeVisible();
    await user.type(screen.getByRole("searchbox"), "nowhere to be found");
    expect(screen.getByText("No record is found.")).toBeVisible();
  });

  it("opens the readings of one print together, and the form to read it again", async () => {
    const readAt = "2026-02-20T10:00:00Z";
    const { user } = await openTests(
      withPrints([exampleTestPrint(1), exampleTestPrint(2, { readAt })]),
      {},
      { tab: "book" },
    );
    await user.click(within(rows()[0]!).getByRole("button"));
    expect(pane().getByText("The same print, read 2 times")).toBeVisible();
    expect(pane().getByText(/^It stands still: 0\.0\sL\* in/)).toBeVisible();
    await user.click(pane().getByRole("button", { name: "Read it again" }));
    expect(screen.getByLabelText("Garment lot")).toBeDisabled();
    expect(screen.queryByLabelText("Printed")).toBeNull();
  });

  it("keeps a print as the approved reference with what was said of it, in place of the one before", async () => {
    const { user, now } = await openTests(undefined, {}, { tab: "book" });
    await user.click(within(rows()[0]!).getByRole("button"));
    const keep = pane().getByRole("button", { name: "Keep as the approved reference" });
    expect(keep).toBeDisabled();
    await user.type(pane().getByLabelText("Approved by"), "A. Buyer{Tab}");
    await user.click(keep);
    expect(now().library.approvals).toMatchObject([
      {
        testPrintId: exampleTestPrint(1).id,
        approvedBy: "A. Buyer",
        said: { deltaL: -4, p5: -9, p95: -1.5, evidence: "related prints", chanceInBand: 0.4 },
        supersedesId: null,
      },
    ]);
    expect(
      pane().getByText(/^4\.0 darker, 1\.5 to 9\.0 in nine of ten, 40\s% in band; related prints/),
    ).toBeVisible();
    expect(pane().getByText(/^3\.0 darker, 2\.0 to 4\.0 in nine of ten, .* this lot/)).toBeVisible();
    expect(pane().getByText(/follows it: 3\.0 darker/)).toBeVisible();
  });
});

describe("a suspicious record", () => {
  it("is told with its slip, set aside until somebody answers, and kept by an answer with a name", async () => {
    const { user, now, learnt } = await openTests(
      undefined,
      { suspicions: [SWAPPED] },
      { tab: "suspicious" },
    );
    expect(await screen.findByText(/One record looks wrong and is set aside/)).toBeVisible();
    expect(screen.getByText(/by 6\.5 standard deviations\. .* are they swapped\?/)).toBeVisible();
    const keep = screen.getByRole("button", { name: "Keep it: it is right" });
    expect(keep).toBeDisabled();
    await user.type(screen.getByLabelText("Your name, for the answer"), "A. Printer{Tab}");
    await user.click(keep);
    expect(now().library.slipAnswers).toMatchObject([
      { slip: "swapped-pair", answer: "keep", by: "A. Printer" },
    ]);
    expect(screen.getByText(/^Kept by A\. Printer, .*: it teaches like any other\.$/)).toBeVisible();
    await waitFor(() => expect([...learnt.at(-1)!.kept]).toEqual([exampleTestPrint(1).id]));
    await user.click(screen.getByRole("button", { name: "Set it aside" }));
    expect(now().library.slipAnswers.map(({ answer }) => answer)).toEqual(["keep", "set-aside"]);
    await waitFor(() => expect([...learnt.at(-1)!.setAside]).toEqual([exampleTestPrint(1).id]));
  });

  it("is said not to be there where none stands out", async () => {
    await openTests(undefined, {}, { tab: "suspicious" });
    expect(screen.getByText(/^No record stands out\./)).toBeVisible();
  });
});

describe("what was learned", () => {
  const learned = [
    { kind: "style", of: ["corner tee"], mean: Math.log(1.5), sd: 0.1, priorSd: 0.18, recordCount: 3 },
    { kind: "fibreGain", of: ["polyester-spun"], mean: 0.01, sd: 0.2, priorSd: 0.25, recordCount: 3 },
    { kind: "fibreGain", of: ["cotton"], mean: 0, sd: 0.249, priorSd: 0.25, recordCount: 1 },
  ] as const;

  it("is told in words and figures; what hardly anything taught is said to be so", async () => {
    await openTests(undefined, { learned }, { tab: "learned" });
    const text = (name: string) => screen.getByRole("region", { name }).textContent;
    expect(text("Styles")).toContain(
      "wets out 1.50 times as strongly1.27 to 1.77 times, in nine of ten3 prints",
    );
    expect(text("Fibres")).toContain("Spun polyesterwets out about as strongly");
    expect(text("Fibres")).toContain("Cottontaught almost nothing1 print");
  });

  it("gives the shop's own scales from a hundred prints on, and only by consent", async () => {
    const scales = { ...DEFAULT_PRIOR_SCALES, mill: 0.42 };
    const estimate = { scales, counts: { mill: 12 }, lnEvidenceGain: 3, recordCount: 120 };
    const { user, now } = await openTests(
      undefined,
      { learned, scales: estimate, teachingCount: 120 },
      { tab: "learned" },
    );
    await user.click(screen.getByRole("button", { name: "Estimate the scales from our records" }));
    expect(await screen.findByText("0.42")).toBeVisible();
    expect(now().library.shelf.defaults.priorScales).toBeNull();
    await user.click(screen.getByRole("button", { name: "Use our own scales" }));
    expect(now().library.shelf.defaults.priorScales).toEqual(scales);
    await user.click(screen.getByRole("button", { name: "Go back to the model's own scales" }));
    expect(now().library.shelf.defaults.priorScales).toBeNull();
  });

  it("says from when on it can tell, below a hundred prints", async () => {
    await openTests(undefined, { learned, teachingCount: 7 }, { tab: "learned" });
    expect(screen.getByText(/From about 100 prints on, .* there are 7\./)).toBeVisible();
    expect(screen.queryByRole("button", { name: /Estimate the scales/ })).toBeNull();
  });
});

describe("a goods-in check", () => {
  it("is kept with both changes, and read as how many times as strong", async () => {
    const { user, now, fill } = await openTests(undefined, {}, { tab: "goods-in" });
    await user.click(screen.getByRole("button", { name: "Keep this check" }));
    expect(screen.getByRole("alert")).toHaveTextContent(
      "Still missing: the approved garment, the arriving garment",
    );
    await user.selectOptions(screen.getByLabelText("Approved garment"), ids.lot);
    await user.selectOptions(screen.getByLabelText("Arriving garment"), ids.otherLot);
    await user.selectOptions(screen.getByLabelText("Base drawn"), ids.clear);
    await fill("Change of L* on the approved one, darker is negative", "-3");
    await fill("Change of L* on the arriving one, darker is negative", "-7.5");
    await fill("Drawn by", "A. Printer");
    expect(screen.getByText("7.5 darker against 3.0 darker: 2.5 times as strong.")).toBeVisible();
    await user.click(screen.getByRole("button", { name: "Keep this check" }));
    expect(now().library.goodsInChecks).toMatchObject([
      { approvedLotId: ids.lot, arrivingLotId: ids.otherLot, approvedChange: -3, arrivingChange: -7.5 },
    ]);
    await user.click(screen.getByRole("button", { name: /^Correct the check of/ }));
    await fill("Change of L* on the arriving one, darker is negative", "-6");
    await user.click(screen.getByRole("button", { name: "Keep this check" }));
    const [first, second] = now().library.goodsInChecks;
    expect([second?.supersedesId, second?.arrivingChange]).toEqual([first?.id, -6]);
    expect(screen.getByText(/6\.0 darker against 3\.0 darker: 2\.0 times as strong\./)).toBeVisible();
  });
});
