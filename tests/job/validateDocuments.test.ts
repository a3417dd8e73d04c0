/** References and ids that a schema cannot check. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { validateDocuments } from "../../src/job/validateDocuments.ts";
import { exampleDocuments, exampleEntry, exampleId, exampleTestPrint, ids } from "./exampleDocuments.ts";
import {
  exampleApproval,
  exampleDilution,
  exampleGoodsInCheck,
  exampleMaster,
  examplePot,
  examplePotEntry,
  examplePressEntry,
  exampleSlipAnswer,
} from "./exampleRecords.ts";

const NOWHERE = exampleId(999);

/** The example with one of everything that refers to something. */
function fullDocuments(): Documents {
  const { job, library } = structuredClone(exampleDocuments());
  const print = exampleTestPrint(1);
  job.places[0]!.lineIds = [ids.line, ids.otherLine];
  job.choices.push({ lineId: ids.line, placeId: ids.place, candidateId: ids.candidate });
  job.checklist.push(exampleEntry(1), exampleEntry(2));
  const actualGrams = [{ itemId: ids.clear, grams: 100 }];
  library.testPrints.push(print, exampleTestPrint(2, { actualGrams, supersedesId: print.id }));
  const approval = exampleApproval(1);
  library.approvals.push(approval, exampleApproval(2, { supersedesId: approval.id }));
  const check = exampleGoodsInCheck(1);
  library.goodsInChecks.push(check, exampleGoodsInCheck(2, { supersedesId: check.id }));
  library.slipAnswers.push(exampleSlipAnswer(1));
  const dilution = exampleDilution(1);
  library.dilutions.push(dilution, exampleDilution(2, { supersedesId: dilution.id }));
  library.shelf.masters.push(exampleMaster(1, { dilutionId: dilution.id }));
  const pot = examplePot(1);
  library.pots.push(pot, examplePot(2, { supersedesId: pot.id }));
  const entry = examplePotEntry(1);
  library.potEntries.push(
    entry,
    examplePotEntry(2, { supersedesId: entry.id }),
    examplePotEntry(3, { potId: dilution.id }),
  );
  const firstOff = examplePressEntry(1, { kind: "first-off", testPrintId: print.id });
  job.pressLog.push(firstOff, examplePressEntry(2, { supersedesId: firstOff.id }));
  // As text and back, so that nothing is shared between the examples: the tests write into them.
  return JSON.parse(JSON.stringify({ job, library }));
}

/** The documents with `value` written where `path` leads: job.lines[1].id. */
function withValueAt(documents: Documents, path: string, value: unknown): Documents {
  const keys = path.split(/[.[\]]+/).filter((key) => key !== "");
  const last = keys.pop()!;
  let at = documents as unknown as Record<string, unknown>;
  for (const key of keys) at = at[key] as Record<string, unknown>;
  if (!Object.hasOwn(at, last)) throw new RangeError(`path must lead to a field; got ${path}`);
  at[last] = value;
  return documents;
}

