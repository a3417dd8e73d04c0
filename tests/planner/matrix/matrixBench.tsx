/**
 * The Matrix view on the demo job, in a real store, over an engine of plain data: a cell is "1.0 darker" per row and
 * 10 more for 1 % of what is no base, so that a test can tell which cell it sees.
 */
import { readFileSync } from "node:fs";
import { act, render, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import type { Prediction } from "../../../src/core/prediction/prediction.ts";
import type { DecisionEngine } from "../../../src/engine/decisions/decisionEngine.ts";
import type { PredictionEngine } from "../../../src/engine/predictionEngine.ts";
import {
  type CellDetail,
  cellKey,
  type MatrixCell,
  type MatrixRequest,
} from "../../../src/engine/protocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import MatrixView from "../../../src/planner/matrix/MatrixView.tsx";
import { type PlannerServices, ServicesProvider } from "../../../src/planner/services.tsx";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import { noDecisions } from "../noDecisions.ts";

export function demoDocuments(): Documents {
  const { job, library } = JSON.parse(readFileSync("demo-data/verrowmoor-vm-217.tonebench.json", "utf8"));
  return { job, library };
}

const DARKER_PER_TINT = 1000;

function colourantFraction(column: MatrixRequest["columns"][number]): number {
  return column.mix.parts.reduce((sum, part) => sum + (part.kind === "colourant" ? part.massFraction : 0), 0);
}

export function plainCell(lineId: string, row: number, column: MatrixRequest["columns"][number]): MatrixCell {
  const deltaL = -(row + 1) - DARKER_PER_TINT * colourantFraction(column);
  return {
    lineId,
    candidateId: column.candidateId,
    bareHex: "#808080",
    printedHex: "#707070",
    lightHex: "#787878",
    darkHex: "#606060",
    deltaL,
    deltaL5: deltaL - 2,
    deltaL50: deltaL,
    deltaL95: deltaL + 0.5,
    chanceInBand: 0.12,
    deltaE00: 1,
    greyScaleGrade: "3-4",
    evidence: (["this lot", "related prints", "model only"] as const)[row % 3]!,
    warnings: row === 0 ? ["dark-limit"] : [],
  };
}

const spectrum = new Float64Array(36).fill(0.2);
const point = (deltaL: number) => ({ deltaL, lab: { L: 50 + deltaL, a: 0, b: 0 }, reflectance: spectrum });

const prediction: Prediction = {
  bare: { L: 50, a: 1, b: -2 },
  printed: { L: 46.8, a: 1, b: -2 },
  bareReflectance: spectrum,
  printedReflectance: new Float64Array(36).fill(0.15),
  deltaL: -3.2,
  deltaE00: 2.9,
  deltaEab: 3.2,
  deltaChroma: 0.1,
  deltaHue: -0.2,
  greyScaleGrade: "3",
  spread: {
    p5: point(-7.8),
    p50: point(-3.2),
    p95: point(-1.4),
    chanceInBand: 0.44,
    sources: [
      { source: "mill", sdDeltaL: 2 },
      { source: "lot", sdDeltaL: 1 },
    ],
  },
  evidence: "model only",
  warnings: ["dark-limit"],
  reasons: ["polyester-deepens"],
};

export const plainDetail: CellDetail = {
  prediction,
  bareHex: "#808080",
  printedHex: "#707070",
  lightHex: "#787878",
  darkHex: "#606060",
  screenColourMoved: false,
  priorCurve: [],
  tintCurve: [
    { massFraction: 0, deltaL: -3.2, deltaL5: -7.8, deltaL95: -1.4 },
    { massFraction: 0.01, deltaL: -9, deltaL5: -14, deltaL95: -6 },
  ],
};

export function plainEngine(job: Documents["job"]) {
  const requests: MatrixRequest[] = [];
  const lineIds = job.lines.map(({ id }) => id);
  const engine: PredictionEngine = {
    predictMatrix: async (request) => {
      requests.push(request);
      const cells = new Map<string, MatrixCell>();
      for (const { lineId } of request.rows) {
        for (const column of request.columns) {
          cells.set(cellKey(lineId, column.candidateId), plainCell(lineId, lineIds.indexOf(lineId), column));
        }
      }
      return cells;
    },
    predictCell: async () => plainDetail,
    teachers: async () => [],
    book: {
      finding: () => Promise.reject(new Error("not asked here")),
      readings: () => Promise.reject(new Error("not asked here")),
      learned: async () => [],
      scales: async () => null,
    },
    learn: async () => ({ suspicions: [], teachingCount: 0 }),
    dispose: () => undefined,
  };
  return { engine, requests };
}

/** jsdom knows neither layout nor canvas nor modal dialogs; this gives what the view asks of them. */
export function standInForTheBrowser(wide = true): void {
  HTMLCanvasElement.prototype.getContext = () => null;
  HTMLDialogElement.prototype.showModal = function showModal(this: HTMLDialogElement) {
    this.open = true;
  };
  HTMLDialogElement.prototype.close = function close(this: HTMLDialogElement) {
    this.open = false;
  };
  window.matchMedia = ((query: string) => ({
    matches: query.includes("min-width: 1200px") ? wide : query.includes("max-width: 699") ? !wide : false,
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  })) as unknown as typeof window.matchMedia;
}

export async function openMatrix(
  documents = demoDocuments(),
  at: { line?: string; mix?: string; place?: string } = {},
  decisions: DecisionEngine = noDecisions,
) {
  window.location.hash = printAddress(jobAddress(documents.job.id, "matrix", at));
  const store = createPlannerStore({ documents });
  const { engine, requests } = plainEngine(documents.job);
  const services = { engine, decisions } as PlannerServices;
  render(
    <PlannerProvider store={store}>
      <ServicesProvider services={services}>
        <MatrixView />
      </ServicesProvider>
    </PlannerProvider>,
  );
  await act(async () => {});
  const now = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open;
  };
  const rows = () => within(screen.getByRole("grid")).getAllByRole("row").slice(1);
  const cell = (row: number, column: number) => within(rows()[row]!).getAllByRole("gridcell")[column]!;
  return { store, now, requests, rows, cell, user: userEvent.setup() };
}
