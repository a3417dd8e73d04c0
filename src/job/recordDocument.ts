/** What was printed and measured, and what was approved: append-only records of the shop-wide library. */
import { z } from "zod";
import { geometrySchema, labSchema, reflectanceSchema, viewingSchema } from "./colourDocument.ts";
import { recipeSchema } from "./mixDocument.ts";

const isoTime = z.iso.datetime();

/** One pair: the bare cloth beside the print, same piece, same instrument. */
const pairSchema = z.strictObject({ bare: labSchema, print: labSchema });
const spectralPairSchema = z.strictObject({ bare: reflectanceSchema, print: reflectanceSchema });

export const testPrintSchema = z.strictObject({
  id: z.uuid(),
  garmentLotId: z.uuid(),
  recipe: recipeSchema,
  setUpId: z.uuid(),
  printedAt: isoTime,
  readAt: isoTime,
  operator: z.string().max(120),
  readings: z.discriminatedUnion("kind", [
    z.strictObject({
      kind: z.literal("lab"),
      viewing: viewingSchema,
      geometry: geometrySchema,
      pairs: z.array(pairSchema).min(1),
    }),
    z.strictObject({
      kind: z.literal("spectral"),
      geometry: geometrySchema,
      pairs: z.array(spectralPairSchema).min(1),
    }),
  ]),
  verdict: z.enum(["reference", "rejected", "none"]),
  note: z.string().max(2000),
  /** The record this one corrects; nothing is ever changed in place. */
  supersedesId: z.uuid().nullable(),
});

export const approvalSchema = z.strictObject({
  id: z.uuid(),
  garmentLotId: z.uuid(),
  testPrintId: z.uuid(),
  approvedBy: z.string().max(120),
  approvedAt: isoTime,
  note: z.string().max(2000),
  supersedesId: z.uuid().nullable(),
});

export type TestPrint = z.infer<typeof testPrintSchema>;
export type Approval = z.infer<typeof approvalSchema>;
