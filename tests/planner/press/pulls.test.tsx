/** Later pulls: logged in seconds, judged in their run, corrected and never changed. */
import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { checklistSubject } from "../../../src/job/checklistSubject.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import type { PressEntry } from "../../../src/job/pressDocument.ts";
import { ids } from "../../job/exampleDocuments.ts";
import { examplePressEntry } from "../../job/exampleRecords.ts";
import { chosenJob, openPress } from "./pressBench.tsx";

const read = (...deltaL: number[]): PressEntry["readings"] => ({
  kind: "pairs",
  deltaL,
  pieceCount: deltaL.length,
});

function running(...pulls: Partial<PressEntry>[]): Documents {
  const documents = chosenJob();
  const subject = checklistSubject(documents, ids.line, ids.place);
  const first: Partial<PressEntry> = { kind: "first-off", readings: read(-4, -4.1, -3.9, -4) };
  return [first, ...pulls].reduce<Documents>(
    (now, change, index) => appendPressEntry(now, examplePressEntry(index + 1, { subject, ...change })),
    documents,
  );
}

const says = () => within(screen.getByRole("region", { name: "What the pull says" }));

describe("a pull", () => {
  it("comes after a first-off that was passed; before it, that is said", async () => {
    const { view } = await openPress(chosenJob(), { tab: "pulls" });
    expect(screen.getByText(/No first-off of this lot, mix and set-up is on record yet/)).toBeInTheDocument();
    view.unmount();
    await openPress(running());
    expect(screen.getByRole("tab", { name: "Later pulls" })).toHaveAttribute("aria-selected", "true");
    expect(screen.queryByText(/No first-off of this lot/)).not.toBeInTheDocument();
  });

  it("is L* of bare cloth and print, or a mean change, or a grade", async () => {
    const { press, fill, user, now } = await openPress(running());
    await fill("L* bare of pair 1", "30.5");
    await fill("L* print of pair 1", "26.4");
    expect(says().getByRole("status")).toHaveTextContent("Run");
    await press("Keep this pull");
    await user.click(screen.getByRole("radio", { name: "Mean change of L*" }));
    await fill("Change of L*, print less bare", "-4.2");
    await fill("Pairs it is the mean of", "5");
    await press("Keep this pull");
    await user.click(screen.getByRole("radio", { name: "By eye" }));
    await user.click(screen.getByRole("radio", { name: "2-3" }));
    await user.click(screen.getByRole("radio", { name: "darker" }));
    await press("Keep this pull");
    const readings = now()
      .job.pressLog.slice(1)
      .map((entry) => entry.readings);
    expect(readings).toMatchObject([
      { kind: "pairs", pieceCount: 1 },
      { kind: "mean", deltaL: -4.2, pairCount: 5, pieceCount: 1 },
      { kind: "by-eye", grade: 2.5, direction: "darker" },
    ]);
    expect(now().library.testPrints).toEqual([]);
  });

  it("stops a run that went out of the target, leads to what can be changed, and is kept with that word", async () => {
    const { press, fill, user, now } = await openPress(running());
    await user.click(screen.getByRole("radio", { name: "Mean change of L*" }));
    await fill("Change of L*, print less bare", "-7");
    await fill("Pairs it is the mean of", "5");
    expect(says().getByRole("status")).toHaveTextContent("Stop");
    expect(says().getByRole("button", { name: "See what can be changed" })).toBeInTheDocument();
    await press("Keep this pull");
    expect(now().job.pressLog.at(-1)?.said).toMatchObject({ action: "stop", mean: -7 });
    expect(screen.getByText(/The last pull said: stop\./)).toBeInTheDocument();
  });

  it("says that a run moved while it is still in the target", async () => {
    const { fill, user } = await openPress(running({ readings: read(-4, -4, -4, -4) }));
    await user.click(screen.getByRole("radio", { name: "Mean change of L*" }));
    await fill("Change of L*, print less bare", "-5.15");
    await fill("Pairs it is the mean of", "5");
    await fill("Garments they were spread over", "5");
    expect(says().getByRole("status")).toHaveTextContent("Look for the cause");
    expect(says().getByText(/It has moved:/)).toBeInTheDocument();
  });

  it("after another lot or pot is a first-off of its own", async () => {
    const { press, fill, user, now } = await openPress(running());
    await user.click(screen.getByRole("radio", { name: "Mean change of L*" }));
    await fill("Change of L*, print less bare", "-4");
    await fill("Pairs it is the mean of", "5");
    await user.click(screen.getByRole("radio", { name: "another pot" }));
    expect(says().getByRole("status")).toHaveTextContent("Take a first-off");
    await press("Keep this pull");
    expect(now().job.pressLog.at(-1)).toMatchObject({ change: "pot", said: { action: "first-off" } });
  });

  it("lacks nothing but a reading and a name, and says which", async () => {
    const { press, fill } = await openPress(running());
    await fill("Read by", "");
    await press("Keep this pull");
    expect(screen.getByRole("alert")).toHaveTextContent("Still missing: a reading.");
    await fill("L* bare of pair 1", "30");
    await fill("L* print of pair 1", "26");
    await press("Keep this pull");
    expect(screen.getByRole("alert")).toHaveTextContent("Still missing: who read it.");
  });

  it("is corrected by another entry in its place", async () => {
    const { press, fill, user, now } = await openPress(
      running({ readings: read(-7) }, { readings: read(-4) }),
    );
    const buttons = screen.getAllByRole("button", { name: /^Correct the entry of/ });
    await user.click(buttons[1]!);
    await fill("Change of L*, print less bare", "-4.1");
    await press("Keep this pull");
    const log = now().job.pressLog;
    expect(log).toHaveLength(4);
    expect(log.at(-1)).toMatchObject({ supersedesId: log[1]?.id, said: { mean: -4.1 } });
    expect(within(screen.getByRole("table", { name: "Pulls" })).getAllByRole("row")).toHaveLength(3);
  });
});

describe("the chart", () => {
  it("is told in words: each pull with its change and its word", async () => {
    await openPress(running({ readings: read(-4.2, -4.1) }, { change: "shift", readings: read(-4.4, -4.3) }));
    const chart = screen.getByRole("img", { name: /^Pulls of the run/ });
    expect(chart).toHaveAccessibleName(
      "Pulls of the run. Target 4.0 darker ± 1.5. first-off 4.0 darker, run; pull 4.2 darker, run; pull after new shift 4.3 darker, run.",
    );
    expect(within(chart).getByText("new shift")).toBeInTheDocument();
  });

  it("waits for a second point", async () => {
    await openPress(running(), { tab: "pulls" });
    expect(screen.queryByRole("img", { name: /^Pulls of the run/ })).not.toBeInTheDocument();
  });
});
