/** The readings of one physical print in the order they were made: how it moved as it rested, and as it was washed. */
import { isSameViewing, type Viewing } from "../../core/colorimetry/viewing.ts";
import { printKeyOf } from "../evidenceInputs.ts";
import { type ReadingMeans, readingMeans } from "../readingMeans.ts";
import type { TestPrint } from "../recordDocument.ts";
import { standing } from "../standing.ts";

const MS_PER_HOUR = 3_600_000;

export interface SeriesReading {
  readonly record: TestPrint;
  /** Hours from printing to reading. */
  readonly restHours: number;
  /** Null for a print judged by eye. */
  readonly means: ReadingMeans | null;
  /** Change of L*, bare to print; null by eye. */
  readonly deltaL: number | null;
  /** What the change of L* moved by since the first comparable reading; null where there is none before, or it is that. */
  readonly sinceFirst: number | null;
  /** Hours between that first reading and this one. */
  readonly hoursSinceFirst: number | null;
}

export interface PrintSeries {
  readonly key: string;
  /** The first record of the print; it names the print. */
  readonly first: TestPrint;
  /** Not washed, by the time of reading. */
  readonly resting: readonly SeriesReading[];
  /** After washes, by their count. */
  readonly washed: readonly SeriesReading[];
}

const isComparable = (one: ReadingMeans | null, other: ReadingMeans | null): boolean =>
  one !== null && other !== null && isSameViewing(one.viewing, other.viewing);

const geometryOf = ({ readings }: TestPrint) => (readings.kind === "by-eye" ? null : readings.geometry);

function reading(record: TestPrint, viewing: Viewing, before: readonly SeriesReading[]): SeriesReading {
  const means = record.readings.kind === "by-eye" ? null : readingMeans(record.readings, viewing);
  const deltaL = means === null ? null : means.print.L - means.bare.L;
  const first = before.find(
    (one) => isComparable(one.means, means) && geometryOf(one.record) === geometryOf(record),
  );
  const restHours = (Date.parse(record.readAt) - Date.parse(record.printedAt)) / MS_PER_HOUR;
  return {
    record,
    restHours,
    means,
    deltaL,
    sinceFirst: first === undefined || deltaL === null ? null : deltaL - (first.deltaL ?? Number.NaN),
    hoursSinceFirst: first === undefined ? null : restHours - first.restHours,
  };
}

/** The standing readings of every print that was read, prints in the order they came into the book. */
export function printSeries(prints: readonly TestPrint[], viewing: Viewing): PrintSeries[] {
  const byKey = new Map<string, TestPrint[]>();
  for (const print of standing(prints)) {
    const key = printKeyOf(print);
    byKey.set(key, [...(byKey.get(key) ?? []), print]);
  }
  return [...byKey].map(([key, records]) => {
    const byTime = records.toSorted((one, other) => Date.parse(one.readAt) - Date.parse(other.readAt));
    const resting: SeriesReading[] = [];
    const washed: SeriesReading[] = [];
    for (const record of byTime.filter(({ washCount }) => washCount === 0))
      resting.push(reading(record, viewing, resting));
    for (const record of byTime.filter(({ washCount }) => washCount > 0))
      washed.push(reading(record, viewing, resting.length > 0 ? resting.slice(-1) : washed));
    washed.sort((one, other) => one.record.washCount - other.record.washCount);
    return { key, first: byTime[0]!, resting, washed };
  });
}

/** The series that a record belongs to; null for a superseded one. */
export function seriesOf(series: readonly PrintSeries[], recordId: string): PrintSeries | null {
  return (
    series.find(({ resting, washed }) =>
      [...resting, ...washed].some(({ record }) => record.id === recordId),
    ) ?? null
  );
}
