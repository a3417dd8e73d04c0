/** The shelf, second part: meshes, squeegees, set-ups, masters and the defaults. */
import { screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { addShelfItem } from "../../../src/job/edits/shelf.ts";
import { emptyLibrary } from "../../../src/job/emptyLibrary.ts";
import { exampleDocuments, exampleId, ids } from "../../job/exampleDocuments.ts";
import { openShelf } from "./shelfBench.tsx";

describe("a mesh", () => {
  it("shows what follows from its label, following what is typed", async () => {
    const { openItem, item, type } = await openShelf("Meshes");
    await openItem("61-64");
    expect(item("61-64").getByText("99.9 µm")).toBeInTheDocument();
    expect(item("61-64").getByText("38.1 cm³/m², from an estimated thickness")).toBeInTheDocument();
    await type("61-64", /^Fabric thickness/, "100");
    expect(item("61-64").getByText("37.2 cm³/m²")).toBeInTheDocument();
    await type("61-64", /^Thread,/, "200");
    expect(item("61-64").getByText(/this mesh has no opening/)).toBeInTheDocument();
  });

  it("is added under the name of its label", async () => {
    const { user, item, shelf } = await openShelf("Meshes");
    await user.click(screen.getByRole("button", { name: "Add a mesh" }));
    await user.type(item("New mesh").getByLabelText(/^Thread count/), "90{Enter}");
    await user.type(item("New mesh").getByLabelText(/^Thread,/), "48{Enter}");
    await user.click(item("New mesh").getByRole("button", { name: "Put it on the shelf" }));
    expect(shelf().meshes.at(-1)).toMatchObject({
      name: "90-48",
      threadsPerCm: 90,
      threadUm: 48,
      thicknessUm: null,
    });
  });
});

describe("a squeegee", () => {
  it("has its layers typed as they are spoken of", async () => {
    const { openItem, type, field, shelf } = await openShelf("Squeegees");
    await openItem("70/90/70");
    await type("70/90/70", "Layers, Shore A", "75");
    expect(shelf().squeegees[0]?.shoreA).toEqual([75]);
    await type("70/90/70", "Layers, Shore A", "70/90/70/90");
    expect(field("70/90/70", "Layers, Shore A")).toHaveAccessibleDescription(/One to three numbers/);
    expect(shelf().squeegees[0]?.shoreA).toEqual([75]);
  });
});

describe("a set-up", () => {
  it("stays estimated until a weighing is whole: no figure is made up for it", async () => {
    const { openItem, item, type, user, shelf } = await openShelf("Set-ups");
    await openItem("120-34, one stroke");
    expect(item("120-34, one stroke").getByText("11.6 µm, estimated from the mesh")).toBeInTheDocument();
    await user.click(item("120-34, one stroke").getByRole("radio", { name: "Weighed, the mean is known" }));
    await type("120-34, one stroke", /^Mean ink/, "15");
    await type("120-34, one stroke", /^Spread/, "1");
    await type("120-34, one stroke", /^Pieces/, "10");
    expect(shelf().setUps[1]?.weighed).toBeNull();
    expect(item("120-34, one stroke").getByText(/missing: the density/)).toBeInTheDocument();
    await type("120-34, one stroke", /^Density/, "1.2");
    expect(shelf().setUps[1]?.weighed).toEqual({
      kind: "mean",
      meanGsm: 15,
      sdGsm: 1,
      pieceCount: 10,
      densityGramsPerCm3: 1.2,
    });
    expect(item("120-34, one stroke").getByText("12.5 µm, weighed")).toBeInTheDocument();
    await user.click(item("120-34, one stroke").getByRole("radio", { name: "Estimated from the mesh" }));
    expect(shelf().setUps[1]?.weighed).toBeNull();
  });

  it("is calibrated piece by piece: whole or not at all, mean and scatter shown, a piece no heavier refused", async () => {
    const { user, item, type, shelf, openItem } = await openShelf("Set-ups");
    const name = "120-34, one stroke";
    await openItem(name);
    await user.click(item(name).getByRole("radio", { name: "Weighed, piece by piece" }));
    await type(name, /^Area that carries ink/, "500");
    await type(name, /^Step of the scale/, "0.01");
    await type(name, /^Density/, "1.2");
    await type(name, /^Piece 1, before/, "150");
    await type(name, /^Piece 1, after/, "150");
    expect(item(name).getByText(/piece 1 has to be heavier after printing/)).toBeInTheDocument();
    expect(shelf().setUps[1]?.weighed).toBeNull();
    await type(name, /^Piece 1, after/, "150.7");
    await user.click(item(name).getByRole("button", { name: "Add a piece" }));
    await type(name, /^Piece 2, before/, "151");
    await type(name, /^Piece 2, after/, "151.8");
    expect(shelf().setUps[1]?.weighed).toMatchObject({
      kind: "pieces",
      pieces: [
        { beforeGrams: 150, afterGrams: 150.7 },
        { beforeGrams: 151, afterGrams: 151.8 },
      ],
      printedAreaM2: 0.05,
      scaleStepGrams: 0.01,
    });
    // 0.7 g and 0.8 g on 0.05 m2: 14 and 16 g/m2, mean 15, standard deviation 1.41.
    expect(item(name).getByText(/standard deviation 1\.4 g\/m², 2 pieces/)).toBeInTheDocument();
    expect(item(name).getByText("12.5 µm, weighed")).toBeInTheDocument();
  });

  it("keeps its flood stroke", async () => {
    const { user, item, shelf, openItem } = await openShelf("Set-ups");
    await openItem("120-34, one stroke");
    await user.selectOptions(item("120-34, one stroke").getByLabelText("Flood stroke"), "light");
    expect(shelf().setUps[1]?.flood).toBe("light");
  });

  it("takes a transfer of the shop's own while it is not weighed, and gives it up again", async () => {
    const { user, item, type, shelf, openItem } = await openShelf("Set-ups");
    const name = "120-34, one stroke";
    await openItem(name);
    await type(name, /^Transfer/, "45");
    expect(shelf().setUps[1]?.transferFraction).toBe(0.45);
    expect(item(name).getByText("8.7 µm, estimated from the mesh")).toBeInTheDocument();
    await user.clear(item(name).getByLabelText(/^Transfer/));
    await user.tab();
    expect(shelf().setUps[1]?.transferFraction).toBeNull();
    await openItem("61-64, one stroke");
    expect(item("61-64, one stroke").queryByLabelText(/^Transfer/)).not.toBeInTheDocument();
  });

  it("keeps its mesh on the shelf", async () => {
    const { openTab, openItem, user } = await openShelf("Set-ups");
    await openTab("Meshes");
    await openItem("120-34");
    await user.click(screen.getByRole("button", { name: "Remove 120-34" }));
    expect(screen.getByRole("alert")).toHaveTextContent("The set-up 120-34, one stroke uses it.");
  });

  it("is named by its mesh and strokes unless told otherwise", async () => {
    const { user, item, shelf } = await openShelf("Set-ups");
    await user.click(screen.getByRole("button", { name: "Add a set-up" }));
    await user.selectOptions(item("New set-up").getByLabelText("Mesh"), "120-34");
    await user.clear(item("New set-up").getByLabelText("Strokes"));
    await user.type(item("New set-up").getByLabelText("Strokes"), "2{Enter}");
    await user.click(item("New set-up").getByRole("button", { name: "Put it on the shelf" }));
    expect(shelf().setUps.at(-1)).toMatchObject({
      name: "120-34, two strokes",
      strokeCount: 2,
      weighed: null,
    });
  });

  it("cannot be added while there is no mesh", async () => {
    const { job } = exampleDocuments();
    const empty = { job: { ...job, lines: [], places: [], mixes: [] }, library: emptyLibrary() };
    await openShelf("Set-ups", empty);
    expect(screen.getByRole("button", { name: "Add a set-up" })).toBeDisabled();
    expect(screen.getByText("A set-up needs a mesh and a squeegee on the shelf first.")).toBeInTheDocument();
  });
});

describe("a master", () => {
  it("is named by what is in it, and dated", async () => {
    const master = {
      colourantId: ids.red,
      baseId: ids.clear,
      massFraction: 0.1,
      madeOn: null,
      expiresOn: null,
    };
    const documents = addShelfItem(exampleDocuments(), "masters", {
      ...master,
      id: exampleId(900),
      gramsLeft: null,
      dilutionId: null,
      note: "",
    });
    const { openItem, type, field, shelf } = await openShelf("Masters", documents);
    // The blank before % does not break.
    const name = "Warm red, 10\u00a0% in Gloss clear";
    await openItem(name);
    await type(name, "Made on", "2026-03-02");
    expect(shelf().masters[0]?.madeOn).toBe("2026-03-02");
    await type(name, "Made on", "2 March");
    expect(field(name, "Made on")).toHaveAccessibleDescription(/year-month-day/);
    expect(shelf().masters[0]?.madeOn).toBe("2026-03-02");
  });
});

describe("the defaults", () => {
  it("are edited in place", async () => {
    const { user, shelf } = await openShelf("Defaults");
    const type = async (label: string | RegExp, text: string) => {
      await user.clear(screen.getByLabelText(label));
      await user.type(screen.getByLabelText(label), `${text}{Enter}`);
    };
    await type("Shop name", "Invented Prints");
    await type(/^Test print needed above/, "72");
    await type(/^Spoilage, %/, "3");
    await type("Tint ladder, %", "0; 0,1; 0.5");
    await type("Ink change", "12.50");
    expect(shelf().defaults).toMatchObject({
      shopName: "Invented Prints",
      testAboveCount: 72,
      spoilageRule: { code: "shop", fraction: 0.03 },
      tintLadder: [0, 0.001, 0.005],
      prices: { inkChange: 12.5 },
    });
  });

  it("hold what an hour of the press costs, what the shop owes, and how test prints are made", async () => {
    const { user, shelf, store } = await openShelf("Defaults");
    const type = async (label: RegExp, text: string) => {
      await user.clear(screen.getByLabelText(label));
      await user.type(screen.getByLabelText(label), `${text}{Enter}`);
    };
    const before = shelf().defaults;
    await type(/^An hour of the press/, "60");
    await type(/^Owed for a customer's piece/, "40");
    await type(/^Printed and read in a day/, "4");
    await type(/^Rest before they are read/, "2");
    await type(/^Pieces of one test/, "3");
    await type(/^Pairs of readings of one test/, "6");
    expect(shelf().defaults).toEqual({
      ...before,
      prices: { ...before.prices, pressHour: 60 },
      liableFraction: 0.4,
      testing: { perDay: 4, restDays: 2, pieceCount: 3, pairCount: 6 },
    });
    await user.clear(screen.getByLabelText(/^Printed and read in a day/));
    await user.tab();
    expect(shelf().defaults.testing.perDay).toBeNull();
    store.getState().undo();
    expect(shelf().defaults.testing).toEqual({ perDay: 4, restDays: 2, pieceCount: 3, pairCount: 6 });
  });

  it("take no half piece and no day without a test", async () => {
    const { user, shelf } = await openShelf("Defaults");
    const { testing } = shelf().defaults;
    for (const [label, text] of [
      [/^Pieces of one test/, "1.5"],
      [/^Printed and read in a day/, "0"],
    ] as const) {
      await user.clear(screen.getByLabelText(label));
      await user.type(screen.getByLabelText(label), `${text}{Enter}`);
      expect(screen.getByLabelText(label)).toBeInvalid();
    }
    expect(shelf().defaults.testing).toEqual(testing);
  });

  it("refuse a tint ladder that does not rise", async () => {
    const { user, shelf } = await openShelf("Defaults");
    const before = shelf().defaults.tintLadder;
    await user.clear(screen.getByLabelText("Tint ladder, %"));
    await user.type(screen.getByLabelText("Tint ladder, %"), "0; 0.5; 0.25{Enter}");
    expect(screen.getByLabelText("Tint ladder, %")).toHaveAccessibleDescription(/in rising order/);
    expect(shelf().defaults.tintLadder).toEqual(before);
  });
});
