/** The readings of a test print as they are typed: swapped, copied, too few, under another light, or off the lot. */

import { deltaE00 } from "../core/colorimetry/ciede2000.ts";
import { labFromReflectance } from "../core/colorimetry/cielab.ts";
import { isSameViewing, type Lab, type Viewing } from "../core/colorimetry/viewing.ts";
import { weightsFor } from "../core/colorimetry/weights.ts";
import { bareAgreement } from "../core/evidence/bareCheck.ts";
import { PAIR_SD_HEATHER_L, PAIR_SD_SOLID_L } from "../core/evidence/readingNoise.ts";
import { pairCountFor, Z_95 } from "../core/evidence/sampleSize.ts";
import type { BenchContext, BenchDraft } from "./benchChecks.ts";
import { meanLab } from "./colourSpectrum.ts";
import type { GarmentLot } from "./garmentLotDocument.ts";
import type { Problem } from "./problem.ts";
import { type MeasuredReadings, readingMeans } from "./readingMeans.ts";
import { partsOf } from "./recipeParts.ts";
import type { TestPrint } from "./recordDocument.ts";
import { standing } from "./standing.ts";

/** E: how near the mean change of L* is wanted. Common practice, no source: 4 reads on solid cloth, 10 on a heather. */
const WANTED_SOLID_L = 0.3;
const WANTED_HEATHER_L = 0.5;
/** What is usual counts as this many readings where the pairs' own scatter is known; as core/evidence/readingNoise. */
const PRIOR_PAIR_DEGREES_OF_FREEDOM = 4;
/** Shade of one piece against its lot, in L*; invented, as core/evidence/bareCheck. */
const PIECE_SHADE_SD_L = 0.3;
/** 99.73 % (three standard deviations) of a chi-square with 3 degrees of freedom. From memory of any table: 14.16. */
const LARGEST_BARE_DISTANCE2 = 14.16;
/** A change this many standard deviations from the other pairs' is named (invented). */
const ODD_PAIR_SD = 4;
/** So many records, nearly all under one light, make a habit (invented). */
const FEWEST_FOR_HABIT = 3;
const HABIT_FRACTION = 0.9;

const isHeather = ({ blend }: GarmentLot): boolean =>
  blend.some(({ dyed }) => dyed) && blend.some(({ dyed }) => !dyed);

function median(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2;
}

/** Whether the mix holds white, which is meant to be lighter than dark cloth. */
function holdsWhite({ recipe }: BenchDraft, { library }: BenchContext): boolean {
  const parts = recipe === null ? [] : partsOf(recipe, library.shelf);
  return parts.some((part) => part.kind === "colourant" && part.item.optics.kind === "white");
}

/** Standard deviation of one pair's change of L*: what is usual for the cloth, moved by the pairs' own scatter. */
export function expectedPairSd(lot: GarmentLot | null, own: number | null, pairCount: number): number {
  const usual = lot !== null && isHeather(lot) ? PAIR_SD_HEATHER_L : PAIR_SD_SOLID_L;
  if (own === null || pairCount < 2) return usual;
  const freedom = pairCount - 1;
  const prior = PRIOR_PAIR_DEGREES_OF_FREEDOM;
  return Math.sqrt((prior * usual ** 2 + freedom * own ** 2) / (prior + freedom));
}

type Records = readonly TestPrint[];
type Measured = TestPrint & { readonly readings: MeasuredReadings };

const isMeasured = (print: TestPrint): print is Measured => print.readings.kind !== "by-eye";

/** Light, observer and geometry against the lot's own readings, else against the shop's habit. */
function conditionChecks(readings: MeasuredReadings, lot: GarmentLot | null, records: Records): Problem[] {
  const found: Problem[] = [];
  const ofLot = records.filter((print) => print.garmentLotId === lot?.id).filter(isMeasured);
  const geometries = ofLot.map((print) => print.readings.geometry);
  if (lot !== null && lot.bare.kind !== "hex") geometries.push(lot.bare.geometry);
  const [usualGeometry] = geometries;
  if (usualGeometry !== undefined && !geometries.includes(readings.geometry)) {
    const values = { geometry: readings.geometry, usualGeometry };
    found.push({ code: "bench-geometry-unlike-lot", where: "readings.geometry", values });
  }
  if (readings.kind !== "lab") return found;
  const { viewing } = readings;
  const viewingsOf = (prints: Records) =>
    prints.flatMap((print) => (print.readings.kind === "lab" ? [print.readings.viewing] : []));
  const lotViewings = viewingsOf(ofLot);
  if (lot?.bare.kind === "readings") lotViewings.push(lot.bare.viewing);
  const say = (code: string, usual: Viewing, count: number) => {
    const { illuminant, observer } = viewing;
    const values = {
      illuminant,
      observer,
      usualIlluminant: usual.illuminant,
      usualObserver: usual.observer,
      count,
    };
    found.push({ code, where: "readings.viewing", values });
  };
  const [lotViewing] = lotViewings;
  if (lotViewing !== undefined) {
    if (!lotViewings.some((one) => isSameViewing(one, viewing)))
      say("bench-viewing-unlike-lot", lotViewing, lotViewings.length);
    return found;
  }
  const shop = viewingsOf(records);
  const habit = shop.find(
    (one) => shop.filter((other) => isSameViewing(one, other)).length >= HABIT_FRACTION * shop.length,
  );
  if (shop.length >= FEWEST_FOR_HABIT && habit !== undefined && !isSameViewing(habit, viewing))
    say("bench-viewing-unusual", habit, shop.length);
  return found;
}

