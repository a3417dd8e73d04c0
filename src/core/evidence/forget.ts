/** One record fewer: the posterior as it would be had one record never been made. */
import { printedOf } from "./learn.ts";
import type { Posterior } from "./posterior.ts";
import { type Fit, settle } from "./settle.ts";
import { unbend } from "./unbend.ts";

/**
 * `posterior` without what record `id` teaches, which is then among those set aside. An earlier reading of the same print
 * does not take its place: for that, learn anew. @throws RangeError where no such record teaches.
 */
export function forget(posterior: Posterior, id: string): Posterior {
  const at = posterior.lessons.findIndex(({ teaching }) => teaching.id === id);
  const lesson = posterior.lessons[at];
  if (lesson === undefined) throw new RangeError(`a record to forget must teach; got ${id}`);
  const setAside = new Set(posterior.setAside).add(id);
  const fit: Fit = {
    lessons: posterior.lessons.filter((_, l) => l !== at),
    blocks: posterior.blocks.map((block) => ({
      ...block,
      lessons: block.lessons.filter((l) => l !== at).map((l) => (l > at ? l - 1 : l)),
    })),
    shared: posterior.shared,
    sharedValues: posterior.sharedValues,
    sharedCovariance: posterior.sharedCovariance,
    sharedLnDeterminant: posterior.sharedLnDeterminant,
    iterationCount: 0,
    converged: false,
  };
  settle(fit, new Set([lesson.block]), true);
  settle(fit, unbend(fit, new Set([lesson.block])), true);
  const teaching = new Set(fit.lessons.map((one) => one.teaching.id));
  const blockOfStyle = new Map(posterior.blockOfStyle);
  for (const [style, block] of blockOfStyle) {
    if (fit.blocks[block]!.lessons.length === 0) blockOfStyle.delete(style);
  }
  const prints = posterior.records.filter((record) => teaching.has(record.id)).map(({ print }) => print);
  return { ...posterior, ...fit, setAside, blockOfStyle, ...printedOf(prints) };
}
