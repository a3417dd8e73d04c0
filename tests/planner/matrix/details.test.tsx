/** Round the grid: the details in words and charts, the target band, the light, the narrow screen, the paper. */
import { act, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { beforeEach, describe, expect, it } from "vitest";
import { changeJob } from "../../../src/job/edits/job.ts";
import { demoDocuments, openMatrix, standInForTheBrowser } from "./matrixBench.tsx";

beforeEach(() => standInForTheBrowser());

describe("the details of the cell looked at", () => {
  const pane = () => within(screen.getByRole("region", { name: "The cell looked at" }));

  it("say change, evidence, reasons and warnings in full words", async () => {
    await openMatrix();
    expect(await pane().findByText("3.2 darker")).toBeInTheDocument();
    expect(pane().getByText("1.4 to 7.8 in nine of ten")).toBeInTheDocument();
    expect(pane().getByText(/No print backs this well/)).toBeInTheDocument();
    expect(pane().getByText("Dyed polyester deepens where clear ink wets it.")).toBeInTheDocument();
    expect(pane().getByText(/reflects under 5 % somewhere/)).toBeInTheDocument();
    expect(pane().getByText(/deposit 20.0 µm, weighed: 24.0 g\/m² over 10 pieces/)).toBeInTheDocument();
  });

  it("draw two charts that carry their content as text", async () => {
    await openMatrix();
    await pane().findByText("3.2 darker");
    const charts = pane().getAllByRole("img");
    expect(charts.map((chart) => chart.getAttribute("aria-label"))).toEqual([
      "Change against black. 3.2 darker with 0\u00a0% black, 9.0 darker with 1\u00a0%; the target is 4.0 darker ± 1.5.",
      "Reflectance against wavelength. Mean reflectance 20\u00a0% bare, 15\u00a0% printed, from 380 to 730 nm.",
    ]);
  });

  it("give shares of the variance that follow from the standard deviations: 2 and 1 are 80 and 20 %", async () => {
    await openMatrix();
    await pane().findByText("3.2 darker");
    const share = (words: string) => pane().getByText(words).nextElementSibling?.textContent;
    expect(share("mill")).toBe("80\u00a0%");
    expect(share("lot")).toBe("20\u00a0%");
  });

  it("choose and take back like the grid does", async () => {
    const { cell, user } = await openMatrix();
    await user.click(pane().getByRole("button", { name: "Choose this mix" }));
    expect(cell(0, 0)).toHaveTextContent("chosen");
    await user.click(pane().getByRole("button", { name: "Take the choice back" }));
    expect(cell(0, 0)).not.toHaveTextContent("chosen");
  });

  it("can be closed and shown again", async () => {
    const { user } = await openMatrix();
    await user.click(pane().getByRole("button", { name: "Close" }));
    expect(screen.queryByRole("region", { name: "The cell looked at" })).toBeNull();
    await user.click(screen.getByRole("button", { name: "Show details" }));
    expect(pane().getByRole("heading", { level: 2 })).toHaveTextContent("Ring-spun tee, Navy, Mill A");
  });
});

describe("the target band and the light", () => {
  it("changes the band of this place and asks for new chances", async () => {
    const { now, requests, user } = await openMatrix();
    await user.click(screen.getByRole("button", { name: "target 4.0 darker ± 1.5" }));
    const field = screen.getByRole("textbox", { name: "The print is to be" });
    await user.clear(field);
    await user.type(field, "5{Enter}");
    await user.selectOptions(screen.getByRole("combobox", { name: "in this direction" }), "lighter");
    expect(now().job.places[0]!.band).toEqual({ deltaL: 5, tolerance: 1.5, hueLimit: 2 });
    expect(now().job.places[1]!.band.deltaL).toBe(20);
    await waitFor(() => expect(requests.at(-1)?.band.deltaL).toBe(5));
  });

  it("switches light and observer, and says what is only indicative and what falsifies a swatch", async () => {
    const { now, requests, user } = await openMatrix();
    await user.click(screen.getByRole("button", { name: "light D65/10°" }));
    expect(screen.getByText(/warms or dims itself/)).toBeInTheDocument();
    await user.selectOptions(screen.getByRole("combobox", { name: "Light" }), "warm LED");
    await user.selectOptions(screen.getByRole("combobox", { name: "Observer" }), "2°");
    expect(now().job.viewing).toEqual({ illuminant: "LED", observer: "2deg" });
    expect(screen.getByText(/so it is for 12 of the garments here/)).toBeInTheDocument();
    await waitFor(() => expect(requests.at(-1)?.viewing).toEqual({ illuminant: "LED", observer: "2deg" }));
  });

  it("keeps the last figures until new ones are there", async () => {
    const { cell, store } = await openMatrix();
    act(() =>
      store.getState().edit((now) => changeJob(now, { viewing: { illuminant: "A", observer: "10deg" } })),
    );
    expect(cell(1, 0)).toHaveTextContent("2.0 darker");
  });
});

describe("the narrow screen", () => {
  beforeEach(() => standInForTheBrowser(false));

  it("shows one garment with its mixes and goes on to the next", async () => {
    const { user, now } = await openMatrix();
    expect(screen.queryByRole("grid")).toBeNull();
    expect(screen.getByText("1 of 12")).toBeInTheDocument();
    await user.click(screen.getByRole("button", { name: "Next garment" }));
    expect(screen.getByText("2 of 12")).toBeInTheDocument();
    const mixes = within(screen.getByRole("list", { name: "Mixes" })).getAllByRole("listitem");
    expect(mixes).toHaveLength(7);
    expect(mixes[0]).toHaveTextContent("2.0 darker");
    await user.click(within(mixes[0]!).getByRole("button", { name: "Choose" }));
    expect(mixes[0]).toHaveTextContent("chosen");
    expect(now().job.choices.some(({ lineId }) => lineId === now().job.lines[1]!.id)).toBe(true);
  });
});

describe("the paper", () => {
  it("is a table of every garment and mix with figures, evidence and choice", async () => {
    await openMatrix();
    fireEvent(window, new Event("beforeprint"));
    const table = screen.getByRole("table");
    expect(within(table).getAllByRole("rowheader", { hidden: true })).toHaveLength(12);
    const lastRow = within(table).getAllByRole("row").at(-1)!;
    expect(lastRow).toHaveTextContent("12.0 darker");
    expect(lastRow).toHaveTextContent("model only");
    expect(within(table).getAllByText("chosen")).toHaveLength(1);
    fireEvent(window, new Event("afterprint"));
    expect(screen.getByRole("grid")).toBeInTheDocument();
  });
});

describe("a job that is not far enough", () => {
  it("asks for a print place, and for garments, instead of showing an empty grid", async () => {
    const documents = demoDocuments();
    const bare = { ...documents, job: { ...documents.job, places: [], choices: [], mixes: [] } };
    const { user } = await openMatrix(bare);
    await user.click(screen.getByRole("button", { name: "Add a print place" }));
    expect(await screen.findByText(/No mix is tried on Front yet/)).toBeInTheDocument();
  });
});
