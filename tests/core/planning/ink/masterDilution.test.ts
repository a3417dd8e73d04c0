// Masters: their own weigh sheet, let down from a stronger one where that is weighed better, and their dates.
import { describe, expect, it } from "vitest";
import { diluteMaster, masterStateOn } from "../../../../src/core/planning/ink/masterDilution.ts";
import { gramsOfSteps } from "../../../../src/core/planning/ink/scaleStep.ts";
import { M2, M10 } from "./recipes.ts";

const request = {
  colourantId: "black",
  baseId: "clear",
  massFraction: 0.1,
  batchGrams: 500,
  scaleStepGrams: 0.1,
  masters: [],
  madeOn: "2026-03-02",
  expiresOn: "2026-09-02",
};

describe("a master", () => {
  it("of 10 % in 500 g is 450 g of base and 50 g of colourant, with its dates", () => {
    const found = diluteMaster(request);
    if (!found.ok) throw new Error("must be written");
    expect(found.sheet.lines.map(({ id, grams }) => [id, grams])).toEqual([
      ["clear", 450],
      ["black", 50],
    ]);
    expect(found).toMatchObject({ trueMassFraction: 0.1, madeOn: "2026-03-02", expiresOn: "2026-09-02" });
  });

  it("of 2 % is let down from the 10 % one where neat is under 50 steps, never from itself or another base", () => {
    const small = { ...request, massFraction: 0.02, batchGrams: 100 };
    const from = (masters: (typeof M10)[]) => {
      const found = diluteMaster({ ...small, masters });
      if (!found.ok) throw new Error("must be written");
      return found.sheet.lines.at(-1)!;
    };
    expect(from([M10, M2])).toMatchObject({ id: "M10", grams: 20 });
    expect(from([M2, { ...M10, baseId: "gloss" }])).toMatchObject({ id: "black", grams: 2 });
  });

  it("is stored with what its rounded grams make it", () => {
    const found = diluteMaster({ ...request, batchGrams: 33, scaleStepGrams: 1 });
    if (!found.ok) throw new Error("must be written");
    expect(found.trueMassFraction).toBeCloseTo(3 / 33, 12);
  });

  it("is refused where the colourant rounds to nothing", () => {
    expect(diluteMaster({ ...request, batchGrams: 4, scaleStepGrams: 1 })).toMatchObject({ ok: false });
  });

  it("may be used up to its last day, and has no date where none was entered", () => {
    expect(masterStateOn("2026-09-02", "2026-09-02")).toBe("usable");
    expect(masterStateOn("2026-09-02", "2026-09-03")).toBe("expired");
    expect(masterStateOn("autumn", "2026-09-03")).toBe("no-date");
    expect(() => masterStateOn("2026-09-02", "today")).toThrow("day must be YYYY-MM-DD; got today");
  });

  it("refuses fractions and dates that are none", () => {
    expect(() => diluteMaster({ ...request, massFraction: 1 })).toThrow("between 0 and 1; got 1");
    expect(() => diluteMaster({ ...request, madeOn: "" })).toThrow("madeOn must be YYYY-MM-DD; got ");
    expect(() => diluteMaster({ ...request, expiresOn: "2026-03-01" })).toThrow(
      "expiresOn must not be before 2026-03-02",
    );
    expect(diluteMaster({ ...request, expiresOn: null })).toMatchObject({ ok: true, expiresOn: null });
  });
});

describe("grams of scale steps", () => {
  it("carry no digits that the scale does not show", () => {
    expect(gramsOfSteps(3, 0.1)).toBe(0.3);
    expect(gramsOfSteps(1393, 0.1)).toBe(139.3);
    expect(gramsOfSteps(7, 5)).toBe(35);
    expect(gramsOfSteps(3, 2.8349523125)).toBe(3 * 2.8349523125);
  });
});
