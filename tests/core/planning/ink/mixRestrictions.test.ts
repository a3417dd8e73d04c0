// What a mix inherits: the strictest of what was entered, nothing where a part has nothing.
import { describe, expect, it } from "vitest";
import { mixRestrictions, type RestrictedPart } from "../../../../src/core/planning/ink/mixRestrictions.ts";

const part = (itemId: string, more: Partial<RestrictedPart> = {}): RestrictedPart => ({
  itemId,
  massFraction: 0.5,
  cureCelsius: 160,
  cureSeconds: 60,
  highestCelsius: 175,
  lowCure: false,
  hazards: [],
  largestFraction: 1,
  expiresOn: "2027-01-01",
  ...more,
});

describe("a mix inherits", () => {
  it("the highest cure, the longest time, the lowest heat limit, every hazard once and the earliest date", () => {
    const found = mixRestrictions([
      part("clear", { hazards: ["irritant", "hot film"] }),
      part("black", {
        cureCelsius: 150,
        cureSeconds: 90,
        highestCelsius: 165,
        hazards: ["irritant", "dust"],
      }),
      part("soft", { expiresOn: "2026-05-01", hazards: [] }),
    ]);
    expect(found.cureCelsius).toEqual({ value: 160, amongEntered: 160, missingItemIds: [] });
    expect(found.cureSeconds.value).toBe(90);
    expect(found.highestCelsius.value).toBe(165);
    expect(found.hazards.value).toEqual(["irritant", "hot film", "dust"]);
    expect(found.expiresOn.value).toBe("2026-05-01");
    expect(found.lowCure).toBe("none");
    expect(found.restrictions).toEqual([
      {
        code: "cures-differ",
        itemIds: ["clear", "black", "soft"],
        figures: { lowestCelsius: 150, highestCelsius: 160 },
      },
    ]);
  });

  it("no value where a part has nothing entered, but what the others say, and which part is missing", () => {
    const nothing = {
      cureCelsius: null,
      cureSeconds: null,
      highestCelsius: null,
      hazards: null,
      expiresOn: null,
    };
    const found = mixRestrictions([part("clear", { hazards: ["irritant"] }), part("black", nothing)]);
    expect(found.cureCelsius).toEqual({ value: null, amongEntered: 160, missingItemIds: ["black"] });
    expect(found.hazards).toEqual({ value: null, amongEntered: ["irritant"], missingItemIds: ["black"] });
    expect(found.expiresOn.amongEntered).toBe("2027-01-01");
    expect(found.restrictions).toEqual([]);
    const all = mixRestrictions([part("black", nothing)]);
    expect(all.highestCelsius).toEqual({ value: null, amongEntered: null, missingItemIds: ["black"] });
    expect(all.restrictions).toEqual([]);
  });

  it("a conflict where one part asks for more heat than another allows", () => {
    const found = mixRestrictions([
      part("clear"),
      part("stretch", { cureCelsius: 130, highestCelsius: 140 }),
    ]);
    const conflict = found.restrictions.find((restriction) => restriction.code === "cure-above-limit");
    expect(conflict).toEqual({
      code: "cure-above-limit",
      itemIds: ["clear", "stretch"],
      figures: { cureCelsius: 160, highestCelsius: 140 },
    });
  });

  it("low cure only where every part is low-cure: a master in standard base undoes it, and by how much is said", () => {
    const stretch = part("stretch", { lowCure: true, massFraction: 0.955 });
    const found = mixRestrictions([stretch, part("curable", { massFraction: 0.045 })]);
    expect(found.lowCure).toBe("some");
    expect(found.restrictions).toEqual([
      { code: "low-cure-in-part", itemIds: ["stretch"], figures: { lowCureFraction: 0.955 } },
    ]);
    expect(mixRestrictions([stretch]).lowCure).toBe("all");
    // parts of no mass do not count
    expect(mixRestrictions([stretch, part("curable", { massFraction: 0 })]).lowCure).toBe("all");
  });

  it("the largest part that a data sheet allows", () => {
    const found = mixRestrictions([
      part("reducer", { massFraction: 0.12, largestFraction: 0.1 }),
      part("clear"),
    ]);
    expect(found.restrictions).toEqual([
      {
        code: "above-largest-fraction",
        itemIds: ["reducer"],
        figures: { massFraction: 0.12, largestFraction: 0.1 },
      },
    ]);
    expect(() => mixRestrictions([])).toThrow("a mix must have parts; got none");
  });
});
