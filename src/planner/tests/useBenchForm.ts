/** The bench form that is being filled in, one for each job and each print at the press: no other view loses it, and no tablet that goes to sleep. */
import { useCallback, useSyncExternalStore } from "react";
import {
  type BenchForm,
  correctionForm,
  type LastUsed,
  newBenchForm,
  readAgainForm,
} from "../../job/recordBook/benchForm.ts";
import { formFromStored, storedForm } from "../../job/recordBook/storedForm.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { useServices } from "../services.tsx";
import type { PlannerStore } from "../state/plannerStore.ts";
import { usePlannerStore } from "../state/usePlanner.ts";

interface Desk {
  readonly forms: Map<string, BenchForm | null>;
  readonly listeners: Set<() => void>;
}

const desks = new WeakMap<PlannerStore, Desk>();

function deskOf(store: PlannerStore): Desk {
  const desk = desks.get(store) ?? { forms: new Map(), listeners: new Set() };
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

/** @param of what the form is for beside the job's own, as a first-off of a line at a place. */
export function useBenchForm(of = ""): BenchFormInUse {
  const store = usePlannerStore();
  const desk = deskOf(store);
  const { benchDrafts } = useServices();
  const openId = store.getState().documents?.job.id ?? "";
  const key = of === "" ? openId : `${openId} ${of}`;
  // What the page before this one was typing; asked for once.
  if (!desk.forms.has(key)) desk.forms.set(key, formFromStored(benchDrafts.read(key)));
  const listen = useCallback(
    (listener: () => void) => {
      desk.listeners.add(listener);
      return () => desk.listeners.delete(listener);
    },
    [desk],
  );
  const form = useSyncExternalStore(listen, () => desk.forms.get(key) ?? null);
  const put = useCallback(
    (next: BenchForm | null) => {
      desk.forms.set(key, next);
      benchDrafts.keep(key, next === null ? null : storedForm(next));
      for (const listener of desk.listeners) listener();
    },
    [desk, key, benchDrafts],
  );
  return {
    form,
    put,
    change: (part) => {
      const now = desk.forms.get(key) ?? null;
      if (now !== null) put({ ...now, ...part });
    },
    start: (part = {}) => put({ ...newBenchForm(lastUsed(store)), ...part }),
    correct: (print) => put(correctionForm(print, lastUsed(store))),
    readAgain: (print) => put(readAgainForm(print, lastUsed(store))),
  };
}
