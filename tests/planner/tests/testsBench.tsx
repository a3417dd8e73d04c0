/** The Tests view on the example job, over an engine that answers what the test says and keeps what it was asked. */
import { act, render, screen } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import type { LearnedUnknown } from "../../../src/core/evidence/learned.ts";
import type { ScaleEstimate } from "../../../src/core/evidence/priorEstimate.ts";
import type { Suspicion } from "../../../src/core/evidence/suspicious.ts";
import type { DecisionEngine } from "../../../src/engine/decisions/decisionEngine.ts";
import type { Lessons, PredictionEngine } from "../../../src/engine/protocol.ts";
import type { RecordFinding, RecordRequest } from "../../../src/engine/recordFinding.ts";
import type { Documents } from "../../../src/job/documents.ts";
import type { EvidenceInputs } from "../../../src/job/evidenceInputs.ts";
import type { TestPrint } from "../../../src/job/recordDocument.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import { LessonsProvider } from "../../../src/planner/lessons.tsx";
import { type PlannerServices, ServicesProvider } from "../../../src/planner/services.tsx";
import { createPlannerStore, type PlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import TestsView from "../../../src/planner/tests/TestsView.tsx";
import { exampleDocuments, exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { noDecisions } from "../noDecisions.ts";

const EXPECTED = {
  deltaL: -4,
  deltaL5: -9,
  deltaL95: -1.5,
  deltaEab: 4.2,
  greyScaleGrade: "2-3",
  chanceInBand: 0.4,
  evidence: "related prints",
} as const;

export const FINDING: RecordFinding = {
  expected: EXPECTED,
  afterwards: { ...EXPECTED, deltaL: -3, deltaL5: -4, deltaL95: -2, evidence: "this lot" },
  wetOutCut: 0.9,
  tintCut: null,
  slopePerLnWetOut: 4,
  suspicion: null,
};

export interface Said {
  readonly finding?: Partial<RecordFinding>;
  readonly suspicions?: readonly Suspicion[];
  readonly teachingCount?: number;
  readonly learned?: readonly LearnedUnknown[];
  readonly scales?: ScaleEstimate | null;
  readonly decisions?: DecisionEngine;
}

/** An engine that says so; `asked` are the records that it was asked about. */
export function engineThatSays(said: Said = {}) {
  const asked: RecordRequest[] = [];
  const learnt: EvidenceInputs[] = [];
  const engine: PredictionEngine = {
    predictMatrix: async () => new Map(),
    predictCell: async () => null,
    teachers: async () => [],
    learn: async (inputs): Promise<Lessons> => {
      learnt.push(inputs);
      // As the engine's: what a later record corrects is not there to be suspected.
      const known = new Set(inputs.records.map(({ id }) => id));
      const suspicions = (said.suspicions ?? []).filter(({ recordId }) => known.has(recordId));
      return { suspicions, teachingCount: said.teachingCount ?? inputs.records.length };
    },
    book: {
      finding: async (request) => {
        asked.push(request);
        return { ...FINDING, ...said.finding };
      },
      learned: async () => said.learned ?? [],
      scales: async () => said.scales ?? null,
      readings: () => Promise.reject(new Error("not asked here")),
    },
    dispose: () => undefined,
  };
  return { engine, asked, learnt };
}

export function withPrints(testPrints: TestPrint[]): Documents {
  const documents = exampleDocuments();
  return { ...documents, library: { ...documents.library, testPrints } };
}

/** One record that stands out, with a swapped pair as what would explain it. */
export const SWAPPED: Suspicion = {
  recordId: exampleTestPrint(1).id,
  residualSd: 6.5,
  residual: [4, 0, 0],
  bareStandsOut: false,
  tintStandsOut: false,
  slip: "swapped-pair",
  undoneSd: 0.4,
  setAside: true,
};

export async function openTests(
  documents = withPrints([exampleTestPrint(1)]),
  said: Said = {},
  at: { tab?: string; line?: string } = {},
) {
  const store = createPlannerStore({ documents });
  const { engine, asked, learnt } = engineThatSays(said);
  const drafts = new Map<string, string>();
  const benchDrafts = {
    read: (jobId: string) => drafts.get(jobId) ?? null,
    keep: (jobId: string, text: string | null) => {
      if (text === null) drafts.delete(jobId);
      else drafts.set(jobId, text);
    },
  };
  /** Shows the view, on another store as after a reload where one is given. */
  const show = async (tab = at.tab ?? "record", on = store) => {
    window.location.hash = printAddress(jobAddress(ids.job, "tests", { ...at, tab }));
    const shown = render(
      <Shown
        store={on}
        services={
          { engine, benchDrafts, decisions: said.decisions ?? noDecisions } as unknown as PlannerServices
        }
      />,
    );
    await act(async () => {});
    return shown;
  };
  const view = await show();
  const now = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open;
  };
  const user = userEvent.setup();
  const fill = async (label: string, text: string) => {
    const field = screen.getByLabelText(label);
    await user.clear(field);
    await user.type(field, `${text}{Tab}`);
  };
  const openTab = async (name: string) => user.click(screen.getByRole("tab", { name }));
  return { store, view, show, now, asked, learnt, user, fill, openTab };
}

function Shown({ store, services }: { readonly store: PlannerStore; readonly services: PlannerServices }) {
  return (
    <PlannerProvider store={store}>
      <ServicesProvider services={services}>
        <LessonsProvider>
          <TestsView />
        </LessonsProvider>
      </ServicesProvider>
    </PlannerProvider>
  );
}
