/** The rules of the checklist before a run: each has a case that it alone decides, and one just beyond its limit. */
import { describe, expect, it } from "vitest";
import { runChecklist } from "../../../src/core/planning/runChecklist.ts";
import { blocks, calm, clear, cotton, figuresOf, mix, reasonsOf, sure, untested } from "./calmFacts.ts";

describe("what is always asked", () => {
  it("is cure, wash test, first-off and retained sample, in that order, all blocking", () => {
    const items = runChecklist(calm);
    expect(items.map((item) => item.code)).toEqual(["cure", "wash-test", "first-off", "retained-sample"]);
    expect(items.every((item) => item.blocking && item.kind === "signature")).toBe(true);
  });

  it("has a reason for every item", () => {
    const items = runChecklist({
      ...calm,
      prints: untested,
      bleeds: true,
      heather: true,
      approvedLot: "other",
    });
    expect(items.map((item) => item.code)).toEqual([
      "test-print",
      "goods-in",
      "reads",
      "cure",
      "wash-test",
      "bleed-hold",
      "first-off",
      "retained-sample",
    ]);
    expect(items.every((item) => item.reasons.length > 0)).toBe(true);
  });
});

describe("the choice", () => {
  it.each([
    ["none", "no-mix-chosen"],
    ["refused", "mix-refused"],
  ] as const)("that is %s is the only item, and no signature settles it", (choice, reason) => {
    const items = runChecklist({ ...calm, choice, mix: choice === "none" ? null : mix, prediction: null });
    expect(items).toEqual([
      { code: "choose-mix", kind: "choice", blocking: true, reasons: [{ code: reason, figures: {} }] },
    ]);
  });

  it("that is made needs its mix", () => {
    expect(() => runChecklist({ ...calm, mix: null })).toThrow("mix must be given");
  });
});

describe("a test print", () => {
  it("is demanded of a dyed polyester that this lot never saw under this base, above the shop's limit", () => {
    const change = { prints: { ...untested, any: true }, pieceCount: 145 };
    expect(reasonsOf(change, "test-print")).toEqual(["dyed-polyester-untested"]);
    expect(blocks(change, "test-print")).toBe(true);
    expect(figuresOf(change, "dyed-polyester-untested")).toEqual({
      pieceCount: 145,
      testAboveCount: 144,
      printedOtherwise: 1,
    });
  });

  it("is only advised of it at the limit", () => {
    expect(blocks({ prints: untested, pieceCount: 144 }, "test-print")).toBe(false);
  });

  it("is not asked of undyed polyester or of cotton, nor where this base was printed on the lot", () => {
    const undyed = calm.fibres.map((part) => ({ ...part, dyed: part.fibre === "cotton" }));
    expect(reasonsOf({ prints: untested, fibres: undyed }, "test-print")).toEqual([]);
    expect(reasonsOf({ prints: untested, fibres: cotton }, "test-print")).toEqual([]);
    const withBase = { any: true, withThisBase: true, ofThisRecipe: false };
    expect(reasonsOf({ prints: withBase }, "test-print")).toEqual([]);
  });

  it("is demanded of a substituted lot in any quantity, until this base was printed on it", () => {
    const change = { substituted: true, prints: untested, fibres: cotton, pieceCount: 1 };
    expect(reasonsOf(change, "test-print")).toEqual(["substituted"]);
    expect(blocks(change, "test-print")).toBe(true);
    expect(reasonsOf({ substituted: true }, "test-print")).toEqual([]);
  });

  it("is demanded in any quantity where half the nine-in-ten width is beyond the tolerance", () => {
    const prints = { any: true, withThisBase: true, ofThisRecipe: false };
    const wide = { prints, pieceCount: 1, prediction: { ...sure, deltaL5: -6.2, deltaL95: -3 } };
    expect(reasonsOf(wide, "test-print")).toEqual(["spread-wider-than-tolerance"]);
    expect(blocks(wide, "test-print")).toBe(true);
    expect(figuresOf(wide, "spread-wider-than-tolerance")?.halfWidth).toBeCloseTo(1.6, 12);
    const narrow = { ...wide, prediction: { ...sure, deltaL5: -6, deltaL95: -3 } };
    expect(reasonsOf(narrow, "test-print")).toEqual([]);
  });

  it("is not asked again for its spread where this very recipe was printed on the lot", () => {
    expect(reasonsOf({ prediction: { ...sure, deltaL5: -9 } }, "test-print")).toEqual([]);
  });

  it("is asked at the dark limit, where the model is weak: demanded above the shop's limit, else advised", () => {
    const prediction = { ...sure, warnings: ["dark-limit" as const] };
    const prints = { any: true, withThisBase: true, ofThisRecipe: false };
    expect(reasonsOf({ prediction, prints, bareL: 15 }, "test-print")).toEqual(["dark-limit"]);
    expect(figuresOf({ prediction, prints, bareL: 15 }, "dark-limit")).toEqual({ bareL: 15 });
    expect(blocks({ prediction, prints }, "test-print")).toBe(true);
    expect(blocks({ prediction, prints, pieceCount: 100 }, "test-print")).toBe(false);
    expect(reasonsOf({ prediction, bareL: null }, "test-print")).toEqual([]);
    expect(figuresOf({ prediction, prints, bareL: null }, "dark-limit")).toEqual({});
  });
});

