/** What records taught of each unknown by itself: the shop's own figures for a style, a mill, a base, a colourant, a fibre. */
import { lessonCovariance } from "./leaveOneOut.ts";
import type { Posterior } from "./posterior.ts";
import { valuesOf } from "./settle.ts";
import type { UnknownKind } from "./unknown.ts";

export interface LearnedUnknown {
  readonly kind: UnknownKind;
  /**
   * What it is of: the style's key; style and mill; style and colourway; the lot; style and base; or the fibre's name, the
   * item's or the set-up's key. Of a `dark` part the kind it widens comes first.
   */
  readonly of: readonly string[];
  /** Natural logarithm against what is expected (a closed fraction: its difference). */
  readonly mean: number;
  readonly sd: number;
  readonly priorSd: number;
  /** Records that depend on it, whether or not they say much of it. */
  readonly recordCount: number;
}

const SEPARATOR = "\u0001";

/** Every unknown that any record speaks of, in the order in which records first do. */
export function learned(posterior: Posterior): LearnedUnknown[] {
  const found = new Map<string, { -readonly [K in keyof LearnedUnknown]: LearnedUnknown[K] }>();
  for (const lesson of posterior.lessons) {
    const { unknowns } = lesson.teaching;
    const isKnown = unknowns.every(({ key }) => found.has(key));
    const covariance = isKnown ? null : lessonCovariance(posterior, lesson);
    const values = valuesOf(lesson, posterior.blocks, posterior.sharedValues);
    unknowns.forEach(({ key, kind, sd }, i) => {
      const known = found.get(key);
      if (known !== undefined) {
        known.recordCount++;
        return;
      }
      const variance = covariance![i * unknowns.length + i]!;
      const [, ...of] = key.split(SEPARATOR);
      found.set(key, { kind, of, mean: values[i]!, sd: Math.sqrt(variance), priorSd: sd, recordCount: 1 });
    });
  }
  return [...found.values()];
}
