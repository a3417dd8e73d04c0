/** Every change a shop can make at once to a print that came out wrong: from what is at hand, singly and in pairs. */

/** How the line is printed now, as far as it can be changed. Keys are opaque. */
export interface Printing {
  /** Base that makes up the mix besides its tints. */
  readonly baseKey: string;
  /** Colourants in the mix with their mass fractions, 0..1; none twice. */
  readonly tints: readonly { readonly colourantKey: string; readonly massFraction: number }[];
  readonly screenKey: string;
  readonly squeegeeKey: string;
  readonly strokeCount: number;
  /** 1 is a solid. */
  readonly halftoneFraction: number;
}

export interface RecoverStock {
  readonly bases: readonly {
    readonly key: string;
    /** Whether a pot of it is open at the press, so that nothing has to be mixed. */
    readonly potReady: boolean;
  }[];
  readonly colourants: readonly {
    readonly key: string;
    readonly family: "black" | "white" | "tint";
    /** Mass fractions the shop would weigh, 0 among them where it may be left out. */
    readonly ladder: readonly number[];
  }[];
  /** Screens that are stretched and exposed with this artwork. */
  readonly screens: readonly { readonly key: string }[];
  readonly squeegees: readonly { readonly key: string }[];
  readonly largestStrokeCount: number;
  /** Halftones the artwork may be printed with instead; empty: solid prints only. */
  readonly halftoneFractions: readonly number[];
}

/** 50 to 85 %, the range in use to weaken a print (trade.md §7; common practice, no source); the steps are invented. */
export const RECOVER_HALFTONES: readonly number[] = [0.85, 0.7, 0.6, 0.5];

export type RecoverChange =
  | { readonly kind: "base"; readonly baseKey: string }
  | { readonly kind: "tint"; readonly colourantKey: string; readonly massFraction: number }
  | { readonly kind: "strokes"; readonly strokeCount: number }
  | { readonly kind: "squeegee"; readonly squeegeeKey: string }
  | { readonly kind: "screen"; readonly screenKey: string }
  | { readonly kind: "halftone"; readonly halftoneFraction: number };

function tintOf(printing: Printing, colourantKey: string): number {
  return printing.tints.find((tint) => tint.colourantKey === colourantKey)?.massFraction ?? 0;
}

/** Each single change of `printing` that `stock` allows, whichever way it turns the print. */
export function singleChanges(printing: Printing, stock: RecoverStock): RecoverChange[] {
  const changes: RecoverChange[] = [];
  for (const { key } of stock.bases) {
    if (key !== printing.baseKey) changes.push({ kind: "base", baseKey: key });
  }
  for (const { key, ladder } of stock.colourants) {
    const now = tintOf(printing, key);
    for (const massFraction of ladder) {
      if (massFraction !== now) changes.push({ kind: "tint", colourantKey: key, massFraction });
    }
  }
  for (let strokeCount = 1; strokeCount <= stock.largestStrokeCount; strokeCount++) {
    if (strokeCount !== printing.strokeCount) changes.push({ kind: "strokes", strokeCount });
  }
  for (const { key } of stock.squeegees) {
    if (key !== printing.squeegeeKey) changes.push({ kind: "squeegee", squeegeeKey: key });
  }
  for (const { key } of stock.screens) {
    if (key !== printing.screenKey) changes.push({ kind: "screen", screenKey: key });
  }
  for (const halftoneFraction of stock.halftoneFractions) {
    if (halftoneFraction !== printing.halftoneFraction) changes.push({ kind: "halftone", halftoneFraction });
  }
  return changes;
}

/** Two changes of one thing exclude each other; two tints are two things. */
function isSameThing(one: RecoverChange, other: RecoverChange): boolean {
  if (one.kind === "tint" && other.kind === "tint") return one.colourantKey === other.colourantKey;
  return one.kind === other.kind;
}

/** Nothing, each single change and each pair of changes of two different things. */
export function changeSets(printing: Printing, stock: RecoverStock): RecoverChange[][] {
  const singles = singleChanges(printing, stock);
  const pairs = singles.flatMap((one, i) =>
    singles
      .slice(i + 1)
      .filter((other) => !isSameThing(one, other))
      .map((other) => [one, other]),
  );
  return [[], ...singles.map((change) => [change]), ...pairs];
}

/** `printing` with one change made. */
function changed(printing: Printing, change: RecoverChange): Printing {
  switch (change.kind) {
    case "base":
      return { ...printing, baseKey: change.baseKey };
    case "tint": {
      const { colourantKey, massFraction } = change;
      const others = printing.tints.filter((tint) => tint.colourantKey !== colourantKey);
      return { ...printing, tints: massFraction > 0 ? [...others, { colourantKey, massFraction }] : others };
    }
    case "strokes":
      return { ...printing, strokeCount: change.strokeCount };
    case "squeegee":
      return { ...printing, squeegeeKey: change.squeegeeKey };
    case "screen":
      return { ...printing, screenKey: change.screenKey };
    case "halftone":
      return { ...printing, halftoneFraction: change.halftoneFraction };
  }
}

/** `printing` with all of `changes` made, in order. */
export function withChanges(printing: Printing, changes: readonly RecoverChange[]): Printing {
  return changes.reduce(changed, printing);
}

/** Whether white ink is added, or more of it: it lifts darks and turns them milky (trade.md §3; common practice). */
export function addsWhite(
  printing: Printing,
  changes: readonly RecoverChange[],
  stock: RecoverStock,
): boolean {
  return changes.some(
    (change) =>
      change.kind === "tint" &&
      change.massFraction > tintOf(printing, change.colourantKey) &&
      stock.colourants.some(({ key, family }) => key === change.colourantKey && family === "white"),
  );
}

/** Whether any of `changes` takes another screen off the shelf or a new one. */
export function changesScreen(changes: readonly RecoverChange[]): boolean {
  return changes.some(({ kind }) => kind === "screen" || kind === "halftone");
}
