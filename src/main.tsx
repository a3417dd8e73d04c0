/** Start-up only: joins storage, archive format, engine and planner. */
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import demoUrl from "../demo-data/verrowmoor-vm-217.tonebench.json?url";
import { createDecisionEngine } from "./engine/decisions/decisionEngine.ts";
import { createPredictionEngine } from "./engine/predictionEngine.ts";
import { readJobArchive, writeJobArchive } from "./exchange/jobArchive.ts";
import { mergeLibrary } from "./exchange/mergeLibrary.ts";
import { emptyLibrary } from "./job/emptyLibrary.ts";
import { createJobSession, problemOfError } from "./planner/jobs/jobSession.ts";
import "./planner/look/tokens.css";
import "./planner/look/base.css";
import "./planner/look/controls.css";
import "./planner/look/shell.css";
import "./planner/look/cloth.css";
import "./planner/look/pane.css";
import "./planner/look/tabs.css";
import "./planner/look/fields.css";
import "./planner/look/print.css";
import "./planner/look/paper.css";
import { applyTheme } from "./planner/look/theme.ts";
import { Planner } from "./planner/Planner.tsx";
import { StorageRefused } from "./planner/StorageRefused.tsx";
import { createSaveTrouble } from "./planner/saveTrouble.ts";
import { newId, nowIso } from "./planner/state/identity.ts";
import { createPlannerStore } from "./planner/state/plannerStore.ts";
import { createAutosave } from "./storage/autosave.ts";
import { benchDrafts } from "./storage/benchDrafts.ts";
import { openBrowserStorage } from "./storage/browserStorage.ts";
import { keepForOffline } from "./storage/offline.ts";
import { themeSetting } from "./storage/themeSetting.ts";

async function start(element: HTMLElement): Promise<void> {
  const theme = themeSetting(() => window.localStorage);
  applyTheme(theme.read());
  const root = createRoot(element);
  let storage: Awaited<ReturnType<typeof openBrowserStorage>>;
  try {
    storage = await openBrowserStorage();
  } catch (error) {
    root.render(<StorageRefused error={error} />);
    return;
  }

  const store = createPlannerStore({ documents: null });
  const saveTrouble = createSaveTrouble();
  const autosave = createAutosave({
    read: () => store.getState().documents,
    save: async (documents) => {
      if (documents !== null) await storage.save(documents, nowIso());
    },
    onState: (state, error) => {
      store.getState().setSaveState(state);
      if (state === "failed") saveTrouble.set(problemOfError(error));
      else if (state === "saved") saveTrouble.set(null);
    },
    page: window,
  });

  /** What storage has already: what was loaded is not written back. */
  let stored = store.getState().documents;
  store.subscribe(({ documents }) => {
    if (documents === stored) return;
    stored = documents;
    if (documents !== null) {
      autosave.changed();
      void storage.askToPersist();
    }
  });

  const session = createJobSession({
    storage,
    archives: { read: readJobArchive, write: writeJobArchive, merge: mergeLibrary },
    current: () => store.getState().documents,
    show: (documents) => {
      stored = documents;
      store.getState().load(documents);
      stored = store.getState().documents;
    },
    flush: () => autosave.flush(),
    loadDemo: async () => {
      const response = await fetch(demoUrl);
      if (!response.ok) throw new Error(`the demo job's file answered ${response.status}`);
      return response.text();
    },
    newId,
    now: nowIso,
    emptyLibrary,
  });
  const engine = createPredictionEngine();
  const decisions = createDecisionEngine();
  const drafts = benchDrafts(() => window.localStorage);
  root.render(
    <StrictMode>
      <Planner
        store={store}
        services={{ session, engine, decisions, theme, saveTrouble, benchDrafts: drafts }}
      />
    </StrictMode>,
  );
}

// The development server has no such worker, and a page that is being written must not be kept.
if (import.meta.env.PROD) {
  window.addEventListener("load", () => void keepForOffline(navigator.serviceWorker), { once: true });
}

const element = document.getElementById("planner");
if (element === null) throw new Error("the page has no element for the planner");
void start(element);
