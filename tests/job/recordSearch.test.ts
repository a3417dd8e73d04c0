/** The record book is searched by words. */
import { describe, expect, it } from "vitest";
import { recordIndex, searchRecords } from "../../src/job/recordSearch.ts";
import { exampleDocuments, exampleTestPrint, ids } from "./exampleDocuments.ts";

function book() {
  const { library } = exampleDocuments();
  const first = exampleTestPrint(1, { printedAt: "2026-02-17T09:30:00Z", note: "Wärmer als gedacht" });
  const corrected = exampleTestPrint(2, { printedAt: "2026-02-18T09:30:00Z", operator: "B. Presser" });
  const correction = exampleTestPrint(3, { printedAt: "2026-02-18T09:30:00Z", supersedesId: corrected.id });
  const black = exampleTestPrint(4, {
    printedAt: "2026-02-01T09:30:00Z",
    garmentLotId: ids.otherLot,
    recipe: [
      { itemId: ids.clear, massFraction: 0.995 },
      { itemId: ids.black, massFraction: 0.005 },
    ],
    verdict: "rejected",
    washCount: 5,
  });
  const index = recordIndex({ ...library, testPrints: [first, corrected, correction, black] });
  const names = new Map([first, corrected, correction, black].map((print, i) => [print.id, i + 1]));
  return (text: string, garmentLotId: string | null = null, withSuperseded = false) =>
    searchRecords(index, { text, garmentLotId, withSuperseded }).map(({ print }) => names.get(print.id));
}

describe("the record book", () => {
  const find = book();

  it("shows standing records, newest first, corrected ones only where wanted", () => {
    expect(find("")).toEqual([3, 1, 4]);
    expect(find("", null, true)).toEqual([3, 2, 1, 4]);
  });

  it("finds all words anywhere in a record, whatever their case and accents", () => {
    expect(find("forest b-7")).toEqual([4]);
    expect(find("BLACK reject")).toEqual([4]);
    expect(find("waermer")).toEqual([]);
    expect(find("warmer gedacht")).toEqual([1]);
    expect(find("2026-02-18")).toEqual([3]);
    expect(find("presser", null, true)).toEqual([2]);
    expect(find("washed")).toEqual([4]);
    expect(find("61-64")).toEqual([3, 1, 4]);
    expect(find("nothing like it")).toEqual([]);
  });

  it("keeps to one lot where asked", () => {
    expect(find("", ids.otherLot)).toEqual([4]);
    expect(find("black", ids.lot)).toEqual([]);
  });
});
