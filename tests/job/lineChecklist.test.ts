/** The facts that the checklist is decided from are those of the documents. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { changeJob } from "../../src/job/edits/job.ts";
import { changeGarmentLot, changeLine } from "../../src/job/edits/lines.ts";
import { changeMix } from "../../src/job/edits/mixes.ts";
import { changeShelfItem } from "../../src/job/edits/shelf.ts";
import { approvedLotOf, checklistFacts, lineChecklist } from "../../src/job/lineChecklist.ts";
import type { GoodsInCheck, TestPrint } from "../../src/job/recordDocument.ts";
import { exampleDocuments, exampleTestPrint, ids, lotDraft } from "./exampleDocuments.ts";
import { exampleApproval, exampleGoodsInCheck } from "./exampleRecords.ts";

function chosen(candidateId = ids.otherCandidate): Documents {
  return chooseCandidate(exampleDocuments(), { lineId: ids.line, placeId: ids.place, candidateId });
}

function withPrints(documents: Documents, ...testPrints: TestPrint[]): Documents {
  return { ...documents, library: { ...documents.library, testPrints } };
}

function facts(documents: Documents) {
  return checklistFacts(documents, documents.job.lines[0]!, documents.job.places[0]!, null);
}

const approval = (number: number, garmentLotId: string, supersedesId: string | null = null) =>
  exampleApproval(number, { garmentLotId, supersedesId });

function withApprovals(documents: Documents, ...approvals: ReturnType<typeof approval>[]): Documents {
  return { ...documents, library: { ...documents.library, approvals } };
}

const tinted = [
  { itemId: ids.clear, massFraction: 0.995 },
  { itemId: ids.black, massFraction: 0.005 },
];

describe("the facts of a line", () => {
  it("are those of its lot, its pieces and the shop's limit", () => {
    expect(facts(chosen())).toMatchObject({
      fibres: lotDraft.blend,
      finish: "none",
      bareL: 30.5,
      pieceCount: 30,
      testAboveCount: 144,
      substituted: false,
      choice: "made",
      band: { deltaL: -4, tolerance: 1.5 },
    });
  });

  it("have no L* of a screen colour, which is no reading", () => {
    const picked = changeGarmentLot(chosen(), ids.lot, { bare: { kind: "hex", hex: "#305030" } });
    expect(facts(picked).bareL).toBeNull();
  });

  it("say whether a mix is chosen, and whether it can be mixed", () => {
    expect(facts(exampleDocuments())).toMatchObject({ choice: "none", mix: null });
    const tooMuch = changeShelfItem(chosen(), "colourants", ids.black, { largestFraction: 0.001 });
    expect(facts(tooMuch).choice).toBe("refused");
    const noOpening = changeShelfItem(chosen(), "meshes", ids.mesh, { threadUm: 200 });
    const unweighed = changeShelfItem(noOpening, "setUps", ids.setUp, { weighed: null });
    expect(facts(unweighed).choice).toBe("refused");
    const picked = { L: 50, a: 190, b: 0 };
    const impossible = changeGarmentLot(chosen(), ids.lot, {
      bare: {
        kind: "readings",
        viewing: { illuminant: "D65", observer: "10deg" },
        geometry: "45:0",
        readings: [picked],
      },
    });
    expect(facts(impossible).choice).toBe("refused");
  });

  it("keep a prediction only of a mix that can be mixed", () => {
    const prediction = { deltaL: -4, deltaL5: -5, deltaL95: -3, chanceInBand: 0.9, warnings: [] };
    const of = (documents: Documents) =>
      checklistFacts(documents, documents.job.lines[0]!, documents.job.places[0]!, prediction).prediction;
    expect(of(chosen())).toBe(prediction);
    expect(of(exampleDocuments())).toBeNull();
  });
});

describe("the mix as the rules see it", () => {
  it.each([
    ["clear", tinted.map((part) => ({ ...part, massFraction: part.itemId === ids.black ? 0 : 1 }))],
    ["tinted", tinted],
    [
      "white",
      [
        ...tinted.slice(1),
        { itemId: ids.clear, massFraction: 0.5 },
        { itemId: ids.white, massFraction: 0.495 },
      ],
    ],
  ] as const)("is %s by the colourants that are really in it", (kind, recipe) => {
    expect(facts(changeMix(chosen(), ids.otherMix, { recipe: [...recipe] })).mix?.kind).toBe(kind);
  });

  it("carries the cures that were entered and counts those that were not", () => {
    const cure = { filmCelsius: 150, seconds: null, note: "" };
    const entered = changeShelfItem(chosen(), "bases", ids.clear, { cure, lowCure: true });
    expect(facts(entered).mix).toMatchObject({
      enteredCuresCelsius: [150],
      curesMissingCount: 1,
      lowCure: "some",
    });
    expect(facts(chosen()).mix).toMatchObject({
      enteredCuresCelsius: [],
      curesMissingCount: 2,
      lowCure: "none",
    });
    const clearOnly = changeMix(entered, ids.otherMix, { recipe: [{ itemId: ids.clear, massFraction: 1 }] });
    expect(facts(clearOnly).mix?.lowCure).toBe("all");
  });
});

describe("earlier prints of the lot", () => {
  const none = { any: false, withThisBase: false, ofThisRecipe: false };

  it("count by base, and by recipe and set-up", () => {
    const sameRecipe = exampleTestPrint(1, { recipe: tinted });
    const otherTint = exampleTestPrint(1, { recipe: [{ itemId: ids.clear, massFraction: 1 }] });
    const otherSetUp = exampleTestPrint(1, { recipe: tinted, setUpId: ids.otherSetUp });
    const otherBase = exampleTestPrint(1, { recipe: [{ itemId: ids.softener, massFraction: 1 }] });
    const prints = (print: TestPrint) => facts(withPrints(chosen(), print)).prints;
    expect(prints(sameRecipe)).toEqual({ any: true, withThisBase: true, ofThisRecipe: true });
    expect(prints(otherTint)).toEqual({ any: true, withThisBase: true, ofThisRecipe: false });
    expect(prints(otherSetUp)).toEqual({ any: true, withThisBase: true, ofThisRecipe: false });
    expect(prints(otherBase)).toEqual({ any: true, withThisBase: false, ofThisRecipe: false });
  });

  it("do not count on another lot, nor where a later record corrects them", () => {
    const elsewhere = exampleTestPrint(1, { recipe: tinted, garmentLotId: ids.otherLot });
    expect(facts(withPrints(chosen(), elsewhere)).prints).toEqual(none);
    const wrong = exampleTestPrint(1, { recipe: tinted });
    const corrected = exampleTestPrint(2, { garmentLotId: ids.otherLot, supersedesId: wrong.id });
    expect(facts(withPrints(chosen(), wrong, corrected)).prints).toEqual(none);
  });

  it("count a base before an additive that is the larger part", () => {
    const mostlySoftener = [
      { itemId: ids.softener, massFraction: 0.5 },
      { itemId: ids.clear, massFraction: 0.3 },
      { itemId: ids.white, massFraction: 0.2 },
    ];
    const documents = changeMix(chosen(), ids.otherMix, { recipe: mostlySoftener });
    const onClear = exampleTestPrint(1, { recipe: tinted });
    expect(facts(withPrints(documents, onClear)).prints.withThisBase).toBe(true);
    const onSoftener = exampleTestPrint(1, { recipe: [{ itemId: ids.softener, massFraction: 1 }] });
    expect(facts(withPrints(documents, onSoftener)).prints.withThisBase).toBe(false);
  });

  it("count by the ink itself where there is no base in the mix", () => {
    const neat = changeMix(chosen(), ids.otherMix, { recipe: [{ itemId: ids.white, massFraction: 1 }] });
    const print = exampleTestPrint(1, { recipe: [{ itemId: ids.white, massFraction: 1 }] });
    expect(facts(withPrints(neat, print)).prints.ofThisRecipe).toBe(true);
  });
});

describe("the approved lot", () => {
  it("is this one, another of the same garment, or none", () => {
    expect(facts(chosen()).approvedLot).toBe("none");
    expect(facts(withApprovals(chosen(), approval(1, ids.lot))).approvedLot).toBe("this");
    expect(facts(withApprovals(chosen(), approval(1, ids.otherLot))).approvedLot).toBe("other");
    const otherStyle = changeGarmentLot(chosen(), ids.otherLot, { colourway: "Navy" });
    expect(facts(withApprovals(otherStyle, approval(1, ids.otherLot))).approvedLot).toBe("none");
  });

  it("is not one whose approval a later one replaced", () => {
    const replaced = withApprovals(
      chosen(),
      approval(1, ids.lot),
      approval(2, ids.otherLot, approval(1, ids.lot).id),
    );
    expect(approvedLotOf(replaced, replaced.job.lines[0]!)?.id).toBe(ids.otherLot);
  });

  it("is the one that the line stands in for, approved on record or not", () => {
    const substituted = changeLine(chosen(), ids.line, { substitutedForLotId: ids.otherLot });
    expect(facts(substituted)).toMatchObject({ approvedLot: "other", substituted: true });
    const own = withApprovals(substituted, approval(1, ids.lot));
    expect(facts(own).approvedLot).toBe("this");
  });
});

describe("the goods-in check of a line", () => {
  const substituted = changeLine(chosen(), ids.line, { substitutedForLotId: ids.otherLot });
  const ratioWith = (...goodsInChecks: GoodsInCheck[]) =>
    facts({ ...substituted, library: { ...substituted.library, goodsInChecks } }).goodsInRatio;
  const check = (number: number, change: Partial<GoodsInCheck> = {}) =>
    exampleGoodsInCheck(number, { approvedLotId: ids.otherLot, arrivingLotId: ids.lot, ...change });

  it("is the latest that stands between its lot and the approved one: -8 over -5 is 1.6", () => {
    expect(ratioWith()).toBeNull();
    expect(ratioWith(check(1))).toBeCloseTo(1.6, 12);
    const corrected = check(2, { arrivingChange: -5, supersedesId: check(1).id });
    expect(ratioWith(check(1), corrected)).toBe(1);
    expect(ratioWith(check(1), exampleGoodsInCheck(3))).toBeCloseTo(1.6, 12);
  });

  it("says nothing where the draw hardly changed the approved lot", () => {
    expect(ratioWith(check(1, { approvedChange: -0.4 }))).toBeNull();
  });
});

describe("the checklist of a line", () => {
  it("asks for the limits of a children's product", () => {
    const codes = (documents: Documents) =>
      lineChecklist(documents, documents.job.lines[0]!, documents.job.places[0]!, null).map(
        ({ code }) => code,
      );
    expect(codes(chosen())).not.toContain("childrens-limits");
    expect(codes(changeJob(chosen(), { forChildren: true }))).toContain("childrens-limits");
  });

  it("is one item while nothing is chosen, and the whole list once something is", () => {
    const list = (documents: Documents) =>
      lineChecklist(documents, documents.job.lines[0]!, documents.job.places[0]!, null).map(
        ({ code }) => code,
      );
    expect(list(exampleDocuments())).toEqual(["choose-mix"]);
    expect(list(chosen())).toEqual(["test-print", "cure", "wash-test", "first-off", "retained-sample"]);
  });
});
