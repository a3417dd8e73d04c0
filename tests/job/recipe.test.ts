/** Tints: what is set is stored as it was set, and the bases make room. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Documents } from "../../src/job/documents.ts";
import { changeMix, removeTint, setTint } from "../../src/job/edits/mixes.ts";
import { tintRoomFraction } from "../../src/job/edits/recipe.ts";
import { exampleDocuments, exampleId, ids } from "./exampleDocuments.ts";

/** Rounding of a few hundred products of doubles. */
const ROUNDING = 1e-12;

function recipe(documents: Documents, mixId = ids.mix): Record<string, number> {
  const mix = documents.job.mixes.find((one) => one.id === mixId);
  return Object.fromEntries((mix?.recipe ?? []).map((part) => [part.itemId, part.massFraction]));
}

function part(documents: Documents, itemId: string): number {
  return recipe(documents)[itemId] ?? Number.NaN;
}

describe("a tint that is set", () => {
  it("is stored exactly, while the bases keep their proportion over a whole drag", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 0.999, noNaN: true }), { minLength: 1 }), (drag) => {
        const end = drag.reduce((d, tint) => setTint(d, ids.mix, ids.black, tint), exampleDocuments());
        const last = drag.at(-1)!;
        expect(part(end, ids.black)).toBe(last);
        expect(part(end, ids.clear) / part(end, ids.softener)).toBeCloseTo(4, 9);
        expect(part(end, ids.clear)).toBeCloseTo(0.8 * (1 - last), 9);
      }),
    );
  });

  it("leaves other colourants as they are", () => {
    const both = setTint(setTint(exampleDocuments(), ids.mix, ids.black, 0.3), ids.mix, ids.red, 0.2);
    expect(part(both, ids.black)).toBe(0.3);
    expect(part(both, ids.clear)).toBeCloseTo(0.4, 12);
    expect(part(both, ids.softener)).toBeCloseTo(0.1, 12);
  });

  it("stays in the recipe at 0, and leaves it when it is removed", () => {
    const none = setTint(exampleDocuments(), ids.otherMix, ids.black, 0);
    expect(recipe(none, ids.otherMix)).toEqual({ [ids.clear]: 1, [ids.black]: 0 });
    const removed = removeTint(exampleDocuments(), ids.otherMix, ids.black);
    expect(recipe(removed, ids.otherMix)).toEqual({ [ids.clear]: 1 });
  });

  it("comes back from a full tint where there is one base", () => {
    const full = setTint(exampleDocuments(), ids.otherMix, ids.black, 1);
    expect(recipe(full, ids.otherMix)).toEqual({ [ids.clear]: 0, [ids.black]: 1 });
    expect(recipe(setTint(full, ids.otherMix, ids.black, 0.25), ids.otherMix)[ids.clear]).toBe(0.75);
  });

  it.each([
    ["more than the other colourants leave", 0.8, /must be in 0\.\.0\.7/],
    ["less than nothing", -0.1, /must be in/],
    ["no number", Number.NaN, /must be in/],
    ["all of the room where several bases would lose their proportion", 0.7, /room for the bases/],
  ])("is refused, never clamped: %s", (_, tint, message) => {
    const documents = setTint(exampleDocuments(), ids.mix, ids.red, 0.3);
    expect(() => setTint(documents, ids.mix, ids.black, tint)).toThrow(message);
  });

  it("is refused for an item that is no colourant of the shelf", () => {
    expect(() => setTint(exampleDocuments(), ids.mix, ids.softener, 0.1)).toThrow("colourant must exist");
  });

  it("is refused in a mix of colourants alone", () => {
    const pure = changeMix(exampleDocuments(), ids.mix, { recipe: [{ itemId: ids.white, massFraction: 1 }] });
    expect(() => setTint(pure, ids.mix, ids.white, 0.5)).toThrow("needs a base");
  });
});

describe("a recipe that is typed", () => {
  it.each([
    ["does not sum to 1", [{ itemId: ids.clear, massFraction: 0.9 }], "mix-sum"],
    [
      "names an item twice",
      [
        { itemId: ids.clear, massFraction: 0.5 },
        { itemId: ids.clear, massFraction: 0.5 },
      ],
      "repeated-component",
    ],
    ["names what the shelf has not", [{ itemId: exampleId(999), massFraction: 1 }], "component must exist"],
  ])("is refused where it %s", (_, typed, message) => {
    expect(() => changeMix(exampleDocuments(), ids.mix, { recipe: typed })).toThrow(message);
  });
});

describe("the room of a tint", () => {
  it("is what the other colourants leave", () => {
    const documents = setTint(exampleDocuments(), ids.mix, ids.red, 0.3);
    const mix = documents.job.mixes[0]!;
    const { shelf } = documents.library;
    expect(Math.abs(tintRoomFraction(mix, shelf, ids.black) - 0.7)).toBeLessThan(ROUNDING);
    expect(tintRoomFraction(mix, shelf, ids.red)).toBe(1);
  });
});
