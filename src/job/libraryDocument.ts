/** The shop-wide library: one set of lists that every job refers to by id. */
import { z } from "zod";
import { garmentLotSchema } from "./garmentLotDocument.ts";
import { approvalSchema, testPrintSchema } from "./recordDocument.ts";
import { shelfSchema } from "./shelfDocument.ts";

export const librarySchema = z.strictObject({
  shelf: shelfSchema,
  garmentLots: z.array(garmentLotSchema),
  testPrints: z.array(testPrintSchema),
  approvals: z.array(approvalSchema),
});

export type Library = z.infer<typeof librarySchema>;
