/** One print read several times: drift since the first reading that compares, washes, and what is never compared. */
import { describe, expect, it } from "vitest";
import { lotReadings } from "../../../src/job/recordBook/lotReadings.ts";
import { printSeries, seriesOf } from "../../../src/job/recordBook/printSeries.ts";
import type { TestPrint } from "../../../src/job/recordDocument.ts";
import { exampleDocuments, exampleTestPrint, ids } from "../exampleDocuments.ts";

const VIEWING = { illuminant: "D65", observer: "10deg" } as const;
const PRINTED = "2026-02-01T08:00:00Z";

/** The example print, read `hours` after printing and then `darker` by so much L*. */
function read(number: number, hours: number, darker: number, change: Partial<TestPrint> = {}): TestPrint {
  const day = String(1 + Math.floor((8 + hours) / 24)).padStart(2, "0");
  const hour = String((8 + hours) % 24).padStart(2, "0");
  const print = exampleTestPrint(number);
  if (print.readings.kind !== "lab") throw new Error("the example is read by an instrument");
  const pairs = [{ bare: { L: 30, a: -15, b: 6 }, print: { L: 30 - darker, a: -14, b: 5 } }];
  return {
    ...print,
    printedAt: PRINTED,
    readAt: `2026-02-${day}T${hour}:00:00Z`,
    readings: { ...print.readings, pairs },
    ...change,
  };
}

describe("the readings of one print", () => {
  it("are one series by the hour of reading, with the drift since the first", () => {
    const prints = [read(3, 72, 4.9), read(1, 1, 4), read(2, 24, 4.5)];
    const [series, ...others] = printSeries(prints, VIEWING);
    expect(others).toEqual([]);
    expect(series?.resting.map(({ restHours }) => restHours)).toEqual([1, 24, 72]);
    expect(series?.resting.map(({ sinceFirst }) => sinceFirst && Number(sinceFirst.toFixed(3)))).toEqual([
      null,
      -0.5,
      -0.9,
    ]);
    expect(series?.first.id).toBe(prints[1]?.id);
    expect(seriesOf([series!], prints[0]!.id)).toBe(series);
  });

  it("after washes are held against the last unwashed reading", () => {
    const prints = [read(1, 1, 4), read(2, 24, 4.4), read(3, 200, 3.9, { washCount: 5 })];
    const [series] = printSeries(prints, VIEWING);
    expect(series?.resting).toHaveLength(2);
    expect(series?.washed[0]?.sinceFirst).toBeCloseTo(0.5, 9);
  });

  it("under another light or geometry, or by eye, are not compared with the others", () => {
    const lab = read(1, 1, 4).readings as Extract<TestPrint["readings"], { kind: "lab" }>;
    const prints = [
      read(1, 1, 4),
      read(2, 24, 5, { readings: { ...lab, viewing: { illuminant: "D50", observer: "2deg" } } }),
      read(3, 48, 5, { readings: { ...lab, geometry: "specular-included" } }),
      read(4, 60, 5, {
        readings: { kind: "by-eye", grade: 3, direction: "darker", light: "D65", observerCount: 1 },
      }),
      read(5, 72, 4.3),
    ];
    const [series] = printSeries(prints, VIEWING);
    expect(series?.resting.map(({ sinceFirst }) => sinceFirst === null)).toEqual([
      true,
      true,
      true,
      true,
      false,
    ]);
    expect(series?.resting.at(-1)?.sinceFirst).toBeCloseTo(-0.3, 9);
  });

  it("leave out what a later record corrects, and are apart from another print", () => {
    const prints = [
      read(1, 1, 4),
      read(2, 1, 4.2, { supersedesId: exampleTestPrint(1).id }),
      read(3, 1, 3, { setUpId: ids.otherSetUp }),
    ];
    const series = printSeries(prints, VIEWING);
    expect(series.map(({ resting }) => resting.map(({ record }) => record.id))).toEqual([
      [prints[1]!.id],
      [prints[2]!.id],
    ]);
    expect(seriesOf(series, prints[0]!.id)).toBeNull();
  });
});

describe("the points beside a garment's curve", () => {
  const library = (testPrints: TestPrint[]) => ({ ...exampleDocuments().library, testPrints });
  const clear = [{ itemId: ids.clear, massFraction: 1 }];
  const tinted = [
    { itemId: ids.clear, massFraction: 0.995 },
    { itemId: ids.black, massFraction: 0.005 },
  ];
  const asked = { recipe: clear, setUpId: ids.setUp, tintId: ids.black };

  it("are the latest reading of each print with this base and set-up, at its tint", () => {
    const prints = [read(1, 1, 4), read(2, 72, 4.9), read(3, 1, 7, { recipe: tinted })];
    const { points, otherCount } = lotReadings(library(prints), ids.lot, asked, VIEWING);
    expect(points.map(({ massFraction, deltaL }) => [massFraction, Number(deltaL.toFixed(3))])).toEqual([
      [0, -4.9],
      [0.005, -7],
    ]);
    expect(otherCount).toBe(0);
  });

  it("are at what was poured, and count what is not drawn", () => {
    const actualGrams = [
      { itemId: ids.clear, grams: 99 },
      { itemId: ids.black, grams: 1 },
    ];
    const prints = [
      read(1, 1, 7, { recipe: tinted, actualGrams }),
      read(2, 1, 4, { setUpId: ids.otherSetUp }),
      read(3, 1, 4, { garmentLotId: ids.otherLot }),
    ];
    const { points, otherCount } = lotReadings(library(prints), ids.lot, asked, VIEWING);
    expect(points.map(({ massFraction }) => massFraction)).toEqual([0.01]);
    expect(otherCount).toBe(1);
  });
});
