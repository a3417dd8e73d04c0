/** The shelf: what the shop owns and how it works, as stored. All quantities in SI-derived units named in the field. */
import { z } from "zod";
import { daySchema } from "./calendarDay.ts";
import { colourSchema } from "./colourDocument.ts";
import { shopDefaultsSchema } from "./shopDefaultsDocument.ts";

const fraction = z.number().min(0).max(1);
const name = z.string().min(1).max(120);
const money = z.number().min(0);

/** The cure that the ink maker's data sheet states, as the shop entered it; null where nothing was entered. */
export const cureSchema = z.strictObject({
  filmCelsius: z.number().min(20).max(260).nullable(),
  seconds: z.number().min(0).max(3600).nullable(),
  note: z.string().max(2000),
});

/** One delivery of an ink or additive; what a pot was mixed from is told by its code. */
export const inkLotSchema = z.strictObject({
  id: z.uuid(),
  code: z.string().min(1).max(120),
  receivedOn: daySchema.nullable(),
  expiresOn: daySchema.nullable(),
  note: z.string().max(2000),
});

/** What its data sheets say and what lies in stock, alike for bases and colourants. */
const dataSheetFields = {
  /** Whether a pot of it stands in the shop now. */
  inStock: z.boolean(),
  /** The largest part of a mix its data sheet allows. */
  largestFraction: fraction,
  lowCure: z.boolean(),
  densityGramsPerCm3: z.number().min(0.5).max(5),
  cure: cureSchema,
  /** The highest film temperature its data sheet allows; null where nothing was entered. */
  highestCelsius: z.number().min(20).max(300).nullable(),
  /** Hazard statements of its safety data sheet: an empty list says that it has none, null that nobody has entered them. */
  hazards: z.array(z.string().min(1).max(300)).max(40).nullable(),
  lots: z.array(inkLotSchema),
  pricePerKg: money.nullable(),
};

export const baseSchema = z.strictObject({
  id: z.uuid(),
  name,
  role: z.enum(["base", "additive", "reducer"]),
  /** Wet-out strength against the reference clear, which is 1. */
  strength: z.number().min(0).max(3),
  /** The one clear that every strength is measured against. */
  reference: z.boolean(),
  hazePerUm: z.number().min(0).max(1),
  closedFraction: fraction,
  ...dataSheetFields,
});

export const colourantSchema = z.strictObject({
  id: z.uuid(),
  name,
  /** What a percentage of it is a percentage of; a tint means nothing without it. */
  strengthDefinition: z.enum(["ready-made-ink", "pigment-concentrate", "dry-pigment"]),
  optics: z.discriminatedUnion("kind", [
    z.strictObject({ kind: z.literal("black") }),
    z.strictObject({ kind: z.literal("white") }),
    z.strictObject({
      kind: z.literal("masstone"),
      masstone: colourSchema,
      /** Absorption at the masstone's darkest band of the ready-made ink at 100 %, per micrometre. */
      strengthPerUm: z.number().min(0).max(20),
    }),
  ]),
  ...dataSheetFields,
});

/** A colourant dispersed beforehand in a base, so that small tints can be weighed. */
export const masterSchema = z.strictObject({
  id: z.uuid(),
  colourantId: z.uuid(),
  baseId: z.uuid(),
  /** Part of it that is colourant, as weighed. */
  massFraction: fraction,
  madeOn: daySchema.nullable(),
  expiresOn: daySchema.nullable(),
  /** What is left in the pot; null where nobody keeps count. */
  gramsLeft: z.number().min(0).nullable(),
  /** The weighing it came from; null for a master bought or made before. */
  dilutionId: z.uuid().nullable(),
  note: z.string().max(2000),
});

export const meshSchema = z.strictObject({
  id: z.uuid(),
  name,
  threadsPerCm: z.number().min(5).max(250),
  threadUm: z.number().min(10).max(400),
  /** Null: estimated from the thread. */
  thicknessUm: z.number().min(10).max(800).nullable(),
  screensAtHand: z.number().int().min(0),
});

export const squeegeeSchema = z.strictObject({
  id: z.uuid(),
  name,
  /** Shore A of each layer, one to three. */
  shoreA: z.array(z.number().min(30).max(100)).min(1).max(3),
  /** Counts as a harder blade in the deposit estimate. */
  hard: z.boolean(),
});

const grams = z.number().min(0).max(100_000);

/** A deposit by weighing garments before and after printing, before the cure. */
export const weighedSchema = z.discriminatedUnion("kind", [
  z.strictObject({
    kind: z.literal("pieces"),
    pieces: z
      .array(
        z
          .strictObject({ beforeGrams: grams, afterGrams: grams })
          .refine((piece) => piece.afterGrams > piece.beforeGrams, { params: { code: "not-heavier" } }),
      )
      .min(1)
      .max(200),
    /** Area that carried ink on each of them. */
    printedAreaM2: z.number().positive().max(4),
    scaleStepGrams: z.number().positive().max(1000),
    densityGramsPerCm3: z.number().min(0.5).max(5),
    weighedAt: z.iso.datetime(),
  }),
  /** Worked out elsewhere: only its mean and spread are known. */
  z.strictObject({
    kind: z.literal("mean"),
    meanGsm: z.number().positive().max(500),
    sdGsm: z.number().min(0).max(200),
    pieceCount: z.number().int().min(1),
    densityGramsPerCm3: z.number().min(0.5).max(5),
  }),
]);

export const setUpSchema = z.strictObject({
  id: z.uuid(),
  name,
  meshId: z.uuid(),
  squeegeeId: z.uuid(),
  strokeCount: z.number().int().min(1).max(6),
  /** The flood stroke before the print stroke; null where nothing was entered. It enters no formula. */
  flood: z.enum(["none", "light", "full"]).nullable(),
  /** Part of the mesh's ink volume that a print takes, while the set-up is not weighed; null: the model's default. */
  transferFraction: z.number().min(0.05).max(1).nullable(),
  /** Null: estimated from the mesh. */
  weighed: weighedSchema.nullable(),
});

export const shelfSchema = z.strictObject({
  bases: z.array(baseSchema),
  colourants: z.array(colourantSchema),
  masters: z.array(masterSchema),
  meshes: z.array(meshSchema),
  squeegees: z.array(squeegeeSchema),
  setUps: z.array(setUpSchema),
  defaults: shopDefaultsSchema,
});

export type InkLot = z.infer<typeof inkLotSchema>;
export type Base = z.infer<typeof baseSchema>;
export type Colourant = z.infer<typeof colourantSchema>;
export type Master = z.infer<typeof masterSchema>;
export type Mesh = z.infer<typeof meshSchema>;
export type Squeegee = z.infer<typeof squeegeeSchema>;
export type Weighed = z.infer<typeof weighedSchema>;
export type SetUp = z.infer<typeof setUpSchema>;
export type Shelf = z.infer<typeof shelfSchema>;
export type ShopDefaults = Shelf["defaults"];
