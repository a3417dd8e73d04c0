/** The bench form that is being filled in: kept with the open planner, so that no other view and no tab loses it. */
import { useCallback, useSyncExternalStore } from "react";
import {
  type BenchForm,
  correctionForm,
  type LastUsed,
  newBenchForm,
  readAgainForm,
} from "../../job/recordBook/benchForm.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import type { PlannerStore } from "../state/plannerStore.ts";
import { usePlannerStore } from "../state/usePlanner.ts";

interface Desk {
  jobId: string | null;
  form: BenchForm | null;
  readonly listeners: Set<() => void>;
}

const desks = new WeakMap<PlannerStore, Desk>();

function deskOf(store: PlannerStore): Desk {
  const desk = desks.get(store) ?? { jobId: null, form: null, listeners: new Set() };
  desks.set(store, desk);
  return desk;
}

/** What the shop used last, from the open documents. */
function lastUsed(store: PlannerStore): LastUsed {
  const { documents } = store.getState();
  if (documents === null) throw new RangeError("a job must be open here; got none");
  const { testPrints, shelf } = documents.library;
  return { prints: testPrints, instrument: shelf.defaults.instrument };
}

export interface BenchFormInUse {
  /** Null where nothing is being filled in. */
  readonly form: BenchForm | null;
  readonly change: (part: Partial<BenchForm>) => void;
  readonly start: (part?: Partial<BenchForm>) => void;
  readonly correct: (print: TestPrint) => void;
  readonly readAgain: (print: TestPrint) => void;
  readonly put: (form: BenchForm | null) => void;
}

export function useBenchForm(): BenchFormInUse {
  const store = usePlannerStore();
  const desk = deskOf(store);
  const jobId = store.getState().documents?.job.id ?? null;
  // Another job's garments mean nothing here.
  if (desk.jobId !== jobId) {
    desk.jobId = jobId;
    desk.form = null;
  }
  const listen = useCallback(
    (listener: () => void) => {
      desk.listeners.add(listener);
      return () => desk.listeners.delete(listener);
    },
    [desk],
  );
  const form = useSyncExternalStore(listen, () => desk.form);
  const put = useCallback(
    (next: BenchForm | null) => {
      desk.form = next;
      for (const listener of desk.listeners) listener();
    },
    [desk],
  );
  return {
    form,
    put,
    change: (part) => {
      if (desk.form !== null) put({ ...desk.form, ...part });
    },
    start: (part = {}) => put({ ...newBenchForm(lastUsed(store)), ...part }),
    correct: (print) => put(correctionForm(print, lastUsed(store))),
    readAgain: (print) => put(readAgainForm(print, lastUsed(store))),
  };
}
