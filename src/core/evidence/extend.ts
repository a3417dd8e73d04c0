/** One more record: the posterior moved on from where it stands, at a small part of what learning it all anew costs. */
import { type ClothCache, mainBaseKey } from "./cell.ts";
import type { InkCache } from "./inkFilms.ts";
import { teachingOf } from "./learn.ts";
import { type Lesson, linearisedAt } from "./lesson.ts";
import { lotBaseKey, type Posterior } from "./posterior.ts";
import type { EvidenceRecord } from "./record.ts";
import { type Fit, settle, valuesOf } from "./settle.ts";
import { NOTHING_ELIMINATED, type StyleBlock } from "./styleBlock.ts";
import { isLater } from "./teachingRecords.ts";
import { unbend } from "./unbend.ts";
import type { Unknown } from "./unknown.ts";

/** Which record teaches of the print now, and whether `record` takes its place. */
function teachingBefore(posterior: Posterior, record: EvidenceRecord): { at: number; isReplaced: boolean } {
  const ids = new Map(posterior.records.map((known) => [known.id, known]));
  const at = posterior.lessons.findIndex(
    ({ teaching }) => ids.get(teaching.id)?.printKey === record.printKey,
  );
  const known = at < 0 ? undefined : ids.get(posterior.lessons[at]!.teaching.id);
  return { at, isReplaced: known === undefined || isLater(record, known) };
}

/** `list` with the unknowns of `wanted` that it lacks, and where each of `wanted` lies in it. */
function withUnknowns(
  list: readonly Unknown[],
  positions: ReadonlyMap<string, number>,
  wanted: readonly Unknown[],
): { unknowns: readonly Unknown[]; positions: ReadonlyMap<string, number>; at: Int32Array } {
  if (wanted.every(({ key }) => positions.has(key))) {
    return { unknowns: list, positions, at: Int32Array.from(wanted, ({ key }) => positions.get(key)!) };
  }
  const unknowns = list.slice();
  const extended = new Map(positions);
  for (const unknown of wanted) {
    if (!extended.has(unknown.key)) extended.set(unknown.key, unknowns.push(unknown) - 1);
  }
  return { unknowns, positions: extended, at: Int32Array.from(wanted, ({ key }) => extended.get(key)!) };
}

function grown(values: Float64Array, length: number): Float64Array {
  if (values.length === length) return values;
  const larger = new Float64Array(length);
  larger.set(values);
  return larger;
}

/**
 * `posterior` with one more record: the same as learning all of them (within the tolerance of a linearisation), found by
 * relinearising only what moves. `posterior` itself is left as it is.
 * @throws RangeError as `learn`.
 */
export function extend(posterior: Posterior, record: EvidenceRecord): Posterior {
  const records = [...posterior.records, record];
  const { at: old, isReplaced } = teachingBefore(posterior, record);
  if (record.washCount > 0 || !isReplaced || posterior.setAside.has(record.id))
    return { ...posterior, records };

  const cloths: ClothCache = new Map(posterior.cloths);
  const inks: InkCache = new Map(posterior.inks);
  const teaching = teachingOf(record, cloths, posterior.scales, inks);
  const { unknowns, wetCount } = teaching;
  const lessons = posterior.lessons.slice();
  const blocks = posterior.blocks.slice();
  const blockOfStyle = new Map(posterior.blockOfStyle);
  const { styleKey } = record.print.garment;
  const index = old < 0 ? lessons.length : old;
  const dirty = new Set<number>();
  const block = blockOfStyle.get(styleKey) ?? blocks.length;
  blockOfStyle.set(styleKey, block);
  const before: StyleBlock = blocks[block] ?? {
    unknowns: [],
    positions: new Map(),
    lessons: [],
    values: new Float64Array(0),
    variances: new Float64Array(0),
    eliminated: NOTHING_ELIMINATED,
  };
  if (old >= 0) {
    const left = posterior.lessons[old]!.block;
    dirty.add(left);
    blocks[left] = { ...blocks[left]!, lessons: blocks[left]!.lessons.filter((l) => l !== old) };
  }
  const own = withUnknowns(before.unknowns, before.positions, unknowns.slice(0, wetCount));
  const common = withUnknowns(posterior.shared, posterior.sharedPositions, unknowns.slice(wetCount));
  const variances = grown(before.variances, own.unknowns.length).slice();
  for (let i = before.variances.length; i < variances.length; i++) variances[i] = own.unknowns[i]!.sd ** 2;
  blocks[block] = {
    unknowns: own.unknowns,
    positions: own.positions,
    lessons: [...(blocks[block] ?? before).lessons, index],
    values: grown(before.values, own.unknowns.length),
    variances,
    eliminated: before.eliminated,
  };
  dirty.add(block);
  const sharedValues = grown(posterior.sharedValues, common.unknowns.length);
  const place = { teaching, block, locals: own.at, shared: common.at, weight: 1, bend: null };
  const lesson: Lesson = linearisedAt(place, valuesOf(place, blocks, sharedValues));
  lessons[index] = lesson;

  const fit: Fit = {
    lessons,
    blocks,
    shared: common.unknowns,
    sharedValues,
    sharedCovariance: posterior.sharedCovariance,
    sharedLnDeterminant: posterior.sharedLnDeterminant,
    iterationCount: 0,
    converged: false,
  };
  settle(fit, dirty, true);
  settle(fit, unbend(fit, new Set([block])), true);

  const { mix, itemKeys, garment } = record.print;
  const printedLotBases = new Set(posterior.printedLotBases);
  printedLotBases.add(lotBaseKey(garment.lotKey, mainBaseKey(mix, itemKeys)));
  const printedColourants = new Set(posterior.printedColourants);
  mix.parts.forEach((part, i) => {
    if (part.kind === "colourant" && part.massFraction > 0) printedColourants.add(itemKeys[i]!);
  });
  return {
    ...posterior,
    records,
    ...fit,
    blockOfStyle,
    sharedPositions: common.positions,
    printedLotBases,
    printedColourants,
    cloths,
    inks,
  };
}
