/** What test prints teach: the posterior of every unknown of model.md §6 from all records of a shop. */
import { type Cell, type ClothCache, cachedCloth, cellOf, mainBaseKey } from "./cell.ts";
import { type InkCache, withSharedInk } from "./inkFilms.ts";
import { linearisedAt } from "./lesson.ts";
import { lotBaseKey, type Posterior } from "./posterior.ts";
import { DEFAULT_PRIOR_SCALES, type PriorScales } from "./priorScales.ts";
import type { EvidenceGarment, EvidencePrint, EvidenceRecord, GoodsInRecord } from "./record.ts";
import { type Fit, STEPS_TO_NEAR, settle, valuesOf } from "./settle.ts";
import { NOTHING_ELIMINATED, type StyleBlock } from "./styleBlock.ts";
import { byEyeTeaching, goodsInTeaching, pairTeaching, type Teaching } from "./teaching.ts";
import { teachingRecords } from "./teachingRecords.ts";
import { unbend } from "./unbend.ts";
import type { Unknown } from "./unknown.ts";

export interface LearnOptions {
  readonly goodsIn?: readonly GoodsInRecord[];
  readonly scales?: PriorScales;
  /** Ids of records that must not teach. */
  readonly setAside?: ReadonlySet<string>;
  /** A posterior to start from where it knows the unknowns: the result is the same, sooner. */
  readonly from?: Posterior;
  /** The most probable values themselves, without the step to the means (unbend.ts): for comparison. */
  readonly mostProbable?: boolean;
}

interface Draft {
  readonly unknowns: Unknown[];
  readonly positions: Map<string, number>;
  readonly lessons: number[];
}

/** The teaching of one record; with `inks`, prints of one ink share its films. */
export function teachingOf(
  record: EvidenceRecord,
  cloths: ClothCache,
  scales: PriorScales,
  inks: InkCache = new Map(),
): Teaching {
  const cell = cellOf(
    withSharedInk(record.print, inks),
    cachedCloth(cloths, record.print.garment.garment, record.viewing),
    scales,
  );
  return record.reading.kind === "pair"
    ? pairTeaching(record.id, cell, record.reading)
    : byEyeTeaching(record.id, cell, record.reading);
}

function drawnCell(
  check: GoodsInRecord,
  garment: EvidenceGarment,
  cloths: ClothCache,
  scales: PriorScales,
): Cell {
  const print: EvidencePrint = {
    garment,
    mix: check.mix,
    itemKeys: check.mix.parts.map(() => check.baseKey),
    // The same draw on both: its deposit cancels in the ratio, and a drawn film is neither screened nor pressed.
    application: { depositUm: DRAW_UM, depositWeighed: false, halftoneFraction: 1, smoothed: false },
    setUpKey: "",
    depositOfThisPrintWeighed: true,
  };
  return cellOf(print, cachedCloth(cloths, garment.garment, check.viewing), scales);
}

/** Thickness of a quick draw, um. Invented default: the reference deposit. */
const DRAW_UM = 20;

function goodsInTeachingOf(check: GoodsInRecord, cloths: ClothCache, scales: PriorScales): Teaching | null {
  const [approved, arriving] = [check.approved, check.arriving].map((garment) =>
    drawnCell(check, garment, cloths, scales),
  );
  return goodsInTeaching(check.id, approved!, arriving!, check.approvedDeltaL, check.arrivingDeltaL);
}

/** Styles that share a goods-in check are one block: the first style of each group, by style. */
function groupedStyles(
  records: readonly EvidenceRecord[],
  checks: readonly GoodsInRecord[],
): (style: string) => string {
  const leader = new Map<string, string>();
  const find = (style: string): string => {
    let at = style;
    for (let next = leader.get(at); next !== undefined && next !== at; next = leader.get(at)) at = next;
    return at;
  };
  for (const { print } of records)
    if (!leader.has(print.garment.styleKey)) leader.set(print.garment.styleKey, print.garment.styleKey);
  for (const { approved, arriving } of checks) {
    const one = find(approved.styleKey);
    const other = find(arriving.styleKey);
    if (one !== other) leader.set(other, one);
  }
  return find;
}

/**
 * Most probable values and Laplace covariance of every unknown that `records` speak of (model.md §6): Gauss-Newton on
 * the prediction's own model, Student-t weights per record, each style eliminated by Schur complement. Only the latest
 * unwashed record of a print teaches. The order of the records does not matter beyond rounding.
 * @throws RangeError for a record that the model cannot take (a blend that does not sum to 1, itemKeys of another count).
 */
