// The verdict before a run: every rule by itself, what comes before what, and what is not said before it is known.
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineVerdict, type VerdictFacts } from "../../../../src/core/planning/decisions/lineVerdict.ts";
import { LEAST_CHANCE } from "../../../../src/core/planning/runChecklist.ts";

const WORTH = { riskRemoved: 1186, cost: 25 };
const NOT_WORTH = { riskRemoved: 9, cost: 25 };

/** A line that nothing is asked of. */
const CALM: VerdictFacts = {
  choice: "made",
  testItem: { asked: "none", signed: false },
  goodsInOpen: false,
  plan: { planned: null, bestLeft: NOT_WORTH },
  outlook: { chanceInBand: 0.94, expectedLoss: 40 },
  bestChance: 0.94,
  printedOnThisLot: false,
};
const planned = (ofChosenPrint = true) => ({
  planned: { ...WORTH, ofChosenPrint },
  bestLeft: NOT_WORTH,
});
const verdictOf = (part: Partial<VerdictFacts>) => lineVerdict({ ...CALM, ...part });
const codesOf = (part: Partial<VerdictFacts>) => verdictOf(part)?.reasons.map(({ code }) => code);

describe("lineVerdict", () => {
  it("lets a line run on evidence where no rule and no money asks for more, with chance and loss", () => {
    expect(verdictOf({})).toEqual({
      verdict: "run-on-evidence",
      reasons: [{ code: "chance", chanceInBand: 0.94, expectedLoss: 40 }],
    });
    expect(codesOf({ printedOnThisLot: true })).toEqual(["chance", "printed-on-this-lot"]);
  });

  it("names a mix of the matrix that is clearly better, and none that is hardly so", () => {
    const outlook = { chanceInBand: 0.55, expectedLoss: 700 };
    expect(verdictOf({ outlook, bestChance: 0.81 })).toEqual({
      verdict: "run-on-evidence",
      reasons: [
        { code: "chance", ...outlook },
        { code: "better-in-matrix", bestChance: 0.81 },
      ],
    });
    expect(codesOf({ outlook, bestChance: 0.6 })).toEqual(["chance"]);
    expect(codesOf({ outlook, bestChance: null })).toEqual(["chance"]);
  });

  it("asks for a test that the plan wants though no rule does, with what skipping it costs", () => {
    const found = verdictOf({ plan: planned() });
    expect(found?.verdict).toBe("print-a-test");
    expect(found?.reasons[0]).toEqual({ code: "test-pays", ...WORTH });
    expect(found?.reasons.map(({ code }) => code)).not.toContain("rule-asks-for-test");
  });

  it("asks for a test that a blocking rule wants though it is not worth its price, and says what it is worth", () => {
    const found = verdictOf({ testItem: { asked: "blocking", signed: false } });
    expect(found?.verdict).toBe("print-a-test");
    expect(found?.reasons.slice(0, 2)).toEqual([
      { code: "rule-asks-for-test" },
      { code: "test-does-not-pay", atMost: NOT_WORTH },
    ]);
  });

  it("does not say that a test is not worth its price where time or pieces keep it out of the plan", () => {
    for (const barredBy of ["time", "spare-pieces"] as const) {
      const found = verdictOf({
        testItem: { asked: "blocking", signed: false },
        plan: { planned: null, bestLeft: null, barredBy },
      });
      expect(found?.verdict).toBe("print-a-test");
      expect(found?.reasons.slice(0, 2)).toEqual([
        { code: "rule-asks-for-test" },
        { code: "test-not-possible", barredBy },
      ]);
    }
  });

  it("says money and rule where both ask, the money first", () => {
    const asked = { testItem: { asked: "blocking", signed: false }, plan: planned() } as const;
    expect(codesOf(asked)?.slice(0, 2)).toEqual(["test-pays", "rule-asks-for-test"]);
  });

  it("does not ask for a test that a rule only advises and the money does not want", () => {
    const found = verdictOf({ testItem: { asked: "advised", signed: false } });
    expect(found?.verdict).toBe("run-on-evidence");
    expect(found?.reasons.map(({ code }) => code)).toEqual([
      "chance",
      "test-only-advised",
      "test-does-not-pay",
    ]);
  });

  it("takes a signature for the test of the chosen print, and says where no record teaches it", () => {
    const signed = { testItem: { asked: "blocking", signed: true }, plan: planned() } as const;
    expect(verdictOf(signed)?.verdict).toBe("run-on-evidence");
    expect(codesOf(signed)).toContain("test-not-recorded");
    expect(codesOf({ ...signed, printedOnThisLot: true })).not.toContain("test-not-recorded");
  });

  it("does not take that signature for a test with another mix", () => {
    const signed = { testItem: { asked: "blocking", signed: true }, plan: planned(false) } as const;
    expect(verdictOf(signed)?.verdict).toBe("print-a-test");
    expect(codesOf(signed)).not.toContain("rule-asks-for-test");
  });

  it("asks for a goods-in check where the lot differs, after a test and before another mix", () => {
    expect(verdictOf({ goodsInOpen: true })?.verdict).toBe("goods-in-check");
    expect(codesOf({ goodsInOpen: true })?.[0]).toBe("lot-not-approved");
    const tested = { goodsInOpen: true, plan: planned() };
    expect(verdictOf(tested)?.verdict).toBe("print-a-test");
    expect(codesOf(tested)).toContain("lot-not-approved");
    const unlikely = { goodsInOpen: true, outlook: { chanceInBand: 0.2, expectedLoss: 900 } };
    expect(verdictOf(unlikely)?.verdict).toBe("goods-in-check");
    expect(codesOf(unlikely)).toContain("likelier-out-than-in");
  });

  it("sends a print that is likelier out of band than in to another mix, unless a test is worth making first", () => {
    const unlikely = { outlook: { chanceInBand: LEAST_CHANCE - 0.01, expectedLoss: 900 }, bestChance: 0.7 };
    expect(verdictOf(unlikely)).toEqual({
      verdict: "choose-a-mix",
      reasons: [
        { code: "likelier-out-than-in", bestChance: 0.7 },
        { code: "chance", chanceInBand: LEAST_CHANCE - 0.01, expectedLoss: 900 },
      ],
    });
    expect(verdictOf({ ...unlikely, plan: planned() })?.verdict).toBe("print-a-test");
    const even = { chanceInBand: LEAST_CHANCE, expectedLoss: 900 };
    expect(verdictOf({ outlook: even })?.verdict).toBe("run-on-evidence");
  });

  it("asks for a mix where none is chosen or the chosen one is refused, whatever else is asked", () => {
    const none = verdictOf({ choice: "none", outlook: null, bestChance: 0.6, plan: planned() });
    expect(none).toEqual({
      verdict: "choose-a-mix",
      reasons: [
        { code: "no-mix-chosen", bestChance: 0.6 },
        { code: "test-pays", ...WORTH },
      ],
    });
    const refused = verdictOf({ choice: "refused", outlook: null, goodsInOpen: true });
    expect(refused).toEqual({ verdict: "choose-a-mix", reasons: [{ code: "mix-refused" }] });
  });

  it("is silent until plan and prediction are known, save where a rule or the choice already tells", () => {
    expect(verdictOf({ plan: null })).toBeNull();
    expect(verdictOf({ outlook: null })).toBeNull();
    expect(verdictOf({ plan: null, goodsInOpen: true })).toBeNull();
    expect(verdictOf({ plan: null, choice: "none" })?.verdict).toBe("choose-a-mix");
    const blocking = { testItem: { asked: "blocking", signed: false }, plan: null, outlook: null } as const;
    expect(verdictOf(blocking)).toEqual({
      verdict: "print-a-test",
      reasons: [{ code: "rule-asks-for-test" }],
    });
  });

  const money = fc.double({ min: 0, max: 1e5, noNaN: true });
  const test25 = fc.record({ riskRemoved: money, cost: fc.constant(25) });
  const facts: fc.Arbitrary<VerdictFacts> = fc.record({
    choice: fc.constantFrom("none", "refused", "made"),
    testItem: fc.record({
      asked: fc.constantFrom("blocking", "advised", "none"),
      signed: fc.boolean(),
    }),
    goodsInOpen: fc.boolean(),
    plan: fc.option(
      fc.record({
        planned: fc.option(
          fc.tuple(test25, fc.boolean()).map(([each, ofChosenPrint]) => ({
            ...each,
            riskRemoved: each.riskRemoved + 25.01,
            ofChosenPrint,
          })),
        ),
        bestLeft: fc.option(test25),
      }),
    ),
    outlook: fc.option(
      fc.record({ chanceInBand: fc.double({ min: 0, max: 1, noNaN: true }), expectedLoss: money }),
    ),
    bestChance: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    printedOnThisLot: fc.boolean(),
  });

  it("never runs on evidence past an unsigned rule, an open lot or a low chance", () => {
    fc.assert(
      fc.property(facts, (some) => {
        const found = lineVerdict(some);
        if (found === null) return;
        expect(found.reasons.length).toBeGreaterThan(0);
        if (found.verdict !== "run-on-evidence") return;
        expect(some.choice).toBe("made");
        expect(some.testItem.asked === "blocking" && !some.testItem.signed).toBe(false);
        expect(some.goodsInOpen).toBe(false);
        expect(some.outlook?.chanceInBand).toBeGreaterThanOrEqual(LEAST_CHANCE);
        expect(some.plan).not.toBeNull();
      }),
    );
  });
});
