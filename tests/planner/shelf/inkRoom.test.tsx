/** What the ink room needs of the shelf: data sheets, lots, scales, pots, and what the shop counts with. */
import { screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { addShelfItem } from "../../../src/job/edits/shelf.ts";
import { exampleDocuments, exampleId, ids } from "../../job/exampleDocuments.ts";
import { inOtherUnits, openShelf } from "./shelfBench.tsx";

describe("the data sheet of a base", () => {
  it("is not entered, states nothing, or lists its hazards: three different things", async () => {
    const { user, openItem, item, shelf } = await openShelf("Bases");
    const base = () => shelf().bases[0];
    const name = base()?.name ?? "";
    await openItem(name);
    const hazards = () => item(name).getByLabelText("Hazard statements, one a line");
    await user.click(item(name).getByRole("checkbox", { name: "Its data sheet states no hazard" }));
    expect(base()?.hazards).toEqual([]);
    await user.click(hazards());
    await user.keyboard("May irritate the skin{Enter}  Keep from heat {Enter}");
    await user.tab();
    expect(base()?.hazards).toEqual(["May irritate the skin", "Keep from heat"]);
    await user.clear(hazards());
    await user.tab();
    expect(base()?.hazards).toBeNull();
  });

  it("takes its heat limit in the shop's unit and can be emptied again", async () => {
    const { openItem, type, user, field, shelf } = await openShelf("Bases", inOtherUnits());
    const name = shelf().bases[0]?.name ?? "";
    await openItem(name);
    await type(name, /^Highest film temperature/, "374");
    expect(shelf().bases[0]?.highestCelsius).toBeCloseTo(190, 9);
    await user.clear(field(name, /^Highest film temperature/));
    await user.tab();
    expect(shelf().bases[0]?.highestCelsius).toBeNull();
  });
});

describe("the lots of an ink", () => {
  it("are added by their code, dated, and removed", async () => {
    const { user, openItem, item, shelf } = await openShelf("Colourants");
    const name = shelf().colourants[0]?.name ?? "";
    const lots = () => shelf().colourants[0]?.lots ?? [];
    const before = lots().length;
    await openItem(name);
    await user.click(item(name).getByRole("button", { name: "Add a lot" }));
    await user.type(item(name).getByLabelText("Code of the new lot"), "BK-77{Enter}");
    expect(lots()).toHaveLength(before + 1);
    const received = screen.getByRole("group", { name: "Lot BK-77" }).querySelectorAll("input")[1];
    if (received === undefined) throw new Error("a lot has no day to be typed");
    await user.type(received, "2026-02-30{Enter}");
    expect(lots().at(-1)?.receivedOn).toBeNull();
    await user.clear(received);
    await user.type(received, "2026-02-28{Enter}");
    expect(lots().at(-1)).toMatchObject({ code: "BK-77", receivedOn: "2026-02-28", expiresOn: null });
    await user.click(item(name).getByRole("button", { name: "Remove lot BK-77" }));
    expect(lots()).toHaveLength(before);
  });
});

describe("a master", () => {
  it("keeps what is left of it, counted or not", async () => {
    const documents = addShelfItem(exampleDocuments(), "masters", {
      id: exampleId(900),
      colourantId: ids.red,
      baseId: ids.clear,
      massFraction: 0.1,
      madeOn: null,
      expiresOn: null,
      gramsLeft: null,
      dilutionId: null,
      note: "",
    });
    const { openItem, type, user, field, shelf } = await openShelf("Masters", documents);
    const name = "Warm red, 10\u00a0% in Gloss clear";
    await openItem(name);
    await type(name, /^Left in the pot/, "260");
    expect(shelf().masters[0]?.gramsLeft).toBe(260);
    await user.clear(field(name, /^Left in the pot/));
    await user.tab();
    expect(shelf().masters[0]?.gramsLeft).toBeNull();
  });
});

describe("the ink room's defaults", () => {
  it("hold the scales, with step and load", async () => {
    const { user, shelf } = await openShelf("Defaults");
    const { scales } = shelf().defaults;
    await user.click(screen.getByRole("button", { name: "Add a scale" }));
    const added = screen.getAllByLabelText(/^Its step/).at(-1);
    if (added === undefined) throw new Error("no scale was added");
    await user.clear(added);
    await user.type(added, "0.02{Enter}");
    expect(shelf().defaults.scales).toHaveLength(scales.length + 1);
    expect(shelf().defaults.scales.at(-1)).toMatchObject({ stepGrams: 0.02, maxGrams: null });
    await user.click(screen.getByRole("button", { name: "Remove New scale" }));
    expect(shelf().defaults.scales).toEqual(scales);
  });

  it("hold the pots in litres", async () => {
    const { user, shelf } = await openShelf("Defaults");
    await user.click(screen.getByRole("button", { name: "Add a pot" }));
    const holds = screen.getAllByLabelText(/^It holds/).at(-1);
    if (holds === undefined) throw new Error("no pot was added");
    await user.clear(holds);
    await user.type(holds, "2,5{Enter}");
    expect(shelf().defaults.potSizes.at(-1)?.volumeCm3).toBe(2500);
  });

  it("count spoilage by a posted rule or the shop's own part", async () => {
    const { user, shelf } = await openShelf("Defaults");
    await user.selectOptions(screen.getByLabelText("Spoilage is counted as"), "by-quantity");
    expect(shelf().defaults.spoilageRule).toEqual({ code: "by-quantity" });
    expect(screen.queryByLabelText(/^Spoilage, %/)).not.toBeInTheDocument();
    await user.selectOptions(screen.getByLabelText("Spoilage is counted as"), "shop");
    expect(shelf().defaults.spoilageRule).toEqual({ code: "shop", fraction: 0.02 });
  });

  it("hold the minutes of a change on press", async () => {
    const { user, shelf } = await openShelf("Defaults");
    await user.clear(screen.getByLabelText(/^Wash up/));
    await user.type(screen.getByLabelText(/^Wash up/), "14{Enter}");
    expect(shelf().defaults.changeMinutes.washUp).toBe(14);
  });
});
