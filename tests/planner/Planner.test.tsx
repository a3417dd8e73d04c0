/** The shell: the address decides what is shown, the saved word says how it stands, undo has its keys. */
import { act, fireEvent, render, screen, waitFor } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { lazy } from "react";
import { beforeEach, describe, expect, it, vi } from "vitest";
import type { PredictionEngine } from "../../src/engine/predictionEngine.ts";
import { changeJob } from "../../src/job/edits/job.ts";
import { Planner } from "../../src/planner/Planner.tsx";
import { createSaveTrouble } from "../../src/planner/saveTrouble.ts";
import { demoText, jobBench } from "./jobs/jobBench.ts";
import { noDecisions } from "./noDecisions.ts";

/** The views have tests of their own; here each says only which one it is. */
vi.mock("../../src/planner/views.tsx", () => {
  const named = (name: string, title: string) => ({
    name,
    title,
    Component: lazy(async () => ({
      default: () => {
        if (name === "shelf") throw new Error("planted");
        return <p>view of {name}</p>;
      },
    })),
  });
  return {
    VIEWS: [named("garments", "Garments"), named("matrix", "Matrix"), named("shelf", "Shelf")],
  };
});

const kept: string[] = [];

function openPlanner() {
  const bench = jobBench();
  const saveTrouble = createSaveTrouble();
  const services = {
    session: bench.session,
    engine: { learn: async () => null } as unknown as PredictionEngine,
    theme: { read: () => "system" as const, keep: (theme: string) => void kept.push(theme) },
    saveTrouble,
    decisions: noDecisions,
    benchDrafts: { read: () => null, keep: () => undefined },
  };
  const start = () => render(<Planner store={bench.store} services={services} />);
  return { ...bench, saveTrouble, start, user: userEvent.setup() };
}

beforeEach(() => {
  window.location.hash = "";
  kept.length = 0;
});

describe("the planner", () => {
  it("opens the demo's matrix on the first visit, named on top with its pieces", async () => {
    openPlanner().start();
    expect(await screen.findByText("view of matrix")).toBeInTheDocument();
    expect(screen.getByRole("heading", { level: 1, name: "VM-217" })).toBeInTheDocument();
    expect(screen.getByText("Verrowmoor Outfitters · 7,200 pieces")).toBeInTheDocument();
    expect(screen.getByRole("link", { name: "Matrix" })).toHaveAttribute("aria-current", "page");
    expect(document.title).toBe("Matrix · VM-217 · Tonebench");
  });

  it("opens the view and the job that the address names", async () => {
    const planner = openPlanner();
    await planner.session.start();
    const jobId = planner.store.getState().documents?.job.id ?? "";
    planner.store.getState().load(null);
    window.location.hash = `#/job/${jobId}/garments?line=abc`;
    planner.start();
    expect(await screen.findByText("view of garments")).toBeInTheDocument();
    expect(screen.getByRole("link", { name: "Matrix" })).toHaveAttribute(
      "href",
      `#/job/${jobId}/matrix?line=abc`,
    );
  });

  it("says of an unknown job that it is not here, and the job list stays reachable", async () => {
    window.location.hash = "#/job/00000000-0000-4000-8000-000000000099/matrix";
    openPlanner().start();
    expect(await screen.findByRole("alert")).toHaveTextContent(
      "No job with this address is stored on this device",
    );
    expect(screen.getByRole("link", { name: "Jobs" })).toHaveAttribute("href", "#/jobs");
  });

  it("shows a word for every state of saving", async () => {
    const { start, store } = openPlanner();
    start();
    const word = await screen.findByRole("status", { name: "Saving" });
    for (const [state, text] of [
      ["unsaved", "unsaved"],
      ["saving", "saving…"],
      ["failed", "not saved"],
      ["saved", "saved"],
    ] as const) {
      act(() => store.getState().setSaveState(state));
      expect(word).toHaveTextContent(text);
    }
  });

  it("says why a save failed for as long as it is so", async () => {
    const { start, saveTrouble } = openPlanner();
    start();
    await screen.findByText("view of matrix");
    act(() => saveTrouble.set({ code: "storage-refused", where: "", detail: "quota exceeded" }));
    expect(screen.getByRole("alert")).toHaveTextContent("quota exceeded");
    act(() => saveTrouble.set(null));
    expect(screen.queryByRole("alert")).not.toBeInTheDocument();
  });

  it("undoes and redoes by button and by key, but leaves a text field's own undo alone", async () => {
    const { start, store, user } = openPlanner();
    start();
    await screen.findByText("view of matrix");
    const customer = () => store.getState().documents?.job.customer;
    act(() => store.getState().edit((now) => changeJob(now, { customer: "Other" })));
    await user.click(screen.getByRole("button", { name: "Undo" }));
    expect(customer()).toBe("Verrowmoor Outfitters");
    await user.keyboard("{Control>}{Shift>}z{/Shift}{/Control}");
    expect(customer()).toBe("Other");
    const field = document.createElement("input");
    document.body.append(field);
    fireEvent.keyDown(field, { key: "z", ctrlKey: true });
    field.remove();
    expect(customer()).toBe("Other");
    await user.keyboard("{Control>}z{/Control}");
    expect(customer()).toBe("Verrowmoor Outfitters");
  });

  it("keeps going when a view fails, and says that nothing is lost", async () => {
    const planner = openPlanner();
    const silenced = vi.spyOn(console, "error").mockImplementation(() => {});
    planner.start();
    await screen.findByText("view of matrix");
    await planner.user.click(screen.getByRole("link", { name: "Shelf" }));
    expect(await screen.findByText(/This view stopped: planted/)).toBeInTheDocument();
    await planner.user.click(screen.getByRole("link", { name: "Garments" }));
    expect(await screen.findByText("view of garments")).toBeInTheDocument();
    silenced.mockRestore();
  });

  it("opens an imported job from the job list", async () => {
    const { start, storage, user } = openPlanner();
    window.location.hash = "#/jobs";
    start();
    storage.file = { name: "demo.json", text: demoText };
    await user.click(await screen.findByRole("button", { name: "Import a job file" }));
    await waitFor(() => expect(window.location.hash).toMatch(/garments$/));
    expect(await screen.findByText("view of garments")).toBeInTheDocument();
  });

  it("marks the chosen theme on the page and keeps it", async () => {
    const { start, user } = openPlanner();
    start();
    const theme = await screen.findByRole("combobox", { name: "Theme" });
    await user.selectOptions(theme, "dark");
    expect(document.documentElement.dataset.theme).toBe("dark");
    await user.selectOptions(theme, "system");
    expect(document.documentElement.dataset.theme).toBeUndefined();
    expect(kept).toEqual(["dark", "system"]);
  });
});

describe("a slow start", () => {
  it("leaves alone who has gone to another view in the meantime", async () => {
    const { start, storage, user } = openPlanner();
    let answer = () => {};
    storage.setLastJobId = () =>
      new Promise((resolve) => {
        answer = resolve;
      });
    start();
    await user.click(await screen.findByRole("link", { name: "Garments" }));
    await screen.findByText("view of garments");
    await act(async () => answer());
    expect(window.location.hash).toMatch(/garments$/);
  });
});
