/** What was printed and measured, and what was approved: append-only records of the shop-wide library. */
import { z } from "zod";
import { geometrySchema, labSchema, reflectanceSchema, viewingSchema } from "./colourDocument.ts";
import { recipeSchema } from "./mixDocument.ts";

const isoTime = z.iso.datetime();
const deltaL = z.number().min(-120).max(120);
const person = z.string().max(120);
const note = z.string().max(2000);

/** One pair: the bare cloth beside the print, same piece, same instrument. */
const pairSchema = z.strictObject({ bare: labSchema, print: labSchema });
const spectralPairSchema = z.strictObject({ bare: reflectanceSchema, print: reflectanceSchema });

/** Garments that the pairs were spread over. */
const pieceCount = z.number().int().min(1).max(10_000);

export const readingsSchema = z.discriminatedUnion("kind", [
  z
    .strictObject({
      kind: z.literal("lab"),
      /** Always asked: a reading without its light, observer and geometry means nothing. */
      viewing: viewingSchema,
      geometry: geometrySchema,
      pairs: z.array(pairSchema).min(1).max(1000),
      /** Pairs that were read: as many as are stored, or more where one pair is the mean of them. */
      pairCount: z.number().int().min(1).max(10_000),
      pieceCount,
      /** Standard deviation of delta-L* from pair to pair, where only the mean pair was typed; null otherwise. */
      sdPairDifference: z.number().min(0).max(50).nullable(),
    })
    .refine((readings) => readings.pairs.length === 1 || readings.pairs.length === readings.pairCount, {
      path: ["pairCount"],
      params: { code: "pair-count" },
    }),
  z.strictObject({
    kind: z.literal("spectral"),
    geometry: geometrySchema,
    pairs: z.array(spectralPairSchema).min(1).max(1000),
    pieceCount,
  }),
  /** The grey scale for change of colour, ISO 105-A02, held against bare cloth and print. */
  z.strictObject({
    kind: z.literal("by-eye"),
    grade: z.number().min(1).max(5).multipleOf(0.5),
    direction: z.enum(["darker", "lighter"]),
    light: viewingSchema.shape.illuminant,
    observerCount: z.number().int().min(1).max(100),
  }),
]);

/** More than a tablet's picture at a sensible size; keeps an archive small enough to be sent. */
export const MOST_PHOTO_CHARACTERS = 1_048_576;

/** Kept to recognise the print by; a photo measures nothing. */
const photoSchema = z.strictObject({
  name: z.string().max(200),
  mediaType: z.enum(["image/jpeg", "image/png", "image/webp"]),
  dataUrl: z
    .string()
    .max(MOST_PHOTO_CHARACTERS)
    .regex(/^data:image\/(jpeg|png|webp);base64,[A-Za-z0-9+/]+={0,2}$/),
});

/** What really went into the pot, masters taken apart. */
const actualGramsSchema = z
  .array(z.strictObject({ itemId: z.uuid(), grams: z.number().min(0).max(1_000_000) }))
  .min(1)
  .refine((parts) => new Set(parts.map((part) => part.itemId)).size === parts.length, {
    params: { code: "repeated-component" },
  })
  .refine((parts) => parts.some((part) => part.grams > 0), { params: { code: "no-grams" } });

export const testPrintSchema = z.strictObject({
  id: z.uuid(),
  garmentLotId: z.uuid(),
  /** The recipe as wanted. */
  recipe: recipeSchema,
  actualGrams: actualGramsSchema.nullable(),
  setUpId: z.uuid(),
  /** Ink on the inked area of this very print, by weighing; null where it was not weighed. */
  depositGsm: z.number().positive().max(500).nullable(),
  halftoneFraction: z.number().min(0).max(1),
  smoothed: z.boolean(),
  /** As entered; null where nothing was. */
  cure: z.strictObject({
    filmCelsius: z.number().min(20).max(300).nullable(),
    seconds: z.number().min(0).max(3600).nullable(),
  }),
  printedAt: isoTime,
  readAt: isoTime,
  operator: person,
  readings: readingsSchema,
  instrument: z.string().max(120),
  backing: z.string().max(120),
  /** Washes before it was read: 0 for a print as it left the dryer. */
  washCount: z.number().int().min(0).max(1000),
  verdict: z.enum(["reference", "rejected", "none"]),
  note,
  photo: photoSchema.nullable(),
  /** The record this one corrects; nothing is ever changed in place. */
  supersedesId: z.uuid().nullable(),
});

export const approvalSchema = z.strictObject({
  id: z.uuid(),
  garmentLotId: z.uuid(),
  testPrintId: z.uuid(),
  approvedBy: person,
  approvedAt: isoTime,
  note,
  /** The model's version when it was given; empty where that was not recorded. */
  modelVersion: z.string().max(40),
  /** What the planner said of this print then; what it says today stands beside it and never in its place. */
  said: z
    .strictObject({
      deltaL,
      p5: deltaL,
      p95: deltaL,
      evidence: z.enum(["this lot", "related prints", "model only"]),
      chanceInBand: z.number().min(0).max(1),
    })
    .nullable(),
  supersedesId: z.uuid().nullable(),
});

/** The same quick draw of an uncured base on the approved garment and on the arriving one. */
export const goodsInCheckSchema = z.strictObject({
  id: z.uuid(),
  approvedLotId: z.uuid(),
  arrivingLotId: z.uuid(),
  baseId: z.uuid(),
  /** Change of L* under the draw; negative is darker. */
  approvedChange: deltaL,
  arrivingChange: deltaL,
  viewing: viewingSchema,
  geometry: geometrySchema,
  at: isoTime,
  by: person,
  note,
  supersedesId: z.uuid().nullable(),
});

/** What somebody answered when a record looked like a slip. The latest answer about a record counts. */
export const slipAnswerSchema = z.strictObject({
  id: z.uuid(),
  testPrintId: z.uuid(),
  slip: z.enum(["tint-times-ten", "swapped-pair", "other-light", "none"]),
  answer: z.enum(["keep", "set-aside", "corrected"]),
  by: person,
  at: isoTime,
});

export type Readings = z.infer<typeof readingsSchema>;
export type TestPrint = z.infer<typeof testPrintSchema>;
export type Approval = z.infer<typeof approvalSchema>;
export type GoodsInCheck = z.infer<typeof goodsInCheckSchema>;
export type SlipAnswer = z.infer<typeof slipAnswerSchema>;
