/** The view before the run on the example job, with an engine that answers what the test says. */
import { render, screen, waitFor, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { expect } from "vitest";
import type { DecisionEngine } from "../../../src/engine/decisions/decisionEngine.ts";
import {
  cellKey,
  type MatrixCell,
  type MatrixRequest,
  type PredictionEngine,
} from "../../../src/engine/protocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import BeforeTheRunView from "../../../src/planner/beforeTheRun/BeforeTheRunView.tsx";
import type { PlannerServices } from "../../../src/planner/services.tsx";
import { ServicesProvider } from "../../../src/planner/services.tsx";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import { exampleDocuments, exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { noDecisions } from "../noDecisions.ts";

export const SURE = { deltaL: -4, deltaL5: -5, deltaL50: -4, deltaL95: -3, chanceInBand: 0.9 };

/** Answers every cell alike, and keeps what it was asked. */
export function engineThatSays(figures: Partial<MatrixCell> = {}) {
  const requests: MatrixRequest[] = [];
  const engine: PredictionEngine = {
    predictMatrix: async (request) => {
      requests.push(request);
      const cell = (lineId: string, candidateId: string): MatrixCell => ({
        lineId,
        candidateId,
        bareHex: "#305030",
        printedHex: "#203020",
        lightHex: "#284028",
        darkHex: "#182818",
        ...SURE,
        deltaE00: 4,
        greyScaleGrade: "3",
        evidence: "model only",
        warnings: [],
        ...figures,
      });
      return new Map(
        request.rows.flatMap(({ lineId }) =>
          request.columns.map(
            ({ candidateId }) => [cellKey(lineId, candidateId), cell(lineId, candidateId)] as const,
          ),
        ),
      );
    },
    predictCell: async () => null,
    teachers: async () => [],
    book: {
      finding: () => Promise.reject(new Error("not asked here")),
      readings: () => Promise.reject(new Error("not asked here")),
      learned: async () => [],
      scales: async () => null,
    },
    learn: async () => ({ suspicions: [], teachingCount: 0 }),
    dispose: () => {},
  };
  return { engine, requests };
}

/** The first line is chosen a tinted mix and was printed with it before; the second has no choice. */
export function chosenJob(candidateId = ids.otherCandidate): Documents {
  const documents = chooseCandidate(exampleDocuments(), {
    lineId: ids.line,
    placeId: ids.place,
    candidateId,
  });
  const recipe = documents.job.mixes[1]!.recipe;
  const testPrints = [exampleTestPrint(1, { recipe })];
  return { ...documents, library: { ...documents.library, testPrints } };
}

export async function openRun(
  documents = chosenJob(),
  said = engineThatSays(),
  lineId: string | null = ids.line,
  answers = true,
  decisions: DecisionEngine = noDecisions,
) {
  window.location.hash = printAddress(jobAddress(ids.job, "before-the-run", { line: lineId }));
  const store = createPlannerStore({ documents });
  const services = { engine: said.engine, decisions } as PlannerServices;
  const view = render(
    <PlannerProvider store={store}>
      <ServicesProvider services={services}>
        <BeforeTheRunView />
      </ServicesProvider>
    </PlannerProvider>,
  );
  const ledger = () => store.getState().documents?.job.checklist ?? [];
  const table = () => screen.getByRole("table", { name: "What has to be true before each run" });
  const row = (index: number) => within(table()).getAllByRole("row")[index + 1]!;
  const pane = () => within(screen.getByRole("region", { name: "Checklist of the garment" }));
  const user = userEvent.setup();
  const signAll = async (name: string) => {
    await user.type(screen.getByLabelText("Your name, for what you sign"), `${name}{Enter}`);
    for (;;) {
      const button = pane().queryAllByRole("button", { name: /^Sign / })[0];
      if (button === undefined) return;
      await user.click(button);
    }
  };
  await screen.findAllByText(/blocked|ready/);
  // Another line may be blocked without a prediction, so its word alone does not say that the predictions are there.
  if (answers) await waitFor(() => expect(table()).not.toHaveTextContent("predicting…"));
  return { store, view, ledger, row, pane, user, signAll, services };
}
