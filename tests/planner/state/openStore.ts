/** A planner's store on the example documents, with short names for what tests do to it. */
import type { Documents } from "../../../src/job/documents.ts";
import { appendChecklistEntry } from "../../../src/job/edits/checklist.ts";
import { changeJob } from "../../../src/job/edits/job.ts";
import { setTint } from "../../../src/job/edits/mixes.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import { createPlannerStore } from "../../../src/planner/state/plannerStore.ts";
import { exampleDocuments, exampleEntry, ids } from "../../job/exampleDocuments.ts";
import { examplePressEntry } from "../../job/exampleRecords.ts";

export function openStore(documents: Documents | null = exampleDocuments()) {
  const store = createPlannerStore({ documents });
  const state = () => store.getState();
  return {
    store,
    state,
    open(): Documents {
      const { documents: current } = state();
      if (current === null) throw new Error("nothing is open");
      return current;
    },
    tint: (massFraction: number, gesture?: string) =>
      state().edit((d) => setTint(d, ids.otherMix, ids.black, massFraction), gesture),
    rename: (customer: string, gesture?: string) => state().edit((d) => changeJob(d, { customer }), gesture),
    sign: (number: number) => state().record((d) => appendChecklistEntry(d, exampleEntry(number))),
    pull: (number: number) => state().record((d) => appendPressEntry(d, examplePressEntry(number))),
    /** How often it can be undone from here, which it then is. */
    undoAll(): number {
      let count = 0;
      while (state().canUndo) {
        state().undo();
        count++;
      }
      return count;
    },
  };
}
