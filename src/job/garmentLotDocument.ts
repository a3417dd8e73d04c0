/** A garment lot: one style in one colourway from one mill, as it lies in the shop's library. */
import { z } from "zod";
import { colourSchema } from "./colourDocument.ts";

export const fibreSchema = z.enum(["cotton", "viscose", "polyester", "nylon", "elastane"]);
export const finishSchema = z.enum(["none", "wicking", "softener", "silicone", "repellent"]);

export const blendPartSchema = z.strictObject({
  fibre: fibreSchema,
  massFraction: z.number().min(0).max(1),
  /** Whether this fibre carries the garment's colour; an undyed fibre makes a heather. */
  dyed: z.boolean(),
});

/** Half a percent: labels are rounded to whole percents (common practice, no source). */
export const BLEND_SUM_TOLERANCE = 0.005;

export const garmentLotSchema = z.strictObject({
  id: z.uuid(),
  style: z.string().min(1).max(120),
  colourway: z.string().max(120),
  mill: z.string().max(120),
  country: z.string().max(120),
  lot: z.string().max(120),
  blend: z
    .array(blendPartSchema)
    .min(1)
    .refine(
      (parts) => Math.abs(parts.reduce((sum, part) => sum + part.massFraction, 0) - 1) <= BLEND_SUM_TOLERANCE,
      {
        params: { code: "blend-sum" },
      },
    ),
  /** Of the polyester, when there is any. */
  yarn: z.enum(["spun", "filament"]),
  finish: finishSchema,
  heather: z.boolean(),
  /** Known to give up dye under heat. */
  bleeds: z.boolean(),
  bare: colourSchema,
  note: z.string().max(2000),
});

export type Fibre = z.infer<typeof fibreSchema>;
export type Finish = z.infer<typeof finishSchema>;
export type BlendPart = z.infer<typeof blendPartSchema>;
export type GarmentLot = z.infer<typeof garmentLotSchema>;
