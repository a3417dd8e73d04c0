/** The Ink view: what is counted, what is said, what goes on record, what is printed, and that units store nothing. */
import { screen, within } from "@testing-library/react";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeJob } from "../../../src/job/edits/job.ts";
import { changeDefaults, changeShelfItem } from "../../../src/job/edits/shelf.ts";
import { demoWith, inUnits, openInk, type Units } from "./inkBench.tsx";

const TINTED = [0, 2] as const;
const SOME = [
  [0, 2],
  [1, 1],
  [2, 0],
] as const;

const anyUnits: fc.Arbitrary<Units> = fc.record({
  temperature: fc.constantFrom("celsius", "fahrenheit"),
  length: fc.constantFrom("mm", "inch"),
  threadCount: fc.constantFrom("per-cm", "per-inch"),
  mass: fc.constantFrom("gram", "ounce"),
});

describe("the batches", () => {
  it("are those of chosen mixes alone, and what is left out is said", async () => {
    const { panel } = await openInk("batches", demoWith(SOME));
    expect(panel().getAllByRole("heading", { level: 3 })).toHaveLength(3);
    expect(screen.getByText(/3 of the mixes chosen/)).toHaveTextContent(
      "for 12 garments at their places none is",
    );
  });

  it("say what a tint is a percentage of", async () => {
    const { panel } = await openInk("batches", demoWith([TINTED]));
    expect(panel().getByText(/0\.5\s% Black \(of ready-made ink\)/)).toBeInTheDocument();
  });

  it("are larger while a set-up is only estimated: ink is mixed at full transfer until it is weighed", async () => {
    const documents = demoWith([TINTED]);
    const setUp = documents.library.shelf.setUps[0];
    if (setUp === undefined) throw new Error("the demo has no set-up");
    const estimated = changeShelfItem(documents, "setUps", setUp.id, { weighed: null });
    const { panel } = await openInk("batches", estimated);
    expect(panel().getByText(/mixed for .* until it is weighed; a published rule says/)).toBeInTheDocument();
  });
});

describe("a weigh sheet", () => {
  it("asks who weighs before a pot is started, then is on record and survives undo", async () => {
    const { user, panel, now, store } = await openInk("weigh", demoWith([TINTED]));
    await user.click(panel().getByRole("button", { name: "Start pot 1" }));
    const form = within(screen.getByRole("group", { name: "Start pot 1" }));
    await user.click(form.getByRole("button", { name: /^Start pot 1/ }));
    expect(form.getByRole("alert")).toHaveTextContent("Write who weighs it first.");
    expect(now().library.pots).toHaveLength(0);
    await user.type(form.getByLabelText("Weighed by"), "Ida Krone");
    await user.click(form.getByRole("button", { name: /^Start pot 1/ }));
    expect(now().library.pots).toMatchObject([{ by: "Ida Krone", potNumber: 1, scaleStepGrams: 0.1 }]);
    store.getState().undo();
    expect(now().library.pots).toHaveLength(1);
  });

  it("is weighed by keyboard alone: from the name to the first line, from the last line to what is in the pot", async () => {
    const { user, panel, now } = await openInk("weigh", demoWith([TINTED]));
    panel().getByRole("button", { name: "Start pot 1" }).focus();
    await user.keyboard("{Enter}");
    expect(screen.getByLabelText("Weighed by")).toHaveFocus();
    await user.keyboard("Ida Krone{Enter}");
    within(screen.getByRole("group", { name: "Start pot 1" }))
      .getByRole("button", { name: /^Start pot 1/ })
      .focus();
    await user.keyboard("{Enter}");
    expect(screen.getByLabelText(/^Grams of Curable clear/)).toHaveFocus();
    const [line, tint] = now().library.pots[0]?.lines ?? [];
    await user.keyboard(`${line?.grams}{Tab}${tint?.grams}{Tab}{Enter}`);
    expect(screen.getByRole("region", { name: "What is in the pot" })).toHaveFocus();
    expect(screen.getByText(/every line is within a step/)).toBeInTheDocument();
    expect(now().library.potEntries.filter(({ kind }) => kind === "weighed")).toHaveLength(
      2 + demoWith([TINTED]).library.potEntries.length,
    );
  });

  it("says why it cannot be written where the shop has no scale", async () => {
    const { panel } = await openInk("weigh", changeDefaults(demoWith([TINTED]), { scales: [] }));
    expect(panel().getByText(/the shop has entered no scale yet/)).toBeInTheDocument();
    expect(panel().getByRole("link", { name: /Enter it among the defaults/ })).toHaveAttribute(
      "href",
      expect.stringMatching(/\/shelf\?tab=defaults/),
    );
  });

  it("refuses to round a tint to nothing, and names the pot from which it can be weighed", async () => {
    const coarse = changeDefaults(demoWith([TINTED]), {
      scales: [{ id: "coarse", name: "Floor scale", stepGrams: 50, maxGrams: null }],
    });
    const { panel } = await openInk("weigh", coarse);
    expect(panel().getByText("This pot cannot be weighed as it is.")).toBeInTheDocument();
    expect(panel().getByText(/less than half a step .* it cannot be weighed\. From/)).toBeInTheDocument();
    expect(panel().queryByRole("button", { name: /^Start pot/ })).not.toBeInTheDocument();
  });

  it("is printed one page a pot, a unit on every number of its table", async () => {
    const { print } = await openInk("weigh", demoWith([TINTED]));
    print();
    const pages = document.querySelectorAll(".ink-paper__page");
    expect(pages).toHaveLength(1);
    const cells = [...document.querySelectorAll(".ink-paper__grams, .ink-paper__blank")];
    expect(cells).toHaveLength(6);
    for (const cell of cells) expect(cell.textContent).toMatch(/^(?:[\d,.]+\u00a0)?g$/);
    expect(document.querySelector(".ink-paper__label")).toHaveTextContent(/Use by/);
  });
});

