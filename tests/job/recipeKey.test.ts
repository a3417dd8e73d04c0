/** Equal recipes have one key, different ones two, and signatures of before still fit. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MOST_COMPONENTS } from "../../src/job/mixDocument.ts";
import { recipeKey, recipeOfKey } from "../../src/job/recipeKey.ts";
import type { Recipe } from "../../src/job/recipeParts.ts";
import { exampleId } from "./exampleDocuments.ts";

const CLEAR = exampleId(1);
const BLACK = exampleId(2);

/** Parts of the smallest step that the key can tell: whole parts of a thousand million. */
const STEPS = 1e9;
const recipe = fc
  .uniqueArray(fc.record({ item: fc.nat(200), steps: fc.nat(STEPS) }), {
    minLength: 1,
    maxLength: MOST_COMPONENTS,
    selector: ({ item }) => item,
  })
  .map((parts) => parts.map(({ item, steps }) => ({ itemId: exampleId(item), massFraction: steps / STEPS })));

/** What the parts weigh, written another way than the key does. */
const weights = (parts: Recipe) =>
  new Map(
    parts.flatMap(({ itemId, massFraction }) => {
      const steps = Math.round(massFraction * STEPS);
      return steps === 0 ? [] : [[itemId, steps] as const];
    }),
  );

describe("the key of a recipe", () => {
  it("is what signatures have said since version 1", () => {
    const parts = [
      { itemId: CLEAR, massFraction: 0.995 },
      { itemId: BLACK, massFraction: 0.005 },
    ];
    expect(recipeKey(parts)).toBe(`${CLEAR}=0.995000000+${BLACK}=0.005000000`);
  });

  it("does not depend on the order, nor on parts of nothing, nor on rounding", () => {
    fc.assert(
      fc.property(recipe, fc.nat(), (parts, at) => {
        const turned = [...parts.slice(at % parts.length), ...parts.slice(0, at % parts.length)].toReversed();
        const others = [...turned, { itemId: exampleId(900), massFraction: 0 }];
        const rounded = others.map((part) => ({ ...part, massFraction: (part.massFraction * 3) / 3 }));
        expect(recipeKey(rounded)).toBe(recipeKey(parts));
      }),
    );
  });

  it("differs as soon as an item or its part differs", () => {
    fc.assert(
      fc.property(recipe, recipe, (one, other) => {
        const isSame =
          JSON.stringify([...weights(one)].sort()) === JSON.stringify([...weights(other)].sort());
        expect(recipeKey(one) === recipeKey(other)).toBe(isSame);
      }),
    );
    const [steps, more] = [250, 251].map((one) => [
      { itemId: BLACK, massFraction: one / STEPS },
      { itemId: CLEAR, massFraction: 1 - one / STEPS },
    ]);
    expect(recipeKey(steps!)).not.toBe(recipeKey(more!));
  });

  it("gives the recipe back, also where the covered part of the cloth follows it", () => {
    fc.assert(
      fc.property(recipe, (parts) => {
        const key = recipeKey(parts);
        expect(weights(recipeOfKey(key))).toEqual(new Map([...weights(parts)].sort()));
        expect(recipeKey(recipeOfKey(`${key} covering 0.6`))).toBe(key);
      }),
    );
  });
});
