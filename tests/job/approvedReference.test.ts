/** Which print a lot is held against, and the band that follows it. */
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import { approvedReference, lineBand, referenceChange } from "../../src/job/approvedReference.ts";
import type { Documents } from "../../src/job/documents.ts";
import type { Library } from "../../src/job/libraryDocument.ts";
import type { Readings } from "../../src/job/recordDocument.ts";
import { exampleDocuments, exampleTestPrint, ids } from "./exampleDocuments.ts";
import { exampleApproval } from "./exampleRecords.ts";

const first = exampleTestPrint(1);
const second = exampleTestPrint(2);
const withRecords = (records: Partial<Library>): Documents => {
  const { job, library } = exampleDocuments();
  return { job, library: { ...library, ...records } };
};
const referenceOf = (records: Partial<Library>) => approvedReference(withRecords(records).library, ids.lot);

describe("the approved reference of a lot", () => {
  it("is none without an approval and without a print that was kept", () => {
    expect(referenceOf({ testPrints: [first] })).toBeNull();
  });

  it("is the print of the latest standing approval", () => {
    const approvals = [exampleApproval(1), exampleApproval(2, { testPrintId: second.id })];
    const found = referenceOf({ testPrints: [first, second], approvals });
    expect(found).toEqual({ lotId: ids.lot, testPrint: second, approval: approvals[1] });
    const withdrawn = exampleApproval(3, { testPrintId: first.id, supersedesId: approvals[1]!.id });
    expect(
      referenceOf({ testPrints: [first, second], approvals: [...approvals, withdrawn] })?.testPrint,
    ).toBe(first);
  });

  it("is the print as it was corrected since, however often", () => {
    const corrected = exampleTestPrint(3, { supersedesId: first.id, note: "typed anew" });
    const again = exampleTestPrint(4, { supersedesId: corrected.id });
    const testPrints = [first, second, corrected, again];
    expect(referenceOf({ testPrints, approvals: [exampleApproval(1)] })?.testPrint).toBe(again);
  });

  it("is, where nobody approved one, the latest print kept as reference that was not washed", () => {
    const kept = exampleTestPrint(3, { verdict: "reference" });
    const washed = exampleTestPrint(4, { verdict: "reference", washCount: 1 });
    const elsewhere = exampleTestPrint(5, { verdict: "reference", garmentLotId: ids.otherLot });
    const rejected = exampleTestPrint(6, { verdict: "rejected" });
    expect(referenceOf({ testPrints: [first, kept, washed, elsewhere, rejected] })).toEqual({
      lotId: ids.lot,
      testPrint: kept,
      approval: null,
    });
    const taken = exampleTestPrint(7, { supersedesId: kept.id, verdict: "none" });
    expect(referenceOf({ testPrints: [first, kept, taken] })).toBeNull();
  });
});

describe("the change of the reference", () => {
  const reference = (readings: Readings) => ({
    lotId: ids.lot,
    testPrint: exampleTestPrint(1, { readings }),
    approval: null,
  });
  const d65 = { illuminant: "D65", observer: "10deg" } as const;

  it("is that of its mean pair, under the light it was read in and no other", () => {
    expect(referenceChange(reference(first.readings), d65)).toMatchObject({ ok: true, deltaL: -3 });
    const d50 = { illuminant: "D50", observer: "2deg" } as const;
    expect(referenceChange(reference(first.readings), d50)).toEqual({ ok: false, reason: "other-light" });
  });

  it("is none by eye", () => {
    const eye: Readings = { kind: "by-eye", grade: 3, direction: "darker", light: "D65", observerCount: 1 };
    expect(referenceChange(reference(eye), d65)).toEqual({ ok: false, reason: "by-eye" });
  });
});

describe("the band of a line", () => {
  const approved = withRecords({ testPrints: [first], approvals: [exampleApproval(1)] });
  const band = (documents: Documents, lineIndex = 0) =>
    lineBand(documents, documents.job.lines[lineIndex]!, documents.job.places[0]!);

  it("is the place's where no print is approved", () => {
    expect(band(exampleDocuments())).toEqual({
      band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
      follows: null,
      notFollowed: null,
    });
  });

  it("follows the approved print of its own lot and of the lot it stands in for, with the place's tolerance", () => {
    const followed = { deltaL: -3, tolerance: 1.5, hueLimit: 2 };
    expect(band(approved).band).toEqual(followed);
    expect(band(approved, 1).follows).toBeNull();
    const lines = approved.job.lines.map((line) => ({ ...line, substitutedForLotId: ids.lot }));
    const substituted = { ...approved, job: { ...approved.job, lines } };
    expect(band(substituted, 1)).toMatchObject({ band: followed, follows: { lotId: ids.lot } });
  });

  it("does not follow a print that goes the other way, or one in another light, and says so", () => {
    const places = approved.job.places.map((place) => ({ ...place, band: { ...place.band, deltaL: 20 } }));
    const white = { ...approved, job: { ...approved.job, places } };
    expect(band(white)).toMatchObject({
      band: { deltaL: 20 },
      follows: null,
      notFollowed: "other-direction",
    });
    const viewing = { illuminant: "A", observer: "10deg" } as const;
    const other = { ...approved, job: { ...approved.job, viewing } };
    expect(band(other)).toMatchObject({ band: { deltaL: -4 }, notFollowed: "other-light" });
  });

  it("of the demo's substituted forest shirt follows the approved one: about 3.1 darker, give or take 1.5", () => {
    const { job, library } = demoDocuments();
    const line = job.lines[3]!;
    const found = lineBand({ job, library }, line, job.places[0]!);
    expect(found.follows?.lotId).toBe(line.substitutedForLotId);
    expect(found.band.deltaL).toBeCloseTo(-3.1, 0);
    expect(found.band.tolerance).toBe(1.5);
  });
});
