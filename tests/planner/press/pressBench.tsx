/** The Press view on the example job, over engines of plain data that keep what they were asked. */
import { act, fireEvent, render, screen, within } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import type { RecoverOption } from "../../../src/core/planning/decisions/recover.ts";
import type {
  RecoverAnswer,
  RecoverAsk,
  RecoverRecipe,
} from "../../../src/engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import { jobAddress, printAddress } from "../../../src/planner/address.ts";
import { LessonsProvider } from "../../../src/planner/lessons.tsx";
import PressView from "../../../src/planner/press/PressView.tsx";
import { type PlannerServices, ServicesProvider } from "../../../src/planner/services.tsx";
import { createPlannerStore, type PlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { PlannerProvider } from "../../../src/planner/state/usePlanner.ts";
import { exampleDocuments, exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { engineThatSays as runEngine } from "../beforeTheRun/runBench.tsx";
import { noDecisions } from "../noDecisions.ts";
import { engineThatSays as bookEngine } from "../tests/testsBench.tsx";

const choice = (candidateId: string) => ({ lineId: ids.line, placeId: ids.place, candidateId });

/** The first line is chosen the clear; its own reference print changed it by -3, the place's target is -4. */
export function chosenJob(): Documents {
  return chooseCandidate(exampleDocuments(), choice(ids.candidate));
}

/** The same, with a reference print that the band follows. */
export const withReference = () =>
  appendTestPrint(chosenJob(), exampleTestPrint(1, { verdict: "reference", operator: "B. Before" }));

const printing = {
  baseKey: ids.clear,
  tints: [],
  screenKey: ids.mesh,
  squeegeeKey: ids.squeegee,
  strokeCount: 1,
  halftoneFraction: 1,
};

/** A way to recover; `changes` decide what is said of it. */
export function way(change: Partial<RecoverOption> & Pick<RecoverOption, "changes">): RecoverOption {
  return {
    printing,
    prediction: { deltaL5: -5, deltaL50: -4, deltaL95: -3, chanceInBand: 0.8, deltaE00FromApproved: 0.6 },
    distance: 0.6,
    minutes: 9,
    cost: 21,
    screenChange: false,
    cautions: [],
    ...change,
  };
}

export const AS_IT_IS = way({
  changes: [],
  prediction: { deltaL5: -9, deltaL50: -8, deltaL95: -7, chanceInBand: 0 },
  distance: 4,
  minutes: 0,
  cost: 0,
});

const recipe = (change: Partial<RecoverRecipe> = {}): RecoverRecipe => ({
  recipe: [{ itemId: ids.clear, massFraction: 1 }],
  setUpId: ids.otherSetUp,
  greyScaleGrade: "3",
  evidence: "related prints",
  ...change,
});

/** An answer that ranks these ways, each with what it is printed with. */
export function ranked(
  ways: readonly (readonly [RecoverOption, Partial<RecoverRecipe>?])[],
  change: { readonly best?: number; readonly suffices?: boolean } = {},
): RecoverAnswer {
  return {
    ok: true,
    plan: {
      options: ways.map(([option]) => option),
      bestOnThisScreen: change.best === undefined ? null : (ways[change.best]?.[0] ?? null),
      sufficesOnThisScreen: change.suffices ?? false,
      predictedCount: 62,
    },
    recipes: ways.map(([, part]) => recipe(part)),
    band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
    unexplained: null,
  };
}

interface Opening {
  readonly tab?: string;
  readonly line?: string | null;
  readonly answer?: (ask: RecoverAsk) => RecoverAnswer;
}

export async function openPress(documents = chosenJob(), { tab, line = ids.line, answer }: Opening = {}) {
  window.location.hash = printAddress(jobAddress(ids.job, "press", { line, tab: tab ?? null }));
  const store = createPlannerStore({ documents });
  const asks: { readonly documents: Documents; readonly ask: RecoverAsk }[] = [];
  const book = bookEngine();
  const drafts = new Map<string, string>();
  const services = {
    engine: { ...runEngine().engine, book: book.engine.book, learn: book.engine.learn },
    decisions: {
      ...noDecisions,
      recover: async (asked: Documents, ask: RecoverAsk) => {
        asks.push({ documents: asked, ask });
        return answer?.(ask) ?? ranked([[AS_IT_IS]]);
      },
    },
    benchDrafts: {
      read: (key: string) => drafts.get(key) ?? null,
      keep: (key: string, text: string | null) => {
        if (text === null) drafts.delete(key);
        else drafts.set(key, text);
      },
    },
  } as unknown as PlannerServices;
  const show = async (on: PlannerStore = store) => {
    const shown = render(<Shown store={on} services={services} />);
    await act(async () => {});
    return shown;
  };
  const view = await show();
  const user = userEvent.setup();
  const now = () => {
    const open = store.getState().documents;
    if (open === null) throw new Error("no documents are open");
    return open;
  };
  const fill = async (label: string | RegExp, text: string) => {
    // Key by key takes a second for a form of numbers; what a field does with keys is tested with the fields.
    const field = screen.getByLabelText(label);
    fireEvent.change(field, { target: { value: text } });
    fireEvent.blur(field);
    await act(async () => {});
  };
  /** Types the pairs of a first-off: L* of the print, bare cloth as in the example. */
  const typePairs = async (prints: readonly number[]) => {
    for (const [index, L] of prints.entries()) {
      const of = `of pair ${index + 1}`;
      if (index > 0) await user.click(screen.getByRole("button", { name: "Add a pair" }));
      for (const [axis, bare, print] of [
        ["L*", 30, L],
        ["a*", -15, -14],
        ["b*", 6, 5],
      ] as const) {
        await fill(`${axis} bare ${of}`, String(bare));
        await fill(`${axis} print ${of}`, String(print));
      }
    }
  };
  const press = async (name: string | RegExp) => user.click(screen.getByRole("button", { name }));
  const verdict = () => within(screen.getByRole("region", { name: "Verdict" }));
  return { store, view, show, now, asks, learnt: book.learnt, user, fill, typePairs, press, verdict, drafts };
}

function Shown({ store, services }: { readonly store: PlannerStore; readonly services: PlannerServices }) {
  return (
    <PlannerProvider store={store}>
      <ServicesProvider services={services}>
        <LessonsProvider>
          <PressView />
        </LessonsProvider>
      </ServicesProvider>
    </PlannerProvider>
  );
}
