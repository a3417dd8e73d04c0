/** Verdicts in words where the money or the evidence is not what a reader would take it for. */
import { describe, expect, it } from "vitest";
import {
  type ShownVerdict,
  verdictDetail,
  verdictReasonSentence,
  verdictShort,
  verdictSummary,
  verdictWord,
} from "../../../src/planner/words/verdictSentences.ts";

const plain = (words: string | null) => words?.replaceAll("\u00a0", " ");
const chance = (chanceInBand: number, expectedLoss: number) =>
  ({ code: "chance", chanceInBand, expectedLoss }) as const;

const UNTESTED: ShownVerdict = {
  verdict: "run-on-evidence",
  reasons: [chance(0.53, 341), { code: "test-only-advised" }],
  testOf: null,
};
const PRINTED: ShownVerdict = {
  verdict: "run-on-evidence",
  reasons: [chance(0.99, 0.36), { code: "printed-on-this-lot" }],
  testOf: null,
};
const UNPRICED: ShownVerdict = {
  verdict: "print-a-test",
  reasons: [
    { code: "rule-asks-for-test" },
    { code: "test-does-not-pay", atMost: { riskRemoved: 0, cost: 0 } },
    chance(0.7, 0),
  ],
  testOf: null,
};

describe("a line that runs", () => {
  it("runs on evidence only where a print on its lot is on record", () => {
    expect(verdictWord(PRINTED)).toBe("Run on evidence");
    expect(verdictWord(UNTESTED)).toBe("Run, no test asked for");
    expect(plain(verdictSummary([PRINTED, UNTESTED], "EUR"))).toBe(
      "By evidence and money: 1 to run on evidence; 1 to run, no test asked for.",
    );
  });
});

describe("a line whose miss costs nothing by what is entered", () => {
  it("says so, and never that a test is not worth its price", () => {
    expect(verdictDetail(UNPRICED, "EUR")).toBe("a rule asks for it; what a miss costs is not entered");
    const reasons = UNPRICED.reasons.map((reason) => plain(verdictReasonSentence(reason, "EUR", true)));
    expect(reasons.join(" ")).not.toMatch(/worth its price|expected loss/);
    expect(reasons.join(" ")).toContain("no test can be weighed: enter the prices below");
  });

  it("gives its chance alone where it runs", () => {
    const runs: ShownVerdict = { ...UNTESTED, reasons: [chance(0.7, 0)] };
    expect(plain(verdictDetail(runs, "EUR"))).toBe("70 % in band, what a miss costs is not entered");
    expect(plain(verdictShort(runs, "EUR"))).toBe("70 %");
  });

  it("is not taken for a line that cannot miss", () => {
    const sure: ShownVerdict = { ...PRINTED, reasons: [chance(1, 0)] };
    expect(plain(verdictDetail(sure, "EUR"))).toBe("100 % in band, expected loss 0 EUR");
  });
});

describe("a test of another print than the chosen one", () => {
  it("is named", () => {
    const other: ShownVerdict = {
      verdict: "print-a-test",
      reasons: [{ code: "test-pays", riskRemoved: 71, cost: 25 }, chance(0.3, 900)],
      testOf: "Matt clear, 90-48, one stroke",
    };
    expect(plain(verdictDetail(other, "EUR"))).toBe(
      "of Matt clear, 90-48, one stroke; skipping it costs 71 EUR in expectation, the test 25 EUR",
    );
  });
});
