/** What was read at the press and what was decided then: one entry of a job's append-only press log. */
import "./zodWithoutEval.ts";
import { z } from "zod";

const deltaL = z.number().min(-120).max(120);

/** Readings of one pull: the change of L* of each pair, bare beside print on one piece. */
const pairReadingsSchema = z
  .strictObject({
    kind: z.literal("pairs"),
    deltaL: z.array(deltaL).min(1).max(200),
    /** Pieces that the pairs were spread over. */
    pieceCount: z.number().int().min(1).max(200),
  })
  .refine((readings) => readings.pieceCount <= readings.deltaL.length, {
    path: ["pieceCount"],
    params: { code: "more-pieces-than-pairs" },
  });

/** The same where only the mean of the pairs was typed, as an instrument shows it. */
const meanReadingSchema = z
  .strictObject({
    kind: z.literal("mean"),
    deltaL,
    pairCount: z.number().int().min(1).max(10_000),
    pieceCount: z.number().int().min(1).max(10_000),
    /** Of delta-L* from pair to pair; null where nobody has said it. */
    sdPairDifference: z.number().min(0).max(50).nullable(),
  })
  .refine((readings) => readings.pieceCount <= readings.pairCount, {
    path: ["pieceCount"],
    params: { code: "more-pieces-than-pairs" },
  });

/** The grey scale for change of colour, ISO 105-A02, held against bare cloth and print. */
const eyeReadingSchema = z.strictObject({
  kind: z.literal("by-eye"),
  grade: z.number().min(1).max(5).multipleOf(0.5),
  direction: z.enum(["darker", "lighter"]),
});

export const pressReadingsSchema = z.discriminatedUnion("kind", [
  pairReadingsSchema,
  meanReadingSchema,
  eyeReadingSchema,
]);

export const pressEntrySchema = z.strictObject({
  id: z.uuid(),
  lineId: z.uuid(),
  placeId: z.uuid(),
  kind: z.enum(["first-off", "pull"]),
  /** What was changed just before it. */
  change: z.enum(["none", "lot", "pot", "shift", "restart", "recovery"]),
  /** Lot, recipe and set-up it was printed with, as a checklist's signature names them. */
  subject: z.string().max(4000),
  readings: pressReadingsSchema,
  /** The record of a first-off in the record book, by which it teaches; null for a pull. */
  testPrintId: z.uuid().nullable(),
  /** The band as it stood. */
  band: z.strictObject({ deltaL, tolerance: z.number().min(0).max(50) }),
  /** What was said then; what is said today stands beside it and never in its place. */
  said: z.strictObject({
    action: z.enum(["run", "look", "adjust", "stop", "read-more", "first-off"]),
    mean: deltaL,
    standardUncertainty: z.number().min(0).max(100),
    conformanceProbability: z.number().min(0).max(1),
    modelVersion: z.string().max(40),
  }),
  by: z.string().min(1).max(120),
  at: z.iso.datetime(),
  note: z.string().max(2000),
  /** The entry this one corrects; nothing is ever changed in place. */
  supersedesId: z.uuid().nullable(),
});

export type PressReadings = z.infer<typeof pressReadingsSchema>;
export type PressEntry = z.infer<typeof pressEntrySchema>;
