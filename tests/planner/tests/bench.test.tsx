/** The bench form: what it begins with, what it says at once, what it keeps, and that nothing typed is lost. */
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { exampleDocuments, exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { openTests, SWAPPED, withPrints } from "./testsBench.tsx";

type Opened = Awaited<ReturnType<typeof openTests>>;

const PAIR = ["30", "-15", "6", "27", "-14", "5"];
const FIELDS = ["L* bare", "a* bare", "b* bare", "L* print", "a* print", "b* print"];

async function start({ user }: Opened): Promise<void> {
  await user.click(screen.getByRole("button", { name: "Record a test print" }));
}

async function typePair({ fill }: Opened, values = PAIR, pair = 1): Promise<void> {
  for (const [index, value] of values.entries()) await fill(`${FIELDS[index]} of pair ${pair}`, value);
}

async function chooseCloth({ user }: Opened): Promise<void> {
  await user.selectOptions(screen.getByLabelText("Garment lot"), ids.lot);
  const mix = screen.getByLabelText<HTMLSelectElement>("Mix");
  await user.selectOptions(mix, mix.options[1]!);
}

function giveTimes(printed = "2026-03-02T10:00", read = "2026-03-02T14:00"): void {
  fireEvent.change(screen.getByLabelText("Printed"), { target: { value: printed } });
  fireEvent.change(screen.getByLabelText("Read"), { target: { value: read } });
}

const says = () => within(screen.getByRole("region", { name: "What the reading says" }));
const keep = ({ user }: Opened) => user.click(screen.getByRole("button", { name: "Keep this record" }));

describe("a test print on the bench form", () => {
  it("begins with the garment of the address and the set-up of the last record", async () => {
    const opened = await openTests(undefined, {}, { line: ids.line });
    await start(opened);
    expect(screen.getByLabelText("Garment lot")).toHaveValue(ids.lot);
    expect(screen.getByLabelText("Set-up")).toHaveValue(ids.setUp);
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("");
  });

  it("says at once what was found against what was expected, and what it teaches", async () => {
    const opened = await openTests();
    await start(opened);
    await chooseCloth(opened);
    await typePair(opened);
    expect(await says().findByText("3.0 darker")).toBeVisible();
    expect(says().getByText(/4\.0 darker, 1\.5 to 9\.0 in nine of ten/)).toBeVisible();
    expect(says().getByText(/^1\.0 lighter than expected, 0\.8 times the change: inside/)).toBeVisible();
    expect(says().getByText(/takes away 90/)).toBeVisible();
    expect(opened.asked.at(-1)?.record.reading).toMatchObject({ kind: "pair", bare: { L: 30 } });
  });

  it("says what is odd while it is typed, and keeps it all the same", async () => {
    const opened = await openTests();
    await start(opened);
    await chooseCloth(opened);
    await typePair(opened, ["27", "-14", "5", "30", "-15", "6"]);
    expect(await says().findByText(/reads 3\.0 lighter than the bare cloth/)).toBeVisible();
    giveTimes("2026-03-02T10:00", "2026-03-02T10:20");
    expect(says().getByText(/read 20 minutes after printing/)).toBeVisible();
    await keep(opened);
    expect(opened.now().library.testPrints).toHaveLength(2);
  });

  it("names what is missing and keeps nothing until it is there", async () => {
    const opened = await openTests();
    await start(opened);
    await chooseCloth(opened);
    await keep(opened);
    expect(says().getByRole("alert")).toHaveTextContent(
      "Still missing: a whole pair of readings, when it was printed, when it was read.",
    );
    expect(opened.now().library.testPrints).toHaveLength(1);
    await typePair(opened);
    giveTimes();
    await keep(opened);
    const [, kept] = opened.now().library.testPrints;
    expect(kept).toMatchObject({ garmentLotId: ids.lot, operator: "A. Printer", washCount: 0 });
    expect(kept?.readings).toMatchObject({ viewing: { illuminant: "D65", observer: "10deg" }, pairCount: 1 });
    expect(Date.parse(kept!.readAt) - Date.parse(kept!.printedAt)).toBe(4 * 3_600_000);
  });

  it("is not lost by another view or tab, and goes when it is thrown away", async () => {
    const opened = await openTests();
    await start(opened);
    await opened.fill("L* bare of pair 1", "31.25");
    opened.view.unmount();
    await opened.show();
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("31.25");
    await opened.openTab("Goods-in checks");
    await opened.openTab("Record a print");
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("31.25");
    await opened.user.click(screen.getByRole("button", { name: "Throw this form away" }));
    await start(opened);
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("");
  });

  it("is there again after the page was dropped, as on a tablet that slept; kept, it is gone", async () => {
    const opened = await openTests();
    await start(opened);
    await chooseCloth(opened);
    await opened.fill("L* bare of pair 1", "31.25");
    opened.view.unmount();
    const woken = createPlannerStore({ documents: opened.now() });
    const second = await opened.show("record", woken);
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("31.25");
    await typePair(opened);
    giveTimes();
    await keep(opened);
    expect(woken.getState().documents?.library.testPrints).toHaveLength(2);
    second.unmount();
    await opened.show("record", createPlannerStore({ documents: opened.now() }));
    expect(screen.getByRole("button", { name: "Record a test print" })).toBeVisible();
  });

  it("is followed by the next of the row with everything but its garment", async () => {
    const opened = await openTests();
    await start(opened);
    await chooseCloth(opened);
    await typePair(opened);
    giveTimes();
    await opened.user.click(screen.getByRole("button", { name: "Keep it, and record the next" }));
    expect(screen.getByLabelText("Garment lot")).toHaveValue("");
    expect(screen.getByLabelText("Set-up")).toHaveValue(ids.setUp);
    expect(screen.getByLabelText("Read")).toHaveValue("2026-03-02T14:00");
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("");
  });

  it("of the hour of another record is told to be a reading of the same print", async () => {
    const printedAt = new Date("2026-03-02T10:00").toISOString();
    const { recipe } = exampleDocuments().job.mixes[0]!;
    const recorded = exampleTestPrint(1, { printedAt, recipe });
    const opened = await openTests(withPrints([recorded]));
    await start(opened);
    await chooseCloth(opened);
    await typePair(opened);
    giveTimes("2026-03-02T10:01");
    expect(says().queryByText(/the same print read again/)).toBeNull();
    giveTimes();
    expect(await says().findByText(/counts as the same print read again/)).toBeVisible();
  });

  it("counts the grams that were poured", async () => {
    const opened = await openTests();
    await start(opened);
    await opened.user.selectOptions(screen.getByLabelText("Garment lot"), ids.lot);
    const mix = screen.getByLabelText<HTMLSelectElement>("Mix");
    await opened.user.selectOptions(mix, ids.otherMix);
    for (const field of screen.getAllByLabelText(/, poured/)) {
      await opened.user.type(field, "50{Tab}");
    }
    await typePair(opened);
    giveTimes();
    expect(await says().findByText(/By the grams, .* is 50 %/)).toBeVisible();
    await keep(opened);
    expect(opened.now().library.testPrints[1]?.actualGrams?.map(({ grams }) => grams)).toEqual([50, 50]);
  });
});

describe("a record that is corrected on the bench form", () => {
  it("is superseded, and answered for where it was suspected", async () => {
    const opened = await openTests(undefined, { suspicions: [SWAPPED] }, { tab: "suspicious" });
    await opened.user.click(await screen.findByRole("button", { name: "Correct it" }));
    expect(screen.getByLabelText("L* bare of pair 1")).toHaveValue("30");
    await opened.fill("L* print of pair 1", "26.5");
    await keep(opened);
    const { testPrints, slipAnswers } = opened.now().library;
    expect(testPrints.map(({ supersedesId }) => supersedesId)).toEqual([null, testPrints[0]!.id]);
    expect(slipAnswers).toMatchObject([
      { testPrintId: testPrints[0]!.id, slip: "swapped-pair", answer: "corrected" },
    ]);
    await waitFor(() =>
      expect(opened.learnt.at(-1)?.records.map(({ id }) => id)).toEqual([testPrints[1]!.id]),
    );
  });
});
