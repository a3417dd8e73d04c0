/** The Shelf view on the example job, in a real store. */
import { render, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import ShelfView from "../../../src/planner/shelf/ShelfView.tsx";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import { exampleDocuments } from "../../job/exampleDocuments.ts";

export async function openShelf(tab = "Bases", documents = exampleDocuments()) {
  window.location.hash = printAddress(jobAddress(documents.job.id, "shelf"));
  const store = createPlannerStore({ documents });
  render(
    <PlannerProvider store={store}>
      <ShelfView />
    </PlannerProvider>,
  );
  const user = userEvent.setup();
  const shelf = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open.library.shelf;
  };
  const openTab = (name: string) => user.click(screen.getByRole("tab", { name }));
  const openItem = (name: string) => user.click(screen.getByRole("button", { name }));
  const item = (name: string) => within(screen.getByRole("group", { name }));
  const field = (name: string, label: string | RegExp) => item(name).getByLabelText(label);
  const type = async (name: string, label: string | RegExp, text: string) => {
    await user.clear(field(name, label));
    await user.type(field(name, label), `${text}{Enter}`);
  };
  await openTab(tab);
  return { store, user, shelf, openTab, openItem, item, field, type };
}

export function inOtherUnits() {
  return changeDefaults(exampleDocuments(), {
    units: { temperature: "fahrenheit", length: "inch", threadCount: "per-inch", mass: "ounce" },
    currency: "EUR",
  });
}