describe("documents", () => {
  it("that hold together have no problem", () => {
    expect(validateDocuments(fullDocuments())).toEqual([]);
  });

  it("may have a checklist that names a line and a place that are gone: it is a ledger", () => {
    const documents = withValueAt(fullDocuments(), "job.checklist[0].lineId", NOWHERE);
    expect(validateDocuments(withValueAt(documents, "job.checklist[0].placeId", NOWHERE))).toEqual([]);
  });

  it("may have a press log that names a line and a place that are gone: it is a ledger too", () => {
    const documents = withValueAt(fullDocuments(), "job.pressLog[0].lineId", NOWHERE);
    expect(validateDocuments(withValueAt(documents, "job.pressLog[0].placeId", NOWHERE))).toEqual([]);
  });

  it.each([
    "job.pressLog[0].testPrintId",
    "job.pressLog[1].supersedesId",
    "job.lines[1].garmentLotId",
    "job.lines[0].substitutedForLotId",
    "job.mixes[1].recipe[1].itemId",
    "job.places[0].candidates[1].mixId",
    "job.places[0].candidates[0].setUpId",
    "job.places[0].lineIds[1]",
    "job.choices[0].candidateId",
    "job.choices[0].placeId",
    "library.shelf.setUps[0].meshId",
    "library.shelf.setUps[1].squeegeeId",
    "library.shelf.masters[0].baseId",
    "library.shelf.masters[0].colourantId",
    "library.testPrints[0].garmentLotId",
    "library.testPrints[0].setUpId",
    "library.testPrints[0].recipe[0].itemId",
    "library.testPrints[1].actualGrams[0].itemId",
    "library.testPrints[1].supersedesId",
    "library.approvals[0].garmentLotId",
    "library.approvals[0].testPrintId",
    "library.approvals[1].supersedesId",
    "library.shelf.masters[0].dilutionId",
    "library.goodsInChecks[0].approvedLotId",
    "library.goodsInChecks[0].arrivingLotId",
    "library.goodsInChecks[0].baseId",
    "library.goodsInChecks[1].supersedesId",
    "library.slipAnswers[0].testPrintId",
    "library.pots[0].recipe[1].itemId",
    "library.pots[0].lines[1].contents[0].itemId",
    "library.pots[0].baseLots[0].itemId",
    "library.pots[1].supersedesId",
    "library.dilutions[0].colourantId",
    "library.dilutions[0].baseId",
    "library.dilutions[0].lines[1].contents[0].itemId",
    "library.dilutions[1].supersedesId",
    "library.potEntries[0].potId",
    "library.potEntries[0].lineId",
    "library.potEntries[1].supersedesId",
  ])("are found to lead nowhere at %s", (where) => {
    expect(validateDocuments(withValueAt(fullDocuments(), where, NOWHERE))).toEqual([
      { code: "missing-reference", where, detail: NOWHERE },
    ]);
  });

  it("are found to choose for a line that is gone, which is printed nowhere either", () => {
    const documents = withValueAt(fullDocuments(), "job.choices[0].lineId", NOWHERE);
    expect(validateDocuments(documents).map(({ code, where }) => [code, where])).toEqual([
      ["missing-reference", "job.choices[0].lineId"],
      ["choice-not-printed", "job.choices[0]"],
    ]);
  });

  it.each([
    ["job.checklist[1].id", exampleEntry(1).id],
    ["job.pressLog[1].id", examplePressEntry(1).id],
    ["library.approvals[1].id", exampleApproval(1).id],
    ["library.pots[1].id", examplePot(1).id],
    ["library.dilutions[1].id", examplePot(2).id],
    ["library.potEntries[1].id", examplePotEntry(1).id],
    ["library.shelf.colourants[2].id", ids.clear],
    ["job.places[0].candidates[1].id", ids.candidate],
  ])("are found to repeat an id at %s", (where, id) => {
    expect(validateDocuments(withValueAt(fullDocuments(), where, id))).toContainEqual({
      code: "repeated-id",
      where,
      detail: id,
    });
  });

  it("are found to repeat a candidate's id at another place", () => {
    const documents = fullDocuments();
    const [place] = documents.job.places;
    documents.job.places.push({ ...place!, id: exampleId(901), candidates: [place!.candidates[0]!] });
    expect(validateDocuments(documents)).toEqual([
      { code: "repeated-id", where: "job.places[1].candidates[0].id", detail: ids.candidate },
    ]);
  });

  it("are found to choose twice for one line at one place", () => {
    const documents = fullDocuments();
    documents.job.choices.push({ lineId: ids.line, placeId: ids.place, candidateId: ids.otherCandidate });
    expect(validateDocuments(documents)).toEqual([{ code: "repeated-choice", where: "job.choices[1]" }]);
  });

  it("are found to choose for a line that is not printed there", () => {
    const documents = withValueAt(fullDocuments(), "job.places[0].lineIds", [ids.otherLine]);
    expect(validateDocuments(documents)).toEqual([{ code: "choice-not-printed", where: "job.choices[0]" }]);
  });
});