/** Other bare readings of the lot that compare with this one: same light, observer and geometry. */
function otherBares(readings: MeasuredReadings, under: Viewing, lot: GarmentLot, records: Records): Lab[] {
  const found: Lab[] = [];
  const { bare } = lot;
  if (bare.kind !== "hex" && bare.geometry === readings.geometry) {
    if (bare.kind === "spectrum")
      found.push(labFromReflectance(Float64Array.from(bare.reflectance), weightsFor(under)));
    else if (isSameViewing(bare.viewing, under)) found.push(meanLab(bare.readings));
  }
  for (const print of records.filter(isMeasured)) {
    if (print.garmentLotId !== lot.id || print.readings.geometry !== readings.geometry) continue;
    const means = readingMeans(print.readings, under);
    if (isSameViewing(means.viewing, under)) found.push(means.bare);
  }
  return found;
}

function bareCheck(
  readings: MeasuredReadings,
  means: ReturnType<typeof readingMeans>,
  lot: GarmentLot,
  records: Records,
): Problem[] {
  const others = otherBares(readings, means.viewing, lot, records);
  if (others.length === 0) return [];
  const lab = {
    L: median(others.map(({ L }) => L)),
    a: median(others.map(({ a }) => a)),
    b: median(others.map(({ b }) => b)),
  };
  const sd = isHeather(lot) ? PAIR_SD_HEATHER_L : PAIR_SD_SOLID_L;
  const own = sd ** 2 / 2 / means.pairCount + PIECE_SHADE_SD_L ** 2 / means.pieceCount;
  const theirs = (sd ** 2 / 2 + PIECE_SHADE_SD_L ** 2) / others.length;
  const { distance2 } = bareAgreement(means.bare, { lab, varianceL: own + theirs });
  if (distance2 <= LARGEST_BARE_DISTANCE2) return [];
  const values = {
    deltaE00: deltaE00(lab, means.bare),
    lotL: lab.L,
    lotA: lab.a,
    lotB: lab.b,
    count: others.length,
  };
  return [{ code: "bench-bare-unlike-lot", where: "readings", values }];
}

/** Pairs that are one reading typed twice, or whose change is not like that of the others. */
function pairChecks(readings: MeasuredReadings, viewing: Viewing, sd: number): Problem[] {
  const found: Problem[] = [];
  const changes = readings.pairs.map((_, i) => {
    const one = onePair(readings, i);
    const { bare, print } = readingMeans(one, viewing);
    return {
      deltaL: print.L - bare.L,
      isCopy: bare.L === print.L && bare.a === print.a && bare.b === print.b,
    };
  });
  for (const [i, { deltaL, isCopy }] of changes.entries()) {
    const where = `readings.pairs[${i}]`;
    if (isCopy) found.push({ code: "bench-pair-identical", where, values: { pair: i + 1 } });
    const rest = changes.filter((_, other) => other !== i).map((change) => change.deltaL);
    const usual = median(rest);
    if (rest.length >= 2 && !isCopy && Math.abs(deltaL - usual) > ODD_PAIR_SD * sd) {
      const isSwapped = Math.abs(-deltaL - usual) <= ODD_PAIR_SD * sd;
      const code = isSwapped ? "bench-pair-swapped" : "bench-pair-unlike-others";
      found.push({ code, where, values: { pair: i + 1, deltaL, usual } });
    }
  }
  return found;
}

/** The same readings with one pair alone. */
function onePair(readings: MeasuredReadings, index: number): MeasuredReadings {
  return readings.kind === "lab"
    ? { ...readings, pairs: readings.pairs.slice(index, index + 1), pairCount: 1 }
    : { ...readings, pairs: readings.pairs.slice(index, index + 1) };
}

/** What is odd about the readings of a draft, by eye or by instrument. */
export function benchReadingChecks(draft: BenchDraft, context: BenchContext): Problem[] {
  const { readings } = draft;
  if (readings === null) return [];
  const { library, viewing, supersedesId } = context;
  const isWhite = holdsWhite(draft, context);
  if (readings.kind === "by-eye") {
    if (readings.direction === "darker" || isWhite || readings.grade === 5) return [];
    return [{ code: "bench-print-lighter", where: "readings.direction" }];
  }
  if (readings.pairs.length === 0) return [];
  const lot = library.garmentLots.find((one) => one.id === draft.garmentLotId) ?? null;
  const records = standing(library.testPrints).filter((print) => print.id !== supersedesId);
  const means = readingMeans(readings, viewing);
  const sd = expectedPairSd(lot, means.sdPairDeltaL, means.pairCount);
  const halfWidth = lot !== null && isHeather(lot) ? WANTED_HEATHER_L : WANTED_SOLID_L;
  const found = conditionChecks(readings, lot, records);
  const deltaL = means.print.L - means.bare.L;
  if (!isWhite && deltaL > (Z_95 * sd) / Math.sqrt(means.pairCount))
    found.push({ code: "bench-print-lighter", where: "readings", values: { deltaL } });
  // Not by the pairs' own scatter: a pair that is far off would widen what it is held against.
  found.push(...pairChecks(readings, viewing, expectedPairSd(lot, null, 1)));
  if (lot !== null) found.push(...bareCheck(readings, means, lot, records));
  const needed = pairCountFor(sd, halfWidth, Z_95);
  if (means.pairCount < needed) {
    const values = { pairCount: means.pairCount, needed, sd, halfWidth };
    found.push({ code: "bench-few-reads", where: "readings", values });
  }
  return found;
}
