/** The prior's scales as the shop's own records would have them: an answer to a question, never applied by itself. */
import type { Posterior } from "../core/evidence/posterior.ts";
import { estimateScales, type ScaleEstimate } from "../core/evidence/priorEstimate.ts";

/** Null where there are too few records. */
export function scalesFromRecords(posterior: Posterior): ScaleEstimate | null {
  const { records, goodsIn, scales, setAside } = posterior;
  return estimateScales(records, { goodsIn, scales, setAside });
}