export function learn(records: readonly EvidenceRecord[], options: LearnOptions = {}): Posterior {
  const scales = options.scales ?? DEFAULT_PRIOR_SCALES;
  const setAside = options.setAside ?? new Set<string>();
  const goodsIn = options.goodsIn ?? [];
  const cloths: ClothCache = new Map(options.from?.cloths ?? []);
  const inks: InkCache = new Map(options.from?.inks ?? []);
  const used = teachingRecords(records.filter(({ id }) => !setAside.has(id)));
  const checks = goodsIn.filter(({ id }) => !setAside.has(id));
  const leaderOf = groupedStyles(used, checks);
  const taught: { teaching: Teaching; style: string }[] = used.map((record) => ({
    teaching: teachingOf(record, cloths, scales, inks),
    style: leaderOf(record.print.garment.styleKey),
  }));
  for (const check of checks) {
    const teaching = goodsInTeachingOf(check, cloths, scales);
    if (teaching !== null) taught.push({ teaching, style: leaderOf(check.approved.styleKey) });
  }

  const drafts: Draft[] = [];
  const draftOf = new Map<string, number>();
  const shared: Unknown[] = [];
  const sharedPositions = new Map<string, number>();
  const places = taught.map(({ teaching, style }, l) => {
    let block = draftOf.get(style);
    if (block === undefined) {
      block = drafts.push({ unknowns: [], positions: new Map(), lessons: [] }) - 1;
      draftOf.set(style, block);
    }
    const draft = drafts[block]!;
    draft.lessons.push(l);
    const { unknowns, wetCount } = teaching;
    const locals = Int32Array.from(unknowns.slice(0, wetCount), (u) =>
      placed(u, draft.unknowns, draft.positions),
    );
    const others = Int32Array.from(unknowns.slice(wetCount), (u) => placed(u, shared, sharedPositions));
    return { teaching, block, locals, shared: others, weight: 1, bend: null };
  });

  const known = knownValues(options.from);
  const blocks = drafts.map((draft) => startingBlock(draft, known));
  const sharedValues = Float64Array.from(shared, ({ key }) => known.get(key) ?? 0);
  const fit: Fit = {
    lessons: places.map((place) => linearisedAt(place, valuesOf(place, blocks, sharedValues))),
    blocks,
    shared,
    sharedValues,
    sharedCovariance: new Float64Array(0),
    sharedLnDeterminant: 0,
    iterationCount: 0,
    converged: true,
  };
  const isWarm = options.from !== undefined;
  const all = new Set(blocks.keys());
  if (options.mostProbable === true) settle(fit, all, isWarm);
  else {
    settle(fit, all, isWarm, STEPS_TO_NEAR);
    settle(fit, unbend(fit, null), true);
  }

  const blockOfStyle = new Map<string, number>();
  for (const record of used) {
    const { styleKey } = record.print.garment;
    blockOfStyle.set(styleKey, draftOf.get(leaderOf(styleKey))!);
  }
  for (const { approved, arriving } of checks) {
    for (const { styleKey } of [approved, arriving]) {
      const block = draftOf.get(leaderOf(styleKey));
      if (block !== undefined) blockOfStyle.set(styleKey, block);
    }
  }
  return {
    scales,
    records,
    goodsIn,
    setAside,
    ...fit,
    blockOfStyle,
    sharedPositions,
    ...printedOf(used.map(({ print }) => print)),
    cloths,
    inks,
  };
}

function placed(unknown: Unknown, unknowns: Unknown[], positions: Map<string, number>): number {
  const known = positions.get(unknown.key);
  if (known !== undefined) return known;
  positions.set(unknown.key, unknowns.push(unknown) - 1);
  return unknowns.length - 1;
}

/** A block before its first elimination, at the values that are known already. */
function startingBlock(draft: Draft, known: ReadonlyMap<string, number>): StyleBlock {
  const { unknowns, positions, lessons } = draft;
  const values = Float64Array.from(unknowns, ({ key }) => known.get(key) ?? 0);
  const variances = Float64Array.from(unknowns, ({ sd }) => sd * sd);
  return { unknowns, positions, lessons, values, variances, eliminated: NOTHING_ELIMINATED };
}

/** Every value of a posterior by key. */
function knownValues(from: Posterior | undefined): Map<string, number> {
  const known = new Map<string, number>();
  if (from === undefined) return known;
  for (const { unknowns, values } of from.blocks)
    unknowns.forEach(({ key }, i) => {
      known.set(key, values[i]!);
    });
  for (const [key, i] of from.sharedPositions) known.set(key, from.sharedValues[i]!);
  return known;
}

/** Which lots were printed with which base, and which colourants were ever printed. */
export function printedOf(prints: readonly EvidencePrint[]): {
  printedLotBases: Set<string>;
  printedColourants: Set<string>;
} {
  const printedLotBases = new Set<string>();
  const printedColourants = new Set<string>();
  for (const { garment, mix, itemKeys } of prints) {
    printedLotBases.add(lotBaseKey(garment.lotKey, mainBaseKey(mix, itemKeys)));
    mix.parts.forEach((part, i) => {
      if (part.kind === "colourant" && part.massFraction > 0) printedColourants.add(itemKeys[i]!);
    });
  }
  return { printedLotBases, printedColourants };
}