describe("an agreement with the customer", () => {
  it("is asked where a clear meets white: no dye to deepen", () => {
    const change = { mix: clear, bareL: 92 };
    expect(reasonsOf(change, "target-agreed")).toEqual(["clear-on-white"]);
    expect(reasonsOf({ ...change, bareL: 91.9 }, "target-agreed")).toEqual([]);
    expect(figuresOf({ ...change, prediction: null }, "clear-on-white")).toEqual({ bareL: 92 });
    expect(figuresOf(change, "clear-on-white")).toEqual({ bareL: 92, deltaL: -4 });
  });

  it("is asked where a clear meets cloth whose colour sits in cotton alone", () => {
    expect(reasonsOf({ mix: clear, fibres: cotton }, "target-agreed")).toEqual(["clear-on-cotton"]);
    const cottonDyed = calm.fibres.map((part) => ({ ...part, dyed: part.fibre === "cotton" }));
    expect(reasonsOf({ mix: clear, fibres: cottonDyed }, "target-agreed")).toEqual(["clear-on-cotton"]);
    const traceless = [...cotton, { fibre: "polyester" as const, massFraction: 0, dyed: true }];
    expect(reasonsOf({ mix: clear, fibres: traceless }, "target-agreed")).toEqual(["clear-on-cotton"]);
    const nylon = [{ fibre: "nylon" as const, massFraction: 1, dyed: true }];
    expect(reasonsOf({ mix: clear, fibres: nylon }, "target-agreed")).toEqual([]);
  });

  it("is asked where a clear is predicted to hardly show, whatever the fibre", () => {
    const faint = { ...sure, deltaL: -0.9 };
    expect(reasonsOf({ mix: clear, prediction: faint }, "target-agreed")).toEqual(["clear-hardly-shows"]);
    expect(reasonsOf({ mix: clear, prediction: { ...sure, deltaL: -1 } }, "target-agreed")).toEqual([]);
    expect(reasonsOf({ mix: clear, prediction: null }, "target-agreed")).toEqual([]);
  });

  it("is not asked of a tint or a white for what a clear cannot do", () => {
    expect(reasonsOf({ bareL: 95, fibres: cotton }, "target-agreed")).toEqual([]);
    expect(reasonsOf({ bareL: null, fibres: cotton }, "target-agreed")).toEqual([]);
  });

  it("is asked where the print is likelier out of band than in it", () => {
    const prediction = { ...sure, chanceInBand: 0.49 };
    expect(reasonsOf({ prediction }, "target-agreed")).toEqual(["out-of-band"]);
    expect(figuresOf({ prediction }, "out-of-band")).toEqual({
      chanceInBand: 0.49,
      deltaL: -4,
      targetDeltaL: -4,
      tolerance: 1.5,
    });
    expect(reasonsOf({ prediction: { ...sure, chanceInBand: 0.5 } }, "target-agreed")).toEqual([]);
  });
});

describe("the goods", () => {
  it("are checked on arrival where another lot was approved, not where this one or none was", () => {
    expect(reasonsOf({ approvedLot: "other" }, "goods-in")).toEqual(["lot-not-approved"]);
    expect(reasonsOf({ approvedLot: "none" }, "goods-in")).toEqual([]);
    expect(reasonsOf({ approvedLot: "this" }, "goods-in")).toEqual([]);
  });

  it("are held where the quick draw reacts otherwise than on the approved lot: outside 0.8 to 1.25, its ends included", () => {
    const reacts = (goodsInRatio: number) => reasonsOf({ approvedLot: "other", goodsInRatio }, "goods-in");
    expect(reacts(1.6)).toEqual(["goods-in-reacts-otherwise", "lot-not-approved"]);
    expect(reacts(0.79)[0]).toBe("goods-in-reacts-otherwise");
    for (const ratio of [0.8, 1, 1.25]) expect(reacts(ratio)).toEqual(["goods-in-drawn", "lot-not-approved"]);
    expect(figuresOf({ goodsInRatio: 1.6 }, "goods-in-reacts-otherwise")).toEqual({
      ratio: 1.6,
      lowest: 0.8,
      highest: 1.25,
    });
    // An approved lot that was drawn all the same and reacts as it did has nothing more to be checked for.
    expect(reasonsOf({ goodsInRatio: 1 }, "goods-in")).toEqual([]);
  });

  it("are read ten times instead of four where they are a heather, by its name or by its fibres", () => {
    expect(figuresOf({ heather: true }, "heather")).toEqual({ readCount: 10, usualReadCount: 4 });
    const undyed = calm.fibres.map((part) => ({ ...part, dyed: part.fibre === "polyester" }));
    expect(reasonsOf({ fibres: undyed }, "reads")).toEqual(["heather"]);
    const allUndyed = calm.fibres.map((part) => ({ ...part, dyed: false }));
    expect(reasonsOf({ fibres: allUndyed }, "reads")).toEqual([]);
    expect(reasonsOf({}, "reads")).toEqual([]);
  });
});

