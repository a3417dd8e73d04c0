// Recipes, masters and batches to weigh, at random.
import fc from "fast-check";
import type { AvailableMaster, RecipeComponent } from "../../../../src/core/planning/ink/potRecipe.ts";
import { between } from "../../optics/between.ts";

export const M10: AvailableMaster = { id: "M10", colourantId: "black", baseId: "clear", massFraction: 0.1 };
export const M2: AvailableMaster = { id: "M2", colourantId: "black", baseId: "clear", massFraction: 0.02 };

/** A clear with a part of black. */
export function tinted(tintFraction: number): RecipeComponent[] {
  return [
    { itemId: "clear", role: "base", massFraction: 1 - tintFraction },
    { itemId: "black", role: "colourant", massFraction: tintFraction },
  ];
}

const ITEMS: readonly Omit<RecipeComponent, "massFraction">[] = [
  { itemId: "black", role: "colourant" },
  { itemId: "clear", role: "base" },
  { itemId: "navy", role: "colourant" },
  { itemId: "soft", role: "additive" },
  { itemId: "matt", role: "base" },
  { itemId: "reducer", role: "reducer" },
];

/** Tint as small as shops weigh it, spread over its decades. */
const tintFraction = between(-3.5, -0.5).map((power) => 10 ** power);

/** One to six components whose fractions sum to 1; the tints small, at times a part of none. */
export const anyRecipe: fc.Arbitrary<RecipeComponent[]> = fc
  .tuple(
    fc.uniqueArray(fc.integer({ min: 0, max: 5 }), { minLength: 1, maxLength: 6 }),
    fc.array(between(0, 1), { minLength: 6, maxLength: 6 }),
    fc.array(tintFraction, { minLength: 6, maxLength: 6 }),
  )
  .map(([picked, weights, tints]) => {
    const parts = picked.map((i) => ({
      ...ITEMS[i]!,
      weight: ITEMS[i]!.role === "colourant" ? tints[i]! : weights[i]!,
    }));
    const sum = parts.reduce((total, part) => total + part.weight, 0);
    if (sum === 0) return [{ itemId: "clear", role: "base" as const, massFraction: 1 }];
    return parts.map(({ itemId, role, weight }) => ({ itemId, role, massFraction: weight / sum }));
  });

const masterOf = (colourantId: string, baseId: string, massFraction: number): AvailableMaster => ({
  id: `${colourantId} ${massFraction} in ${baseId}`,
  colourantId,
  baseId,
  massFraction,
});

/** Some of a shop's masters: in bases that recipes name and in one that they never do. */
export const anyMasters: fc.Arbitrary<AvailableMaster[]> = fc.subarray(
  ["black", "navy"].flatMap((colourant) =>
    ["clear", "matt", "gloss"].flatMap((base) => [
      masterOf(colourant, base, 0.1),
      masterOf(colourant, base, 0.02),
    ]),
  ),
);

/** Scales of a shop: gram steps and a tenth of an ounce. */
export const anyStep: fc.Arbitrary<number> = fc.constantFrom(0.01, 0.1, 0.5, 1, 5, 2.8349523125);

/** Pots from 50 g to 20 kg, spread over the decades. */
export const anyBatch: fc.Arbitrary<number> = between(1.7, 4.3).map((power) => 10 ** power);
