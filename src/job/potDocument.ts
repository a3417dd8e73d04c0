/** Pots and masters as they were weighed: append-only records of the shop-wide library. */
import { z } from "zod";
import { daySchema } from "./calendarDay.ts";
import { recipeSchema } from "./mixDocument.ts";

const isoTime = z.iso.datetime();
const person = z.string().max(120);
const note = z.string().max(2000);
const grams = z.number().min(0).max(1_000_000);

/** One line of a weigh sheet as it was written: still true when the shelf has changed since. */
export const sheetLineSchema = z.strictObject({
  /** The shelf item, or the master it was weighed as. */
  id: z.uuid(),
  role: z.enum(["base", "additive", "reducer", "colourant", "master"]),
  name: z.string().max(200),
  /** What a gram of it holds; the item that the line is for comes first. */
  contents: recipeSchema,
  exactGrams: grams,
  /** What the scale was to show. */
  grams,
});

const sheetLinesSchema = z
  .array(sheetLineSchema)
  .min(1)
  .refine((lines) => new Set(lines.map((line) => line.id)).size === lines.length, {
    params: { code: "repeated-line" },
  })
  .refine((lines) => lines.some((line) => line.exactGrams > 0), { params: { code: "no-grams" } });

/** Which delivery of an item went in, by the code on its lid. */
const usedLotSchema = z.strictObject({ itemId: z.uuid(), code: z.string().min(1).max(120) });

const sheetFields = {
  scaleStepGrams: z.number().positive().max(1000),
  batchGrams: z.number().positive().max(1_000_000),
  lines: sheetLinesSchema,
  baseLots: z.array(usedLotSchema),
  by: person,
  at: isoTime,
  expiresOn: daySchema.nullable(),
  note,
  /** The record this one corrects; nothing is ever changed in place. */
  supersedesId: z.uuid().nullable(),
};

/** One pot of a mix: its weigh sheet as written. What was then poured into it are entries of their own. */
export const potSchema = z.strictObject({
  id: z.uuid(),
  jobId: z.uuid(),
  mixId: z.uuid(),
  mixName: z.string().max(120),
  /** The recipe as wanted. */
  recipe: recipeSchema,
  /** 1 for the first recipe that was mixed under this mix, one more for each that differed. */
  recipeVersion: z.number().int().min(1),
  potNumber: z.number().int().min(1),
  potCount: z.number().int().min(1),
  /** The most it may hold after a correction. */
  potLimitGrams: z.number().positive().max(1_000_000),
  /** The hazards that the label showed; null where a part had none entered. */
  hazards: z.array(z.string().min(1).max(300)).nullable(),
  ...sheetFields,
});

/** A colourant dispersed in a base: its weigh sheet as written. */
export const dilutionSchema = z.strictObject({
  id: z.uuid(),
  colourantId: z.uuid(),
  baseId: z.uuid(),
  /** Part of colourant as wanted. */
  massFraction: z.number().gt(0).lt(1),
  madeOn: daySchema,
  ...sheetFields,
});

/**
 * What happened to a pot or a dilution, in order. "weighed" is a line's first weighing, "added" a later addition to it,
 * "taken-out" some of the mixed ink (no line), which leaves the recipe as it is. A typing error is corrected by an
 * entry that supersedes it and takes its place.
 */
export const potEntrySchema = z.strictObject({
  id: z.uuid(),
  /** The pot or the dilution. */
  potId: z.uuid(),
  kind: z.enum(["weighed", "added", "taken-out"]),
  /** Null for what was taken out. */
  lineId: z.uuid().nullable(),
  grams,
  by: person,
  at: isoTime,
  note,
  supersedesId: z.uuid().nullable(),
});

export type SheetLine = z.infer<typeof sheetLineSchema>;
export type Pot = z.infer<typeof potSchema>;
export type Dilution = z.infer<typeof dilutionSchema>;
export type PotEntry = z.infer<typeof potEntrySchema>;
