/** The columns: a tint that is dragged is one step of undo and predicts at once; limits are refused with the sentence. */
import { act, fireEvent, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { demoDocuments, openMatrix, standInForTheBrowser } from "./matrixBench.tsx";

beforeEach(() => standInForTheBrowser());

const BLACK = "Black in Curable clear + 0.25 % black";

async function drag(slider: HTMLElement, percents: readonly number[]): Promise<void> {
  fireEvent.pointerDown(slider);
  for (const percent of percents) {
    fireEvent.input(slider, { target: { value: String(percent) } });
    await act(async () => {});
  }
  fireEvent.change(slider);
}

describe("a tint", () => {
  it("is followed by its column all through the drag, and by the name that only told the recipe", async () => {
    const { cell, now } = await openMatrix();
    expect(cell(1, 1)).toHaveTextContent("4.5 darker");
    const slider = screen.getByRole("slider", { name: BLACK });
    fireEvent.pointerDown(slider);
    fireEvent.input(slider, { target: { value: "0.4" } });
    await act(async () => {});
    expect(cell(1, 1)).toHaveTextContent("6.0 darker");
    expect(cell(1, 0)).toHaveTextContent("2.0 darker");
    expect(now().job.mixes[1]!.name).toBe("Curable clear + 0.4 % black");
    expect(screen.getAllByRole("columnheader")[2]).toHaveTextContent("0.4 % black");
  });

  it("asks the engine for the column that changed, not for all", async () => {
    const { requests } = await openMatrix();
    const before = requests.length;
    await drag(screen.getByRole("slider", { name: BLACK }), [0.3]);
    expect(requests.slice(before).map(({ columns }) => columns.length)).toEqual([1]);
  });

  it("is one step of undo, however many steps the drag had; the next drag is another", async () => {
    const { store, now } = await openMatrix();
    const black = () => now().job.mixes[1]!.recipe[1]!.massFraction;
    await drag(screen.getByRole("slider", { name: BLACK }), [0.3, 0.5, 0.7]);
    expect(black()).toBe(0.007);
    await drag(screen.getByRole("slider", { name: "Black in Curable clear + 0.7 % black" }), [0.8, 0.9]);
    expect(black()).toBe(0.009);
    act(() => store.getState().undo());
    expect(black()).toBe(0.007);
    act(() => store.getState().undo());
    expect(black()).toBe(0.0025);
    expect(store.getState().canUndo).toBe(false);
  });

  it("that would take another part above its data sheet's limit is refused and says so", async () => {
    const { now, user } = await openMatrix();
    await user.click(screen.getByRole("button", { name: "Back" }));
    const before = now();
    await drag(screen.getByRole("slider", { name: "White in Soft white" }), [30]);
    expect(screen.getByRole("alert")).toHaveTextContent(
      "Soft-hand additive is 70 % of the mix; its data sheet allows 50 %.",
    );
    expect(now()).toBe(before);
  });
});

describe("the dialog about a mix", () => {
  const open = async () => {
    const matrix = await openMatrix();
    await matrix.user.click(screen.getByRole("button", { name: "Add mix" }));
    return { ...matrix, dialog: within(screen.getByRole("dialog")) };
  };

  it("adds a column of base, tint and set-up, named by its recipe", async () => {
    const { now, user, dialog } = await open();
    await user.selectOptions(dialog.getByRole("combobox", { name: "Base" }), "Matt clear");
    await user.click(dialog.getByRole("button", { name: "Add a tint" }));
    await user.clear(dialog.getByRole("textbox", { name: /Part of Black/ }));
    await user.type(dialog.getByRole("textbox", { name: /Part of Black/ }), "0.3{Enter}");
    await user.selectOptions(dialog.getByRole("combobox", { name: "Set-up" }), "90-48, one stroke");
    await user.click(dialog.getByRole("button", { name: "Add mix" }));
    const { job, library } = now();
    const added = job.places[0]!.candidates.at(-1)!;
    const mix = job.mixes.find(({ id }) => id === added.mixId)!;
    expect(mix.name).toBe("Matt clear + 0.3 % black");
    expect(mix.recipe.map(({ massFraction }) => massFraction)).toEqual([0.997, 0.003]);
    expect(library.shelf.setUps.find(({ id }) => id === added.setUpId)?.name).toBe("90-48, one stroke");
    expect(screen.queryByRole("dialog")).toBeNull();
    expect(within(screen.getByRole("grid")).getAllByRole("columnheader")).toHaveLength(9);
  });

  it("refuses a reducer above its data sheet's limit, says so and changes nothing", async () => {
    const { now, user, dialog } = await open();
    const before = now();
    await user.click(dialog.getByRole("button", { name: "Add an additive or reducer" }));
    await user.clear(dialog.getByRole("textbox", { name: /Part of Curable reducer/ }));
    await user.type(dialog.getByRole("textbox", { name: /Part of Curable reducer/ }), "20{Enter}");
    await user.click(dialog.getByRole("button", { name: "Add mix" }));
    expect(
      dialog.getByText("Curable reducer is 20 % of the mix; its data sheet allows 10 %."),
    ).toBeInTheDocument();
    expect(now()).toBe(before);
    expect(screen.getByRole("dialog")).toBeInTheDocument();
  });

  it("says when the parts leave nothing for the base", async () => {
    const { user, dialog } = await open();
    await user.click(dialog.getByRole("button", { name: "Add a tint" }));
    await user.clear(dialog.getByRole("textbox", { name: /Part of Black/ }));
    await user.type(dialog.getByRole("textbox", { name: /Part of Black/ }), "60{Enter}");
    await user.click(dialog.getByRole("button", { name: "Add a tint" }));
    await user.clear(dialog.getByRole("textbox", { name: /Part of Navy/ }));
    await user.type(dialog.getByRole("textbox", { name: /Part of Navy/ }), "44{Enter}");
    expect(dialog.getByText("The parts come to 104 %: nothing is left for the base.")).toBeInTheDocument();
  });

  it("asks how much of the cloth a white covers, and keeps that with the mix; nobody else is asked", async () => {
    const { now, user, dialog } = await open();
    const cover = /^Part of the cloth that the white covers/;
    await user.click(dialog.getByRole("button", { name: "Add a tint" }));
    expect(dialog.queryByLabelText(cover)).toBeNull();
    await user.selectOptions(dialog.getByRole("combobox", { name: "Tint" }), "White");
    await user.type(dialog.getByLabelText(cover), "35{Enter}");
    await user.click(dialog.getByRole("button", { name: "Add mix" }));
    const { job } = now();
    const added = job.places[0]!.candidates.at(-1)!;
    expect(job.mixes.find(({ id }) => id === added.mixId)?.clothCoverFraction).toBe(0.35);
  });

  const namesOf = ({ job }: ReturnType<typeof demoDocuments>) =>
    job.places[0]!.candidates.map(({ mixId }) => job.mixes.find(({ id }) => id === mixId)?.name);

  it("moves and duplicates a column, each one step of undo", async () => {
    const { now, user, store } = await openMatrix();
    const first = namesOf(now());
    await user.click(screen.getByLabelText("Change Gloss clear, no tint"));
    await user.click(screen.getByText("Move left"));
    expect(namesOf(now()).slice(0, 4)).toEqual([first[0], first[1], "Gloss clear", first[2]]);
    await user.click(screen.getByText("Duplicate"));
    expect(namesOf(now()).at(-1)).toBe("Gloss clear");
    act(() => store.getState().undo());
    act(() => store.getState().undo());
    expect(namesOf(now())).toEqual(first);
    expect(store.getState().canUndo).toBe(false);
  });

  it("renames and removes a column, each one step of undo", async () => {
    const { now, user, store } = await openMatrix();
    const first = namesOf(now());
    await user.click(screen.getByLabelText("Change Gloss clear, no tint"));
    await user.type(screen.getByLabelText("Name"), "House gloss");
    await user.tab();
    await user.click(screen.getByText("Take over"));
    expect(namesOf(now())[3]).toBe("House gloss");
    await user.click(screen.getByLabelText("Change House gloss, no tint"));
    await user.click(screen.getByText("Remove"));
    expect(namesOf(now())).not.toContain("House gloss");
    act(() => store.getState().undo());
    act(() => store.getState().undo());
    expect(namesOf(now())).toEqual(first);
    expect(store.getState().canUndo).toBe(false);
    expect(demoDocuments().job.places[0]!.candidates).toEqual(now().job.places[0]!.candidates);
  });
});
