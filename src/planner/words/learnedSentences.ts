/** What the record book taught, a row for each unknown: how strong against the starting value, and how sure. */

import type { LearnedUnknown } from "../../core/evidence/learned.ts";
import type { ScaleEstimate } from "../../core/evidence/priorEstimate.ts";
import type { LearnedNames } from "../../job/recordBook/learnedNames.ts";

/** Standard deviations from the middle to each end of nine in ten of a normal. */
const NINE_IN_TEN = 1.645;
/** Nearer to 1 than this a factor is not worth a figure. Invented. */
const ABOUT_ONE = 0.05;
/** What the records left at this part of the prior's standard deviation or more was hardly taught. Invented. */
const HARDLY_TAUGHT = 0.97;

export interface LearnedGroup {
  readonly title: string;
  readonly rows: readonly LearnedRow[];
}

type Named = (names: LearnedNames, keys: readonly string[]) => string;

/** Fibres as the model tells them apart. */
const FIBRES: Readonly<Record<string, string>> = {
  "polyester-spun": "spun polyester",
  "polyester-filament": "filament polyester",
};

/** Who is spoken of, and what it does. Kinds that are left out are parts of another or not worth a sentence. */
const KINDS: readonly {
  readonly kind: LearnedUnknown["kind"];
  readonly title: string;
  readonly who: Named;
  readonly does: string;
}[] = [
  { kind: "style", title: "Styles", who: (n, [k = ""]) => n.style(k), does: "wets out" },
  {
    kind: "mill",
    title: "Mills",
    who: (n, [s = "", k = ""]) => `${n.mill(k)}, ${n.style(s)}`,
    does: "wets out",
  },
  {
    kind: "colourway",
    title: "Colourways",
    who: (n, [s = "", k = ""]) => `${n.colourway(k)}, ${n.style(s)}`,
    does: "wets out",
  },
  { kind: "lot", title: "Lots", who: (n, [k = ""]) => n.lot(k), does: "wets out" },
  {
    kind: "baseOnStyle",
    title: "Bases on a style",
    who: (n, [s = "", k = ""]) => `${n.item(k)} on ${n.style(s)}`,
    does: "wets out",
  },
  { kind: "fibreGain", title: "Fibres", who: (_, [k = ""]) => FIBRES[k] ?? k, does: "wets out" },
  { kind: "baseStrength", title: "Bases", who: (n, [k = ""]) => n.item(k), does: "wets cloth out" },
  { kind: "haze", title: "Bases", who: (n, [k = ""]) => n.item(k), does: "is hazy" },
  { kind: "colourantStrength", title: "Colourants", who: (n, [k = ""]) => n.item(k), does: "colours" },
  { kind: "blackScattering", title: "Colourants", who: (n, [k = ""]) => n.item(k), does: "scatters" },
  { kind: "depositEstimated", title: "Set-ups", who: (n, [k = ""]) => n.setUp(k), does: "lays down ink" },
  { kind: "depositWeighed", title: "Set-ups", who: (n, [k = ""]) => n.setUp(k), does: "lays down ink" },
];

const factor = (ln: number) => Math.exp(ln).toFixed(2);
const upperFirst = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

/** Hardly taught, or taught that it is as it was thought to be. */
const isNothing = ({ mean, sd, priorSd }: LearnedUnknown) =>
  sd >= HARDLY_TAUGHT * priorSd || Math.abs(Math.exp(mean) - 1) < ABOUT_ONE;

export interface LearnedRow {
  readonly key: string;
  /** "Mill B, Blend crew tee"; its dark part: "the same on dark cloth, besides". */
  readonly who: string;
  /** "wets out 1.24 times as strongly"; "hardly taught". */
  readonly what: string;
  /** "0.81 to 1.88"; empty where it was hardly taught. */
  readonly range: string;
  readonly prints: string;
}

function rowOf(learned: LearnedUnknown, who: string, does: string): LearnedRow {
  const { kind, of, mean, sd, priorSd, recordCount } = learned;
  const key = [kind, ...of].join(" ");
  const prints = recordCount === 1 ? "1 print" : `${recordCount} prints`;
  if (sd >= HARDLY_TAUGHT * priorSd)
    return { key, who: upperFirst(who), what: "taught almost nothing", range: "", prints };
  const isAboutOne = Math.abs(Math.exp(mean) - 1) < ABOUT_ONE;
  return {
    key,
    who: upperFirst(who),
    what: isAboutOne ? `${does} about as strongly` : `${does} ${factor(mean)} times as strongly`,
    range: `${factor(mean - NINE_IN_TEN * sd)} to ${factor(mean + NINE_IN_TEN * sd)}`,
    prints,
  };
}

/** The groups in the order of what they decide; a group without a row is left out. */
export function learnedGroups(learned: readonly LearnedUnknown[], names: LearnedNames): LearnedGroup[] {
  const groups = new Map<string, LearnedRow[]>();
  for (const { kind, title, who, does } of KINDS) {
    const rows = learned
      .filter((one) => one.kind === kind)
      .flatMap((one) => {
        const dark = learned.find(
          (other) => other.kind === "dark" && other.of.join(" ") === [kind, ...one.of].join(" "),
        );
        const own = rowOf(one, who(names, one.of), does);
        // Dark cloth's own part is told only where it says something.
        return dark === undefined || isNothing(dark)
          ? [own]
          : [own, rowOf(dark, "the same on dark cloth, besides", does)];
      });
    groups.set(title, [...(groups.get(title) ?? []), ...rows]);
  }
  return [...groups].filter(([, rows]) => rows.length > 0).map(([title, rows]) => ({ title, rows }));
}

const SCALES: Readonly<Record<string, string>> = {
  styleScale: "style to style",
  mill: "mill to mill",
  colourway: "colourway to colourway",
  lot: "lot to lot",
  baseOnStyle: "base on style",
  fibreGain: "fibre gain",
  baseStrength: "base strength",
  colourantStrength: "tint strength",
};

/** Each scale that the shop's records speak of: what it is now, and what they would make of it. */
export function scaleRows(
  { scales, counts }: ScaleEstimate,
  present: Readonly<Record<string, number>>,
): { readonly name: string; readonly now: string; readonly own: string; readonly count: number }[] {
  return Object.entries(counts).map(([key, count]) => ({
    name: SCALES[key] ?? key,
    now: (present[key] ?? Number.NaN).toFixed(2),
    own: scales[key as keyof typeof scales].toFixed(2),
    count: count ?? 0,
  }));
}