describe("cure and wash", () => {
  it("name no temperature of their own: only what was entered, and what was not", () => {
    expect(reasonsOf({ fibres: cotton }, "cure")).toEqual(["cure-from-data-sheet"]);
    expect(figuresOf({ fibres: cotton }, "cure-from-data-sheet")).toEqual({});
    const missing = { ...mix, enteredCuresCelsius: [], curesMissingCount: 2 };
    expect(reasonsOf({ fibres: cotton, mix: missing }, "cure")).toEqual([
      "cure-from-data-sheet",
      "cure-not-entered",
    ]);
    expect(figuresOf({ mix: missing }, "cure-not-entered")).toEqual({ curesMissingCount: 2 });
  });

  it("say where the parts of a mix want different temperatures", () => {
    const differing = { ...mix, enteredCuresCelsius: [130, 160] };
    expect(figuresOf({ mix: differing }, "cures-differ")).toEqual({
      lowestCelsius: 130,
      highestCelsius: 160,
    });
    expect(figuresOf({}, "cures-differ")).toBeUndefined();
    expect(reasonsOf({ mix: { ...differing, lowCure: "some" } }, "cure")).not.toContain("low-cure-in-part");
  });

  it("say where only part of the mix cures low", () => {
    expect(reasonsOf({ fibres: cotton, mix: { ...mix, lowCure: "some" } }, "cure")).toContain(
      "low-cure-in-part",
    );
    expect(reasonsOf({ fibres: cotton, mix: { ...mix, lowCure: "all" } }, "cure")).not.toContain(
      "low-cure-in-part",
    );
  });

  it("warn of heat wherever there is polyester, dyed or not", () => {
    const undyed = calm.fibres.map((part) => ({ ...part, dyed: false }));
    expect(reasonsOf({ fibres: undyed }, "cure")).toContain("polyester-under-heat");
    expect(reasonsOf({ fibres: cotton }, "cure")).not.toContain("polyester-under-heat");
  });

  it.each([
    ["repellent", true],
    ["silicone", true],
    ["softener", false],
    ["wicking", false],
  ] as const)("of a %s finish: adhesion too is %s", (finish, isAsked) => {
    expect(reasonsOf({ finish }, "wash-test").includes("resistant-finish")).toBe(isAsked);
  });

  it("ask of a thin white whether fibres come through", () => {
    expect(reasonsOf({ mix: { ...mix, kind: "white" } }, "wash-test")).toEqual(["ink-holds", "thin-white"]);
    expect(reasonsOf({}, "wash-test")).toEqual(["ink-holds"]);
  });
});

describe("moving dye", () => {
  it("is waited for on a known bleeder, and read again at 24 and 72 hours", () => {
    expect(reasonsOf({ bleeds: true }, "bleed-hold")).toEqual(["known-bleeder"]);
    expect(figuresOf({ bleeds: true }, "known-bleeder")).toEqual({ holdHours: 24, lastReadHours: 72 });
    expect(reasonsOf({}, "bleed-hold")).toEqual([]);
  });

  it("is waited for under white ink on dyed polyester, not on cotton", () => {
    const white = { ...mix, kind: "white" as const };
    expect(reasonsOf({ mix: white }, "bleed-hold")).toEqual(["white-over-dyed-polyester"]);
    expect(reasonsOf({ mix: white, fibres: cotton }, "bleed-hold")).toEqual([]);
  });
});

describe("a children's product", () => {
  it("has one more item with the cited limits as figures; any other product has not", () => {
    expect(reasonsOf({ forChildren: true }, "childrens-limits")).toEqual(["childrens-product"]);
    expect(blocks({ forChildren: true }, "childrens-limits")).toBe(true);
    // 16 CFR 1307.3: 0.1 % each; CPSIA (from memory): 90 and 100 ppm; REACH XVII 51: 0.1 % together.
    expect(figuresOf({ forChildren: true }, "childrens-product")).toEqual({
      usPhthalateFraction: 0.001,
      usLeadInCoatingFraction: 90e-6,
      usLeadInSubstrateFraction: 100e-6,
      euPhthalateFraction: 0.001,
    });
    expect(reasonsOf({}, "childrens-limits")).toEqual([]);
  });
});
