/** A mix: which bases, additives and colourants go into the pot, as mass fractions that sum to 1, each item once. */
import "./zodWithoutEval.ts";
import { z } from "zod";

export const mixComponentSchema = z.strictObject({
  /** A base, additive, reducer or colourant on the shelf. */
  itemId: z.uuid(),
  massFraction: z.number().min(0).max(1),
});

/** Far below the smallest tint anyone weighs, far above rounding in the last digit. */
export const MIX_SUM_TOLERANCE = 1e-6;

/** More than any pot holds; keeps a recipe short enough to be part of a signature. Invented default. */
export const MOST_COMPONENTS = 40;

export const recipeSchema = z
  .array(mixComponentSchema)
  .min(1)
  .max(MOST_COMPONENTS)
  .refine((parts) => new Set(parts.map((part) => part.itemId)).size === parts.length, {
    params: { code: "repeated-component" },
  })
  .refine(
    (parts) => Math.abs(parts.reduce((sum, part) => sum + part.massFraction, 0) - 1) <= MIX_SUM_TOLERANCE,
    {
      params: { code: "mix-sum" },
    },
  );

export const mixSchema = z.strictObject({
  id: z.uuid(),
  name: z.string().max(120),
  recipe: recipeSchema,
  /** Part of the cloth that a scattering film covers; null: the model's default for its white content. */
  clothCoverFraction: z.number().min(0).max(1).nullable(),
});

export type MixComponent = z.infer<typeof mixComponentSchema>;
export type Mix = z.infer<typeof mixSchema>;
