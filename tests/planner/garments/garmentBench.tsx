/** The Garments view on a small job made by the real edits, in a real store. */
import { render, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import type { Documents } from "../../../src/job/documents.ts";
import { newJob } from "../../../src/job/edits/job.ts";
import { addLine, changeLine, type GarmentLotDraft } from "../../../src/job/edits/lines.ts";
import { emptyLibrary } from "../../../src/job/emptyLibrary.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import { DraftsProvider } from "../../../src/planner/garments/drafts.tsx";
import GarmentsView from "../../../src/planner/garments/GarmentsView.tsx";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";

const id = (last: number) => `00000000-0000-4000-8000-${String(last).padStart(12, "0")}`;
export const JOB_ID = id(1);
export const NAVY_LINE = id(11);
export const FOREST_LINE = id(12);

const navy: GarmentLotDraft = {
  style: "Ring-spun tee",
  colourway: "Navy",
  mill: "Mill A",
  country: "Country 1",
  lot: "41",
  blend: [{ fibre: "cotton", massFraction: 1, dyed: true }],
  yarn: "spun",
  finish: "none",
  heather: false,
  bleeds: false,
  bare: {
    kind: "readings",
    viewing: { illuminant: "D65", observer: "10deg" },
    geometry: "45:0",
    readings: [{ L: 21.5, a: 1.5, b: -14 }],
  },
  note: "",
};

const forest: GarmentLotDraft = {
  ...navy,
  style: "Blend crew tee",
  colourway: "Forest",
  lot: "7",
  blend: [
    { fibre: "polyester", massFraction: 0.5, dyed: true },
    { fibre: "cotton", massFraction: 0.5, dyed: true },
  ],
};

export function smallJob(): Documents {
  const job = newJob({ id: JOB_ID, number: "T-1", customer: "", createdAt: "2026-01-01T08:00:00.000Z" });
  let documents: Documents = { job, library: emptyLibrary() };
  documents = addLine(documents, { lineId: NAVY_LINE, lotId: id(21), lot: navy });
  documents = addLine(documents, { lineId: FOREST_LINE, lotId: id(22), lot: forest });
  return changeLine(documents, NAVY_LINE, { quantities: [{ size: "M", count: 900 }] });
}

export function openGarments(documents = smallJob(), lineId: string | null = null) {
  window.location.hash = printAddress(jobAddress(JOB_ID, "garments", { line: lineId }));
  const store = createPlannerStore({ documents });
  render(
    <PlannerProvider store={store}>
      <DraftsProvider>
        <GarmentsView />
      </DraftsProvider>
    </PlannerProvider>,
  );
  const now = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open;
  };
  const lots = () => now().library.garmentLots;
  const rows = () => within(screen.getByRole("table")).getAllByRole("row").slice(1);
  return { store, now, lots, rows, user: userEvent.setup() };
}
