/** The job list: what is stored is listed, and nothing is deleted or replaced without a question. */
import { render, screen, waitFor, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { beforeAll, describe, expect, it } from "vitest";
import type { PredictionEngine } from "../../../src/engine/predictionEngine.ts";
import { newJob } from "../../../src/job/edits/job.ts";
import { JobsView } from "../../../src/planner/jobs/JobsView.tsx";
import { createSaveTrouble } from "../../../src/planner/saveTrouble.ts";
import { ServicesProvider } from "../../../src/planner/services.tsx";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import { noDecisions } from "../noDecisions.ts";
import { demoText, jobBench, newJobId } from "./jobBench.ts";

beforeAll(() => {
  // jsdom knows the element but neither of its methods.
  HTMLDialogElement.prototype.showModal = function showModal() {
    this.setAttribute("open", "");
  };
  HTMLDialogElement.prototype.close = function close() {
    this.removeAttribute("open");
  };
});

/** No view under test predicts anything. */
const engine = {} as PredictionEngine;

async function openJobs(prepare: (bench: ReturnType<typeof jobBench>) => Promise<unknown>) {
  const bench = jobBench();
  await prepare(bench);
  window.location.hash = "#/jobs";
  const services = {
    session: bench.session,
    engine,
    theme: { read: () => "system" as const, keep: () => {} },
    saveTrouble: createSaveTrouble(),
    decisions: noDecisions,
    benchDrafts: { read: () => null, keep: () => undefined },
  };
  render(
    <PlannerProvider store={bench.store}>
      <ServicesProvider services={services}>
        <JobsView />
      </ServicesProvider>
    </PlannerProvider>,
  );
  await waitFor(() => expect(screen.queryByText("Reading the jobs…")).not.toBeInTheDocument());
  return { ...bench, user: userEvent.setup() };
}

const button = (name: string) => screen.getByRole("button", { name });

describe("the job list", () => {
  it("lists a job with its customer, garments and pieces", async () => {
    await openJobs(({ session }) => session.start());
    const row = screen.getByRole("row", { name: /VM-217/ });
    expect(row).toHaveTextContent("Verrowmoor Outfitters");
    expect(row).toHaveTextContent("7,200");
    expect(within(row).getByRole("link", { name: "VM-217" })).toHaveAttribute(
      "href",
      expect.stringMatching(/^#\/job\//),
    );
  });

  it("says when each job last changed, the latest first", async () => {
    await openJobs(async ({ session, storage, store }) => {
      await session.start();
      await session.create(
        newJob({ id: newJobId(4711), number: "T-9", customer: "", createdAt: "2026-04-05T08:00:00.000Z" }),
      );
      await session.open((await storage.listJobs()).find(({ number }) => number === "VM-217")?.id ?? "");
      const documents = store.getState().documents;
      if (documents === null) throw new Error("nothing is open");
      await storage.save(documents, "2026-06-01T12:00:00.000Z");
    });
    const rows = screen.getAllByRole("row").slice(1);
    expect(rows.map((row) => row.querySelector("th")?.textContent)).toEqual(["VM-217", "T-9"]);
    // T-9 was started later, and VM-217 changed later: the change counts.
    expect(rows[0]?.querySelector("[data-label='Changed']")).toHaveTextContent("2026");
  });

  it("asks for a number before a job is started, then goes to its garments", async () => {
    const { user, store } = await openJobs(({ session }) => session.start());
    await user.click(button("Start a job"));
    expect(screen.getByRole("textbox", { name: "Job number" })).toHaveFocus();
    await user.keyboard("{Enter}");
    expect(screen.getByRole("alert")).toHaveTextContent("A job needs a number.");
    await user.keyboard("T-5{Enter}");
    await waitFor(() => expect(window.location.hash).toMatch(/garments$/));
    const job = store.getState().documents?.job;
    expect(job).toMatchObject({ number: "T-5", places: [{ name: "Front", band: { deltaL: -4 } }] });
    // A matrix that shows something: the reference clear is tried already.
    expect(job?.places[0]?.candidates).toHaveLength(1);
    expect(job?.mixes[0]?.recipe).toHaveLength(1);
  });

  it("asks for the print place and its size, and leaves the first mix out where it is not wanted", async () => {
    const { user, store } = await openJobs(({ session }) => session.start());
    await user.click(button("Start a job"));
    await user.type(screen.getByRole("textbox", { name: "Job number" }), "T-6");
    const type = async (label: RegExp, text: string) => {
      await user.clear(screen.getByLabelText(label));
      await user.type(screen.getByLabelText(label), text);
    };
    await type(/^Print place/, "Sleeve");
    await type(/^Print width/, "80");
    await type(/^Print height/, "60");
    await user.click(screen.getByRole("checkbox", { name: /reference clear on Sleeve/ }));
    await user.click(button("Start"));
    await waitFor(() => expect(window.location.hash).toMatch(/garments$/));
    expect(store.getState().documents?.job.places).toMatchObject([
      { name: "Sleeve", widthMm: 80, heightMm: 60, candidates: [] },
    ]);
  });

  it("deletes only after the question is answered", async () => {
    const { user, storage } = await openJobs(({ session }) => session.start());
    await user.click(button("Delete VM-217"));
    await user.click(button("Keep it"));
    expect(await storage.listJobs()).toHaveLength(1);
    await user.click(button("Delete VM-217"));
    await user.click(within(screen.getByRole("dialog")).getByRole("button", { name: "Delete VM-217" }));
    await screen.findByText(/No job is stored on this device/);
    expect(await storage.listJobs()).toHaveLength(0);
  });

  it("says in a sentence why a file is not imported", async () => {
    const { user, storage } = await openJobs(({ session }) => session.start());
    storage.file = { name: "x.json", text: "{" };
    await user.click(button("Import a job file"));
    const alert = await screen.findByRole("alert");
    expect(alert).toHaveTextContent("This file was not imported. Nothing was changed.");
    expect(alert).toHaveTextContent("the file is damaged, cut short or of another kind");
  });

  it("asks whether a stored job is to be replaced", async () => {
    const { user, storage } = await openJobs(({ session }) => session.start());
    storage.file = { name: "x.json", text: demoText };
    await user.click(button("Import a job file"));
    const dialog = await screen.findByRole("dialog", { name: "VM-217 is stored here already" });
    await user.click(within(dialog).getByRole("button", { name: "Keep both" }));
    await waitFor(async () => expect(await storage.listJobs()).toHaveLength(2));
  });

  it("lists a job that cannot be read with what is wrong, and offers no export of it", async () => {
    await openJobs(async ({ session, storage }) => {
      const outcome = await session.start();
      if (outcome?.ok === true) storage.damaged.add(outcome.jobId);
    });
    const row = screen.getByRole("row", { name: /VM-217/ });
    expect(row).toHaveTextContent("A field is missing");
    expect(within(row).queryByRole("button", { name: /Export/ })).not.toBeInTheDocument();
  });

  it("offers the demo where nothing is stored", async () => {
    const { user, store } = await openJobs(async () => {});
    await user.click(button("Open the demo job"));
    await waitFor(() => expect(store.getState().documents?.job.number).toBe("VM-217"));
  });
});

describe("the open job", () => {
  it("is renamed in its list, and never left without a number", async () => {
    const { user, store } = await openJobs(({ session }) => session.start());
    const number = screen.getByRole("textbox", { name: "Number of the open job" });
    await user.clear(number);
    await user.tab();
    expect(screen.getByRole("alert")).toHaveTextContent("A job needs a number.");
    expect(store.getState().documents?.job.number).toBe("VM-217");
    await user.type(number, "VM-218{Enter}");
    expect(screen.getByRole("link", { name: "VM-218" })).toBeInTheDocument();
    store.getState().undo();
    expect(await screen.findByRole("link", { name: "VM-217" })).toBeInTheDocument();
  });

  it("says on which day its run starts, refuses a day that no calendar has, and forgets it when it is emptied", async () => {
    const { user, store } = await openJobs(({ session }) => session.start());
    const day = screen.getByRole("textbox", { name: "Its run starts on" });
    const startsOn = () => store.getState().documents?.job.runStartsOn;
    expect(day).toHaveValue("");
    await user.type(day, "2026-03-02{Enter}");
    await user.clear(day);
    await user.type(day, "2026-02-30{Enter}");
    expect(screen.getByRole("alert")).toHaveTextContent("year-month-day");
    expect(startsOn()).toBe("2026-03-02");
    await user.clear(day);
    await user.type(day, "2026-03-05{Enter}");
    expect(startsOn()).toBe("2026-03-05");
    await user.clear(day);
    await user.tab();
    expect(startsOn()).toBeNull();
    store.getState().undo();
    expect(startsOn()).toBe("2026-03-05");
  });
});
