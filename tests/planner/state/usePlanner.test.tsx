// Views see the planner's state through a provider, and render anew only for what they picked.
import { act, render, screen } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import { changeJob } from "../../../src/job/edits/job.ts";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider, useDocuments, usePlanner } from "../../../src/planner/state/usePlanner.ts";
import { exampleDocuments } from "../../job/exampleDocuments.ts";

let renders = 0;

function Customer() {
  renders++;
  return <p>{usePlanner((state) => state.documents?.job.customer ?? "nobody")}</p>;
}

function JobNumber() {
  return <p>{useDocuments().job.number}</p>;
}

describe("a view", () => {
  it("shows what was edited, and does not render for what it did not pick", () => {
    const store = createPlannerStore({ documents: exampleDocuments() });
    renders = 0;
    render(
      <PlannerProvider store={store}>
        <Customer />
      </PlannerProvider>,
    );
    act(() => store.getState().edit((d) => changeJob(d, { customer: "Verrow" })));
    expect(screen.getByText("Verrow")).toBeInTheDocument();
    const before = renders;
    act(() => store.getState().edit((d) => changeJob(d, { number: "T-2" })));
    expect(renders).toBe(before);
  });

  it("of a job is refused while none is open, and any view outside a provider", () => {
    const quiet = vi.spyOn(console, "error").mockImplementation(() => {});
    const store = createPlannerStore({ documents: null });
    expect(() =>
      render(
        <PlannerProvider store={store}>
          <JobNumber />
        </PlannerProvider>,
      ),
    ).toThrow("a job must be open");
    expect(() => render(<Customer />)).toThrow("inside a PlannerProvider");
    quiet.mockRestore();
  });
});