describe("cure and safety", () => {
  it("inherits nothing where a part has nothing entered, and names that part", async () => {
    const documents = demoWith([TINTED]);
    const black = documents.library.shelf.colourants.find(({ optics }) => optics.kind === "black");
    if (black === undefined) throw new Error("the demo has no black");
    const cure = { filmCelsius: null, seconds: null, note: "" };
    const { panel } = await openInk("cure", changeShelfItem(documents, "colourants", black.id, { cure }));
    expect(panel().getAllByText(/not known: nothing entered for Black; of the others: 160\s°C/)).toHaveLength(
      1,
    );
  });

  it("lists the limits for children's products with their sources once the job is marked, as an edit to be undone", async () => {
    const { user, panel, now, store } = await openInk("cure", demoWith([TINTED]));
    expect(panel().queryByText(/16 CFR 1307\.3/)).not.toBeInTheDocument();
    await user.click(panel().getByRole("checkbox", { name: "This job is for children" }));
    expect(now().job.forChildren).toBe(true);
    for (const cited of [/16 CFR 1307\.3/, /entry 51/, /entry 52/, /Not legal advice/]) {
      expect(panel().getByText(cited)).toBeInTheDocument();
    }
    store.getState().undo();
    expect(now().job.forChildren).toBe(false);
  });
});

describe("the run order", () => {
  it("says that it is proven, with the minutes", async () => {
    const { panel } = await openInk("order", demoWith(SOME));
    expect(panel().getByText(/^Proven:/)).toBeInTheDocument();
    expect(panel().getAllByRole("row")).toHaveLength(4);
  });
});

describe("units", () => {
  it("switch what is shown and nothing that is stored, whatever is open", async () => {
    await fc.assert(
      fc.asyncProperty(
        anyUnits,
        fc.constantFrom("batches", "weigh", "masters", "order", "set-ups", "cure"),
        async (units, tab) => {
          const before = changeJob(demoWith(SOME), { forChildren: true });
          const { now, unmount } = await openInk(tab, inUnits(before, units));
          const back = inUnits(now(), before.library.shelf.defaults.units);
          expect(back).toEqual(before);
          unmount();
        },
      ),
      { numRuns: 24 },
    );
  });
});
