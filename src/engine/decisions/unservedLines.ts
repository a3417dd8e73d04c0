/** The lines that no mix serves, each with the reason and what would help. */
import type { UnservableGarment } from "../../core/planning/decisions/mixSearch.ts";
import { unservedReason } from "../../core/planning/decisions/unservedReason.ts";
import { wetsOut } from "../../core/planning/runChecklist.ts";
import type { Documents } from "../../job/documents.ts";
import { bareLab } from "../../job/screenColour.ts";
import type { UnservedLine } from "./decisionProtocol.ts";
import type { StatedSearch } from "./mixStatement.ts";

export function unservedLines(
  { job }: Documents,
  { lines, left, looked }: StatedSearch,
  unservable: readonly UnservableGarment[],
): UnservedLine[] {
  const found = unservable.flatMap(({ garmentId, why, nearest }): UnservedLine[] => {
    const ready = lines.find(({ line }) => line.id === garmentId);
    if (ready === undefined) return [];
    const options = looked.get(garmentId) ?? [];
    const reason = unservedReason({
      why,
      options,
      bareL: bareLab(ready.lot.bare, job.viewing)?.lab.L ?? null,
      wets: wetsOut(ready.lot.blend),
      band: ready.band,
    });
    const near = options.find(
      ({ mixId, setUpId }) => mixId === nearest?.mixId && setUpId === nearest.setUpId,
    );
    return [{ lineId: garmentId, nearest, nearestDeltaL: near?.deltaL50 ?? null, ...reason }];
  });
  const unpredicted = left.map((lineId): UnservedLine => {
    return { lineId, nearest: null, nearestDeltaL: null, reason: "nothing-predicted", helps: [] };
  });
  return [...found, ...unpredicted];
}
