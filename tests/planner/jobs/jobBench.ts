/** A job session on a storage in memory, with the real archive format, the real store and the real demo job. */
import { readFileSync } from "node:fs";
import { readJobArchive, writeJobArchive } from "../../../src/exchange/jobArchive.ts";
import { mergeLibrary } from "../../../src/exchange/mergeLibrary.ts";
import { emptyLibrary } from "../../../src/job/emptyLibrary.ts";
import { createJobSession } from "../../../src/planner/jobs/jobSession.ts";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { memoryStorage } from "./memoryStorage.ts";

export const demoText = readFileSync("demo-data/verrowmoor-vm-217.tonebench.json", "utf8");

/** When the bench saves. */
export const NOW = "2026-03-01T10:00:00.000Z";

export const newJobId = (last: number) => `00000000-0000-4000-8000-${String(last).padStart(12, "0")}`;

export function jobBench({ demo = async () => demoText } = {}) {
  const storage = memoryStorage();
  const store = createPlannerStore({ documents: null });
  let idCount = 500;
  let demoReads = 0;
  const session = createJobSession({
    storage,
    now: () => NOW,
    archives: { read: readJobArchive, write: writeJobArchive, merge: mergeLibrary },
    current: () => store.getState().documents,
    show: (documents) => store.getState().load(documents),
    flush: async () => {
      const open = store.getState().documents;
      if (open === null) return true;
      try {
        await storage.save(open, NOW);
        return true;
      } catch {
        return false;
      }
    },
    loadDemo: async () => {
      demoReads += 1;
      return demo();
    },
    newId: () => newJobId(++idCount),
    emptyLibrary,
  });
  return { storage, store, session, demoReads: () => demoReads };
}
