/** A first-off at the press: the verdict while it is typed, what is kept of it, and that nothing is lost or passed unsigned. */
import { act, screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { checklistSubject } from "../../../src/job/checklistSubject.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { changePlace } from "../../../src/job/edits/places.ts";
import { MODEL_VERSION } from "../../../src/job/modelVersion.ts";
import { exampleDocuments, ids } from "../../job/exampleDocuments.ts";
import { chosenJob, openPress, withReference } from "./pressBench.tsx";

describe("what is on the press", () => {
  it("is only what has a mix, and a garment without one is led to the matrix", async () => {
    await openPress(chosenJob(), { line: ids.otherLine });
    expect(screen.getAllByRole("button", { name: /^Heavy tee, Forest/ })).toHaveLength(1);
    expect(screen.getByText(/No mix is chosen for this garment yet/)).toBeInTheDocument();
    expect(screen.getByRole("link", { name: "choose in the matrix" })).toHaveAttribute(
      "href",
      `#/job/${ids.job}/matrix?line=${ids.otherLine}`,
    );
  });

  it("says so where nothing is chosen at all", async () => {
    await openPress(exampleDocuments());
    expect(screen.getByText(/No mix is chosen for any garment yet/)).toBeInTheDocument();
  });

  it("names the target and where it comes from: the place, or the approved print", async () => {
    const { view } = await openPress();
    expect(screen.getByText("4.0 darker ± 1.5")).toBeInTheDocument();
    expect(screen.getByText("the target of the place")).toBeInTheDocument();
    view.unmount();
    await openPress(withReference());
    expect(screen.getByText("3.0 darker ± 1.5")).toBeInTheDocument();
    expect(
      screen.getByText("as the reference print of Heavy tee, Forest, Mill A, lot A-1"),
    ).toBeInTheDocument();
  });

  it("may be printed before its release, and is warned of it", async () => {
    const { press } = await openPress();
    expect(await screen.findByText(/Not released yet; open:/)).toBeInTheDocument();
    expect(screen.getByRole("link", { name: "Before the run" })).toHaveAttribute(
      "href",
      expect.stringContaining(`before-the-run?line=${ids.line}`),
    );
    await press("Take a first-off");
    expect(screen.getByRole("button", { name: "Keep this first-off" })).toBeEnabled();
  });
});

describe("a first-off being read", () => {
  it("has its verdict as soon as both L* are there, before a* and b*", async () => {
    const { press, fill, verdict } = await openPress();
    await press("Take a first-off");
    expect(verdict().getByText(/As soon as the L\*/)).toBeInTheDocument();
    await fill("L* bare of pair 1", "30");
    await fill("L* print of pair 1", "20");
    expect(verdict().getByRole("status")).toHaveTextContent("Stop");
    expect(verdict().getByText("10.0 darker", { selector: ".number" })).toBeInTheDocument();
    expect(verdict().getByText(/6\.0 too dark, further than/)).toBeInTheDocument();
    expect(verdict().getByRole("img")).toHaveAccessibleName(/10\.0 darker.*the target is 4\.0 darker ± 1\.5/);
  });

  it("asks for the pairs that would decide it", async () => {
    const { press, typePairs, verdict } = await openPress();
    await press("Take a first-off");
    await typePairs([25, 25.1]);
    expect(verdict().getAllByRole("status")[0]).toHaveTextContent(/^Read \d+ more pairs?$/);
  });

  it("by eye, asks for the instrument where an eye cannot tell", async () => {
    const { press, user, verdict } = await openPress();
    await press("Take a first-off");
    await user.click(screen.getByRole("radio", { name: "By eye" }));
    await user.click(screen.getByRole("radio", { name: "3" }));
    await user.click(screen.getByRole("radio", { name: "darker" }));
    expect(verdict().getByRole("status")).toHaveTextContent("Read it with the instrument");
    await user.click(screen.getByRole("radio", { name: "1" }));
    expect(verdict().getByRole("status")).toHaveTextContent("Stop");
  });

  it("is never compared under another light than the target's", async () => {
    const { press, typePairs, user, fill, now } = await openPress();
    await press("Take a first-off");
    await typePairs([22]);
    await fill("Printed and read by", "A. Operator");
    await user.selectOptions(screen.getByLabelText("Light"), "D50");
    expect(screen.queryByText("Stop")).not.toBeInTheDocument();
    await press("Keep this first-off");
    expect(screen.getAllByText(/They are never compared/).length).toBeGreaterThan(0);
    expect(now().job.pressLog).toEqual([]);
  });

  it("survives a tablet that sleeps", async () => {
    const { press, typePairs, view, show } = await openPress();
    await press("Take a first-off");
    await typePairs([22]);
    view.unmount();
    await show();
    expect(screen.getByLabelText("L* print of pair 1")).toHaveValue("22");
    expect(screen.getByText("Stop")).toBeInTheDocument();
  });
});

describe("a first-off that is kept", () => {
  it("is a record that teaches and an entry of the log that says what was decided, together", async () => {
    const { press, typePairs, fill, now, learnt } = await openPress();
    await press("Take a first-off");
    await typePairs([22, 22.2, 21.9]);
    await fill("Garments they were spread over", "3");
    await fill("Printed and read by", "A. Operator");
    await press("Keep this first-off");
    const { job, library } = now();
    const [print] = library.testPrints;
    expect(print).toMatchObject({
      garmentLotId: ids.lot,
      setUpId: ids.setUp,
      recipe: job.mixes[0]?.recipe,
      operator: "A. Operator",
      verdict: "rejected",
    });
    const [entry] = job.pressLog;
    expect(entry).toMatchObject({
      kind: "first-off",
      lineId: ids.line,
      placeId: ids.place,
      testPrintId: print?.id,
      subject: checklistSubject(now(), ids.line, ids.place),
      by: "A. Operator",
      band: { deltaL: -4, tolerance: 1.5 },
      said: { action: "stop", modelVersion: MODEL_VERSION },
    });
    expect(entry?.said.mean).toBeCloseTo((22 + 22.2 + 21.9) / 3 - 30, 10);
    expect(learnt.at(-1)?.records.map(({ id }) => id)).toContain(print?.id);
    expect(screen.getByText(/The first-off is kept/)).toBeInTheDocument();
  });

  it("may run only with the name of who passes it, and warns where that is who printed it", async () => {
    const { press, typePairs, fill, now } = await openPress();
    await press("Take a first-off");
    await typePairs([26, 26.1, 25.9, 26]);
    await fill("Garments they were spread over", "4");
    await fill("Printed and read by", "A. Operator");
    await press("Keep this first-off");
    expect(screen.getByRole("alert")).toHaveTextContent("A run needs the name of the person who passes it.");
    expect(now().job.pressLog).toEqual([]);
    await fill("Passed by, a second person", "A. Operator");
    expect(screen.getByText(/The same person printed it/)).toBeInTheDocument();
    await fill("Passed by, a second person", "M. Second");
    expect(screen.queryByText(/The same person printed it/)).not.toBeInTheDocument();
    await press("Keep this first-off");
    expect(now().job.pressLog[0]).toMatchObject({ by: "M. Second", said: { action: "run" } });
    expect(now().library.testPrints[0]).toMatchObject({ operator: "A. Operator", verdict: "none" });
  });

  it("can be signed on the list before the run by who passed it", async () => {
    const { press, typePairs, fill, now } = await openPress();
    await press("Take a first-off");
    await typePairs([26, 26.1, 25.9, 26]);
    await fill("Printed and read by", "A. Operator");
    await fill("Passed by, a second person", "M. Second");
    await press("Keep this first-off");
    await press("Sign the list before the run as M. Second");
    expect(now().job.checklist).toMatchObject([
      { action: "sign", itemCode: "first-off", signer: "M. Second", subject: now().job.pressLog[0]?.subject },
    ]);
    expect(screen.getByText("The first-off is signed before the run by M. Second.")).toBeInTheDocument();
  });

  it("keeps what was said when the target is another one, and says what it is held against today", async () => {
    const { press, typePairs, fill, now, store } = await openPress();
    await press("Take a first-off");
    await typePairs([26, 26.1, 25.9, 26]);
    await fill("Printed and read by", "A. Operator");
    await fill("Passed by, a second person", "M. Second");
    await press("Keep this first-off");
    const band = { deltaL: -9, tolerance: 1.5, hueLimit: 2 };
    act(() => store.getState().edit((documents) => changePlace(documents, ids.place, { band })));
    const stands = within(screen.getByRole("region", { name: "What stands" }));
    expect(stands.getByText("Stop")).toBeInTheDocument();
    expect(stands.getByText(/When it was kept it said: run\./)).toBeInTheDocument();
    expect(stands.queryByRole("button", { name: "Log the next pull" })).not.toBeInTheDocument();
    expect(stands.getByRole("button", { name: "See what can be changed" })).toBeInTheDocument();
    expect(now().job.pressLog[0]).toMatchObject({ band: { deltaL: -4 }, said: { action: "run" } });
  });

  it("is not undone", async () => {
    const { press, typePairs, fill, now, store } = await openPress();
    await press("Take a first-off");
    await typePairs([22]);
    await fill("Printed and read by", "A. Operator");
    await press("Keep this first-off");
    act(() => store.getState().undo());
    expect(now().job.pressLog).toHaveLength(1);
    expect(now().library.testPrints).toHaveLength(1);
  });

  it("is corrected by further entries, in the log and in the book, and both stay", async () => {
    const { press, typePairs, fill, now } = await openPress();
    await press("Take a first-off");
    await typePairs([22]);
    await fill("Printed and read by", "A. Operator");
    await press("Keep this first-off");
    await press(/^Correct the entry of/);
    await fill("L* print of pair 1", "23");
    await press("Keep this first-off");
    const { pressLog } = now().job;
    const { testPrints } = now().library;
    expect(pressLog.map(({ supersedesId }) => supersedesId)).toEqual([null, pressLog[0]?.id]);
    expect(testPrints.map(({ supersedesId }) => supersedesId)).toEqual([null, testPrints[0]?.id]);
    expect(pressLog[1]?.testPrintId).toBe(testPrints[1]?.id);
    const log = within(screen.getByRole("table", { name: "First-offs" }));
    expect(log.getAllByRole("row")).toHaveLength(2);
    expect(log.getByText("corrects an entry")).toBeInTheDocument();
  });

  it("is not kept for another mix than it was begun for", async () => {
    const { press, typePairs, fill, now, store } = await openPress();
    await press("Take a first-off");
    await typePairs([22]);
    await fill("Printed and read by", "A. Operator");
    const other = { lineId: ids.line, placeId: ids.place, candidateId: ids.otherCandidate };
    act(() => store.getState().edit((documents) => chooseCandidate(documents, other)));
    await press("Keep this first-off");
    expect(now().job.pressLog).toEqual([]);
    await press("Take what is chosen now");
    await press("Keep this first-off");
    expect(now().library.testPrints[0]?.recipe).toEqual(now().job.mixes[1]?.recipe);
    expect(now().job.pressLog[0]?.subject).toBe(checklistSubject(now(), ids.line, ids.place));
  });
});
