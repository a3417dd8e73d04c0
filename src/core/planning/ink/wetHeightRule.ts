/**
 * A published rule for the wet height of a print, shown beside the estimate from the mesh because published rules
 * disagree about twofold: that is why set-ups are weighed.
 * "How Much Ink Do You Need?", a screen-printing trade article of April 2000, table 1 (read as quoted in the design notes).
 */
import { type Mesh, THICKNESS_PER_THREAD } from "../../screen/mesh.ts";

/** Counts at which the article changes its rule, threads/cm: up to 42, 43 to 139, from 140. */
const COARSE_UP_TO_PER_CM = 42;
const FINE_FROM_PER_CM = 140;

const UM_PER_CM = 1e4;

/**
 * Wet height by the article, um. D thread diameter, M count, F fabric thickness (1.6 D where not given): up to 42
 * threads/cm 1.82 D (1 - M D)^2, from 43 to 139 0.285 F, from 140 0.35 F. Its rule for twill is left out: our meshes
 * are plain weave. @throws RangeError for a count, thread or thickness not above 0, or threads that leave no opening.
 */
export function publishedWetHeightUm({ threadsPerCm, threadDiameterUm, fabricThicknessUm }: Mesh): number {
  const thicknessUm = fabricThicknessUm ?? THICKNESS_PER_THREAD * threadDiameterUm;
  for (const [name, value] of Object.entries({ threadsPerCm, threadDiameterUm, thicknessUm })) {
    if (!(value > 0 && value < Infinity))
      throw new RangeError(`${name} must be above 0 and finite; got ${value}`);
  }
  const open = 1 - (threadsPerCm * threadDiameterUm) / UM_PER_CM;
  if (!(open > 0)) {
    throw new RangeError(
      `threadDiameterUm must be below the pitch of ${UM_PER_CM / threadsPerCm} um; got ${threadDiameterUm}`,
    );
  }
  if (threadsPerCm >= FINE_FROM_PER_CM) return 0.35 * thicknessUm;
  if (threadsPerCm > COARSE_UP_TO_PER_CM) return 0.285 * thicknessUm;
  return 1.82 * threadDiameterUm * open * open;
}
