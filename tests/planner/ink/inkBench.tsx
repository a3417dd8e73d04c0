/** The Ink view on the demo job with some mixes chosen, in a real store; nothing in it asks the engine. */
import { readFileSync } from "node:fs";
import { act, render, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { changeDefaults } from "../../../src/job/edits/shelf.ts";
import type { ShopDefaults } from "../../../src/job/shelfDocument.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import InkView from "../../../src/planner/ink/InkView.tsx";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";

export type Units = ShopDefaults["units"];

/** The demo with mixes chosen: columns of the front's matrix by garment line. */
export function demoWith(choices: readonly (readonly [line: number, column: number])[]): Documents {
  const { job, library } = JSON.parse(readFileSync("demo-data/verrowmoor-vm-217.tonebench.json", "utf8"));
  const start: Documents = { job: { ...job, choices: [] }, library };
  const [front] = start.job.places;
  return choices.reduce((documents, [line, column]) => {
    const lineId = documents.job.lines[line]?.id;
    const candidateId = front?.candidates[column]?.id;
    if (front === undefined || lineId === undefined || candidateId === undefined)
      throw new Error("no such cell");
    return chooseCandidate(documents, { lineId, placeId: front.id, candidateId });
  }, start);
}

export const inUnits = (documents: Documents, units: Units) => changeDefaults(documents, { units });

export async function openInk(tab: string, documents: Documents) {
  window.location.hash = printAddress(jobAddress(documents.job.id, "ink", { tab }));
  const store = createPlannerStore({ documents });
  const { unmount } = render(
    <PlannerProvider store={store}>
      <InkView />
    </PlannerProvider>,
  );
  await act(async () => {});
  const now = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open;
  };
  const user = userEvent.setup();
  const panel = () => within(screen.getByRole("tabpanel"));
  /** What the printer gets: the browser announces a print before it looks at the page. */
  const print = () => act(() => window.dispatchEvent(new Event("beforeprint")));
  return { store, now, user, panel, print, unmount };
}
