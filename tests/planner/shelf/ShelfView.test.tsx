/** The shelf: what is typed is stored in SI, units change what is shown and nothing else, and what is in use stays. */
import { screen, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { changeShelfItem } from "../../../src/job/edits/shelf.ts";
import { emptyLibrary } from "../../../src/job/emptyLibrary.ts";
import { exampleDocuments, ids } from "../../job/exampleDocuments.ts";
import { inOtherUnits, openShelf } from "./shelfBench.tsx";

describe("the tabs", () => {
  it("are walked with the arrow keys, one at a time in the order of the keyboard", async () => {
    const { user } = await openShelf();
    await user.keyboard("{ArrowRight}");
    expect(screen.getByRole("tab", { name: "Colourants" })).toHaveFocus();
    expect(screen.getByRole("tab", { name: "Colourants" })).toHaveAttribute("aria-selected", "true");
    expect(screen.getByRole("button", { name: "Black" })).toBeInTheDocument();
    await user.keyboard("{End}");
    expect(screen.getByRole("tab", { name: "Defaults" })).toHaveFocus();
    await user.keyboard("{ArrowRight}");
    expect(screen.getByRole("tab", { name: "Bases" })).toHaveFocus();
    await user.keyboard("{ArrowLeft}{Home}");
    expect(screen.getByRole("tab", { name: "Bases" })).toHaveAttribute("aria-selected", "true");
  });
});

describe("a base", () => {
  it("is edited in place, one step of undo for each field", async () => {
    const { openItem, type, shelf, store } = await openShelf();
    await openItem("Soft-hand additive");
    await type("Soft-hand additive", "Wet-out strength", "0.7");
    await type("Soft-hand additive", /^Haze/, "0.1");
    await type("Soft-hand additive", /^Largest part/, "7");
    expect(shelf().bases[1]).toMatchObject({ strength: 0.7, hazePerUm: 0.0001, largestFraction: 0.07 });
    store.getState().undo();
    expect(shelf().bases[1]).toMatchObject({ strength: 0.7, hazePerUm: 0.0001, largestFraction: 0.5 });
  });

  it("takes no strength beyond its range, and says so", async () => {
    const { openItem, type, field, shelf } = await openShelf();
    await openItem("Soft-hand additive");
    await type("Soft-hand additive", "Wet-out strength", "3.5");
    expect(field("Soft-hand additive", "Wet-out strength")).toHaveAccessibleDescription(/From 0 to 3\./);
    expect(shelf().bases[1]?.strength).toBe(0.85);
  });

  it("that is the reference keeps strength 1, and stays", async () => {
    const { openItem, field, user, shelf } = await openShelf();
    await openItem("Gloss clear");
    expect(field("Gloss clear", "Wet-out strength")).toBeDisabled();
    await user.click(screen.getByRole("button", { name: "Remove Gloss clear" }));
    expect(screen.getByRole("alert")).toHaveTextContent("Make another base the reference first.");
    expect(shelf().bases).toHaveLength(2);
  });

  it("can be made the reference, which divides every strength", async () => {
    const { openItem, user, shelf } = await openShelf();
    await openItem("Soft-hand additive");
    await user.click(screen.getByRole("button", { name: "Make it the reference clear" }));
    expect(shelf().bases.map(({ reference }) => reference)).toEqual([false, true]);
    expect(shelf().bases[0]?.strength).toBeCloseTo(1 / 0.85, 12);
  });

  it("cannot be made the reference where a strength would leave its range", async () => {
    const weak = changeShelfItem(exampleDocuments(), "bases", ids.softener, { strength: 0.3 });
    const { openItem } = await openShelf("Bases", weak);
    await openItem("Soft-hand additive");
    expect(screen.getByRole("button", { name: "Make it the reference clear" })).toBeDisabled();
  });

  it("has no cure until one is entered, and none again when it is emptied", async () => {
    const { openItem, type, field, user, shelf } = await openShelf();
    await openItem("Gloss clear");
    expect(field("Gloss clear", /^Film temperature/)).toHaveValue("");
    await type("Gloss clear", /^Film temperature/, "150");
    expect(shelf().bases[0]?.cure).toEqual({ filmCelsius: 150, seconds: null, note: "" });
    await user.clear(field("Gloss clear", /^Film temperature/));
    await user.tab();
    expect(shelf().bases[0]?.cure.filmCelsius).toBeNull();
  });

  it("may be out of stock, which its row says, and so may a colourant", async () => {
    const { openItem, openTab, item, user, shelf } = await openShelf();
    await openItem("Soft-hand additive");
    await user.click(item("Soft-hand additive").getByRole("checkbox", { name: "In stock" }));
    expect(shelf().bases.map(({ inStock }) => inStock)).toEqual([true, false]);
    expect(screen.getAllByText(/not in stock/)).toHaveLength(1);
    await openTab("Colourants");
    await openItem("Black");
    await user.click(item("Black").getByRole("checkbox", { name: "In stock" }));
    expect(shelf().colourants.map(({ inStock }) => inStock)).toEqual([false, true, true]);
    expect(screen.getAllByText(/not in stock/)).toHaveLength(1);
    await user.click(item("Black").getByRole("checkbox", { name: "In stock" }));
    expect(screen.queryByText(/not in stock/)).not.toBeInTheDocument();
  });

  it("that a mix uses is not removed: the mixes are named", async () => {
    const { openItem, user, shelf } = await openShelf();
    await openItem("Soft-hand additive");
    await user.click(screen.getByRole("button", { name: "Remove Soft-hand additive" }));
    expect(screen.getByRole("alert")).toHaveTextContent("Soft-hand additive stays: it is in use.");
    expect(screen.getByRole("alert")).toHaveTextContent("The mix Clear uses it.");
    expect(shelf().bases).toHaveLength(2);
  });

  it("is added, duplicated and removed by keyboard alone", async () => {
    const { user, shelf } = await openShelf();
    screen.getByRole("button", { name: "Add a base" }).focus();
    await user.keyboard("{Enter}");
    expect(within(screen.getByRole("group", { name: "New base" })).getByLabelText("Name")).toHaveFocus();
    await user.keyboard("Matt clear{Tab}{Enter}");
    expect(shelf().bases[2]).toMatchObject({
      name: "Matt clear",
      reference: false,
      cure: { filmCelsius: null },
    });
    expect(within(screen.getByRole("group", { name: "Matt clear" })).getByLabelText("Name")).toHaveFocus();
    screen.getByRole("button", { name: "Duplicate Matt clear" }).focus();
    await user.keyboard("{Enter}");
    expect(shelf().bases[3]?.name).toBe("Matt clear, copy");
    expect(shelf().bases[3]?.id).not.toBe(shelf().bases[2]?.id);
    screen.getByRole("button", { name: "Remove Matt clear, copy" }).focus();
    await user.keyboard("{Enter}");
    expect(shelf().bases).toHaveLength(3);
    expect(screen.getByRole("button", { name: "Matt clear" })).toHaveFocus();
  });

  it("is the reference when it is the first", async () => {
    const { job } = exampleDocuments();
    const empty = { job: { ...job, lines: [], places: [], mixes: [] }, library: emptyLibrary() };
    const { user, shelf } = await openShelf("Bases", empty);
    expect(screen.getByText("Nothing is on the shelf here yet.")).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Add a base" }));
    await user.keyboard("First clear{Tab}{Enter}");
    expect(shelf().bases[0]).toMatchObject({ reference: true, strength: 1 });
  });
});

describe("units", () => {
  it("show the same stored value as degrees Fahrenheit and threads per inch", async () => {
    const documents = changeShelfItem(inOtherUnits(), "bases", ids.clear, {
      cure: { filmCelsius: 160, seconds: 60, note: "" },
      pricePerKg: 10,
    });
    const { openItem, field, openTab } = await openShelf("Bases", documents);
    await openItem("Gloss clear");
    expect(field("Gloss clear", "Film temperature, °F")).toHaveValue("320");
    // 10 per kilogram are 4.5359 per pound (NIST SP 811: 1 lb = 0.453 592 37 kg).
    expect(field("Gloss clear", "Price, EUR/lb")).toHaveValue("4.5359");
    await openTab("Meshes");
    await openItem("61-64");
    expect(field("61-64", "Thread count, threads/in")).toHaveValue("154.9");
    await openTab("Set-ups");
    await openItem("61-64, one stroke");
    // 23 g/m² are 0.678 oz/yd² (NIST SP 811: 1 oz/yd² = 33.905 75 g/m²).
    expect(field("61-64, one stroke", "Mean ink on the print, oz/yd²")).toHaveValue("0.678");
  });

  it("change nothing that is stored, neither when switched nor when a field is only looked at", async () => {
    const { user, openTab, openItem, shelf, store } = await openShelf("Defaults");
    const before = JSON.stringify({ ...shelf(), defaults: null });
    await user.selectOptions(screen.getByLabelText("Thread count"), "threads per inch");
    await user.selectOptions(screen.getByLabelText("Temperature"), "°F");
    await openTab("Meshes");
    await openItem("61-64");
    await user.click(screen.getByLabelText("Thread count, threads/in"));
    await user.tab();
    expect(JSON.stringify({ ...shelf(), defaults: null })).toBe(before);
    expect(shelf().defaults.units.threadCount).toBe("per-inch");
    store.getState().undo();
    store.getState().undo();
    expect(store.getState().canUndo).toBe(false);
  });

  it("turn what is typed in them into what is stored", async () => {
    const { openItem, type, shelf, openTab } = await openShelf("Bases", inOtherUnits());
    await openItem("Gloss clear");
    await type("Gloss clear", /^Film temperature/, "320");
    expect(shelf().bases[0]?.cure.filmCelsius).toBeCloseTo(160, 9);
    await openTab("Meshes");
    await openItem("61-64");
    await type("61-64", /^Thread count/, "195.58");
    expect(shelf().meshes[0]?.threadsPerCm).toBeCloseTo(77, 9);
  });

  it("take a limit that is rounded where it is shown", async () => {
    const { openItem, type, shelf } = await openShelf("Meshes", inOtherUnits());
    await openItem("61-64");
    await type("61-64", /^Thread,/, "15");
    await type("61-64", /^Thread count/, "635");
    expect(shelf().meshes[0]?.threadsPerCm).toBeCloseTo(250, 9);
    expect(shelf().meshes[0]?.threadsPerCm).toBeLessThanOrEqual(250);
  });
});

describe("a colourant", () => {
  it("cannot be added without saying what a percentage of it is a percentage of", async () => {
    const { user, item, shelf } = await openShelf("Colourants");
    await user.click(screen.getByRole("button", { name: "Add a colourant" }));
    const put = () => item("New colourant").getByRole("button", { name: "Put it on the shelf" });
    await user.type(item("New colourant").getByLabelText("Name"), "Deep black{Enter}");
    await user.selectOptions(item("New colourant").getByLabelText("Colour"), "black");
    await user.click(put());
    expect(screen.getByRole("alert")).toHaveTextContent("Still missing: what its percentages are of.");
    expect(shelf().colourants).toHaveLength(3);
    await user.selectOptions(
      item("New colourant").getByLabelText("Tints are percent of"),
      "pigment concentrate",
    );
    await user.click(put());
    expect(shelf().colourants.at(-1)).toMatchObject({
      name: "Deep black",
      strengthDefinition: "pigment-concentrate",
      optics: { kind: "black" },
    });
  });

  it("of its own colour waits for the colour, and is not predicted before its strength is entered", async () => {
    const { openItem, user, item, shelf, type } = await openShelf("Colourants");
    await openItem("Black");
    await user.selectOptions(item("Black").getByLabelText("Colour"), "a colour of its own");
    expect(shelf().colourants[0]?.optics).toEqual({ kind: "black" });
    await user.click(item("Black").getByRole("radio", { name: "Screen colour" }));
    await type("Black", "Screen colour, as #rrggbb", "#203050");
    expect(shelf().colourants[0]?.optics).toEqual({
      kind: "masstone",
      masstone: { kind: "hex", hex: "#203050" },
      strengthPerUm: 0,
    });
    expect(item("Black").getByText(/Black has no strength on the shelf/)).toBeInTheDocument();
    await type("Black", /^Tinting strength/, "0.5");
    expect(shelf().colourants[0]?.optics).toMatchObject({ strengthPerUm: 0.5 });
    expect(item("Black").queryByText(/has no strength/)).not.toBeInTheDocument();
  });

  it("that is white and no ready-made ink is said to be unpredictable", async () => {
    const { openItem, user, item } = await openShelf("Colourants");
    await openItem("White");
    await user.selectOptions(item("White").getByLabelText("Tints are percent of"), "dry pigment");
    expect(item("White").getByText(/only a ready-made white can be predicted/)).toBeInTheDocument();
  });

  it("is removed where nothing uses it", async () => {
    const { openItem, user, shelf } = await openShelf("Colourants");
    await openItem("Warm red");
    await user.click(screen.getByRole("button", { name: "Remove Warm red" }));
    expect(shelf().colourants.map(({ name }) => name)).toEqual(["Black", "White"]);
    expect(screen.getByText("Warm red was removed. Undo brings it back.")).toBeInTheDocument();
  });
});
