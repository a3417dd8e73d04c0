/** The grid: one reading order in every cell, the keys of the WAI-ARIA grid pattern, Enter chooses. */
import { fireEvent, screen, within } from "@testing-library/react";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { addLine } from "../../../src/job/edits/lines.ts";
import { demoDocuments, openMatrix, standInForTheBrowser } from "./matrixBench.tsx";

beforeEach(() => standInForTheBrowser());

const ids = (documents = demoDocuments()) => ({
  lines: documents.job.lines.map(({ id }) => id),
  front: documents.job.places[0]!,
});

describe("a cell", () => {
  it("reads change, range, grey scale, chance, evidence and warnings, in this order", async () => {
    const { cell } = await openMatrix();
    const words = cell(0, 0).textContent ?? "";
    const inOrder = [
      "1.0 darker",
      "0.5 to 3.0",
      "grey scale 3-4",
      "12\u00a0% in band",
      "this lot",
      "dark cloth",
    ];
    const places = inOrder.map((part) => words.indexOf(part));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((one, other) => one - other));
  });

  it("names its evidence by word and by a form of its own", async () => {
    const { cell } = await openMatrix();
    const evidence = [0, 1, 2].map((row) => cell(row, 0).querySelector("[data-evidence]"));
    expect(evidence.map((element) => element?.textContent)).toEqual([
      "this lot",
      "related prints",
      "model only",
    ]);
    expect(evidence.map((element) => element?.getAttribute("data-evidence"))).toEqual([
      "this lot",
      "related prints",
      "model only",
    ]);
  });

  it("says a problem of its garment as a sentence instead of numbers, and the others stay", async () => {
    const documents = demoDocuments();
    const lotId = documents.job.lines[1]!.garmentLotId;
    const lots = documents.library.garmentLots.map((lot) =>
      lot.id === lotId && lot.bare.kind === "readings"
        ? { ...lot, bare: { ...lot.bare, readings: [{ L: 50, a: 190, b: 0 }] } }
        : lot,
    );
    const { cell } = await openMatrix({ ...documents, library: { ...documents.library, garmentLots: lots } });
    expect(cell(1, 0)).toHaveTextContent("! No cloth can have the colour that was entered");
    expect(cell(1, 0)).not.toHaveTextContent("darker");
    expect(cell(2, 0)).toHaveTextContent("3.0 darker");
  });
});

describe("the grid", () => {
  it("says how large it is and heads every row and column", async () => {
    await openMatrix();
    const grid = screen.getByRole("grid", { name: "Garments and mixes, Front" });
    expect(grid).toHaveAttribute("aria-rowcount", "13");
    expect(grid).toHaveAttribute("aria-colcount", "8");
    expect(within(grid).getAllByRole("columnheader")).toHaveLength(8);
    expect(within(grid).getAllByRole("rowheader")).toHaveLength(12);
  });

  it("has one cell that the Tab key reaches, and moves it with the arrow keys, Home, End and Control", async () => {
    const { cell, user } = await openMatrix();
    const reachable = () => screen.getAllByRole("gridcell").filter((one) => one.tabIndex === 0);
    expect(reachable()).toEqual([cell(0, 0)]);
    cell(0, 0).focus();
    await user.keyboard("{ArrowRight}{ArrowDown}");
    expect(cell(1, 1)).toHaveFocus();
    expect(reachable()).toEqual([cell(1, 1)]);
    await user.keyboard("{End}");
    expect(cell(1, 6)).toHaveFocus();
    await user.keyboard("{ArrowRight}");
    expect(cell(1, 6)).toHaveFocus();
    await user.keyboard("{Control>}{End}{/Control}");
    expect(cell(11, 6)).toHaveFocus();
    await user.keyboard("{Home}");
    expect(cell(11, 0)).toHaveFocus();
    await user.keyboard("{Control>}{Home}{/Control}");
    expect(cell(0, 0)).toHaveFocus();
    await user.keyboard("{PageDown}");
    expect(cell(1, 0)).toHaveFocus();
  });

  it("chooses with Enter and with Space, takes back with Delete, and says so", async () => {
    const { cell, now, user } = await openMatrix();
    const { lines, front } = ids();
    const choice = () =>
      now().job.choices.find(({ lineId, placeId }) => lineId === lines[1] && placeId === front.id);
    cell(1, 2).focus();
    expect(choice()).toBeUndefined();
    await user.keyboard("{Enter}");
    expect(choice()?.candidateId).toBe(front.candidates[2]!.id);
    expect(cell(1, 2)).toHaveTextContent("chosen");
    expect(cell(1, 2)).toHaveAttribute("aria-selected", "true");
    expect(
      screen.getByText("Curable clear + 0.5 % black is chosen for Everyday heather tee, Light grey heather."),
    ).toBeInTheDocument();
    await user.keyboard("{ArrowLeft} ");
    expect(choice()?.candidateId).toBe(front.candidates[1]!.id);
    expect(cell(1, 2)).not.toHaveTextContent("chosen");
    await user.keyboard("{Delete}");
    expect(choice()).toBeUndefined();
  });

  it("opens at the cell in the address and keeps the address where the hand rests", async () => {
    vi.useFakeTimers({ shouldAdvanceTime: true });
    try {
      const { lines, front } = ids();
      const { cell } = await openMatrix(demoDocuments(), { line: lines[3]!, mix: front.candidates[2]!.id });
      expect(cell(3, 2)).toHaveAttribute("data-looked-at");
      fireEvent.click(cell(4, 1));
      expect(cell(4, 1)).toHaveAttribute("data-looked-at");
      await vi.advanceTimersByTimeAsync(400);
      expect(window.location.hash).toContain(`line=${lines[4]}`);
      expect(window.location.hash).toContain(`mix=${front.candidates[1]!.id}`);
    } finally {
      vi.useRealTimers();
    }
  });

  it("shows another print place with its own garments and mixes", async () => {
    const { rows, user } = await openMatrix();
    await user.click(screen.getByRole("button", { name: "Back" }));
    expect(screen.getByRole("grid", { name: "Garments and mixes, Back" })).toBeInTheDocument();
    expect(rows()).toHaveLength(3);
    expect(screen.getByRole("button", { name: "target 20.0 lighter ± 5.0" })).toBeInTheDocument();
  });

  it("leaves rows out of sight out of the page, counts them all, and keeps the row of the keyboard", async () => {
    let documents = demoDocuments();
    const { id: _id, ...lot } = documents.library.garmentLots[0]!;
    for (let index = 0; index < 100; index++) {
      const last = String(index).padStart(12, "0");
      documents = addLine(documents, {
        lineId: `00000000-0000-4000-8000-${last}`,
        lotId: `00000000-0000-4000-9000-${last}`,
        lot: { ...lot, colourway: `Shade ${index}` },
      });
    }
    const height = vi.spyOn(Element.prototype, "clientHeight", "get").mockReturnValue(700);
    const { rows } = await openMatrix(documents, { line: documents.job.lines[80]!.id });
    height.mockRestore();
    expect(screen.getByRole("grid")).toHaveAttribute("aria-rowcount", "113");
    expect(rows().length).toBeGreaterThan(4);
    expect(rows().length).toBeLessThan(40);
    expect(rows().map((row) => row.getAttribute("aria-rowindex"))).toContain("82");
  });
});
