// The verdict of a line from its documents: choice, rules, signatures, approved lot, money and records all reach it.
import { describe, expect, it } from "vitest";
import type { ChecklistPrediction } from "../../../src/core/planning/checklistFacts.ts";
import { checklistSubject, lotOfSubject } from "../../../src/job/checklistSubject.ts";
import { lineLoss } from "../../../src/job/decisions/lineMoney.ts";
import { type VerdictKnowledge, verdictOfLine } from "../../../src/job/decisions/verdictOfLine.ts";
import type { Documents } from "../../../src/job/documents.ts";
import { chooseCandidate } from "../../../src/job/edits/choices.ts";
import { changeLine } from "../../../src/job/edits/lines.ts";
import { exampleDocuments, exampleTestPrint, ids } from "../exampleDocuments.ts";

const NARROW: ChecklistPrediction = {
  deltaL: -4,
  deltaL5: -5,
  deltaL95: -3,
  chanceInBand: 0.9,
  warnings: [],
};
const WIDE = { ...NARROW, deltaL5: -9, deltaL95: -2 };
const KNOWN: VerdictKnowledge = {
  plan: { planned: null, bestLeft: null },
  bestChance: 0.9,
  prediction: NARROW,
  signed: new Set(),
};

function chosen(): Documents {
  return chooseCandidate(exampleDocuments(), {
    lineId: ids.line,
    placeId: ids.place,
    candidateId: ids.otherCandidate,
  });
}

function printed(documents = chosen()): Documents {
  const { recipe } = documents.job.mixes[1]!;
  return {
    ...documents,
    library: { ...documents.library, testPrints: [exampleTestPrint(1, { recipe })] },
  };
}

function verdictOf(documents: Documents, known: Partial<VerdictKnowledge> = {}) {
  const [line] = documents.job.lines;
  const [place] = documents.job.places;
  return verdictOfLine(documents, line!, place!, { ...KNOWN, ...known });
}
const codes = (found: ReturnType<typeof verdictOf>) => found?.reasons.map(({ code }) => code);

describe("verdictOfLine", () => {
  it("runs a printed line on its evidence, with the loss that the line's money gives", () => {
    const documents = printed();
    const { expectedLoss } = lineLoss(documents, documents.job.lines[0]!, 0.9);
    expect(verdictOf(documents)).toEqual({
      verdict: "run-on-evidence",
      reasons: [{ code: "chance", chanceInBand: 0.9, expectedLoss }, { code: "printed-on-this-lot" }],
    });
  });

  it("asks for a mix where none is chosen, whatever was predicted", () => {
    expect(verdictOf(exampleDocuments())?.verdict).toBe("choose-a-mix");
  });

  it("asks for a test where the spread is wider than the tolerance, until that is signed or the print is on record", () => {
    expect(codes(verdictOf(chosen(), { prediction: WIDE }))?.[0]).toBe("rule-asks-for-test");
    const signed = new Set(["test-print"]);
    expect(verdictOf(chosen(), { prediction: WIDE, signed })?.verdict).toBe("run-on-evidence");
    expect(verdictOf(printed(), { prediction: WIDE })?.verdict).toBe("run-on-evidence");
  });

  it("only advises a test of few pieces of an untested dyed polyester, and asks for one above the shop's limit", () => {
    expect(codes(verdictOf(chosen()))).toContain("test-only-advised");
    const many = changeLine(chosen(), ids.line, { quantities: [{ size: "M", count: 145 }] });
    expect(verdictOf(many)?.verdict).toBe("print-a-test");
  });

  it("asks for the goods-in check of a substituted lot until it is signed", () => {
    const substituted = changeLine(printed(), ids.line, { substitutedForLotId: ids.otherLot });
    expect(verdictOf(substituted)?.verdict).toBe("goods-in-check");
    expect(verdictOf(substituted, { signed: new Set(["goods-in"]) })?.verdict).toBe("run-on-evidence");
  });

  it("says nothing before the prediction is there", () => {
    expect(verdictOf(printed(), { prediction: null })).toBeNull();
  });
});

describe("lotOfSubject", () => {
  it("reads the lot back from what a signature was given for, chosen or not", () => {
    expect(lotOfSubject(checklistSubject(chosen(), ids.line, ids.place))).toBe(ids.lot);
    expect(lotOfSubject(checklistSubject(exampleDocuments(), ids.otherLine, ids.place))).toBe(ids.otherLot);
    expect(lotOfSubject("subject")).toBeNull();
  });
});
