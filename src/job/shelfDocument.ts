/** The shelf: what the shop owns and how it works, as stored. All quantities in SI-derived units named in the field. */
import { z } from "zod";
import { colourSchema, geometrySchema, viewingSchema } from "./colourDocument.ts";

const fraction = z.number().min(0).max(1);
const name = z.string().min(1).max(120);
const money = z.number().min(0);

/** The cure that the ink maker's data sheet states, as the shop entered it; null where nothing was entered. */
export const cureSchema = z.strictObject({
  filmCelsius: z.number().min(20).max(260).nullable(),
  seconds: z.number().min(0).max(3600).nullable(),
  note: z.string().max(2000),
});

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
  /** The largest part of a mix its data sheet allows. */
  largestFraction: fraction,
  lowCure: z.boolean(),
  densityGramsPerCm3: z.number().min(0.5).max(5),
  cure: cureSchema,
  pricePerKg: money.nullable(),
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
  largestFraction: fraction,
  densityGramsPerCm3: z.number().min(0.5).max(5),
  cure: cureSchema,
  pricePerKg: money.nullable(),
});

/** A colourant dispersed beforehand in a base, so that small tints can be weighed. */
export const masterSchema = z.strictObject({
  id: z.uuid(),
  colourantId: z.uuid(),
  baseId: z.uuid(),
  massFraction: fraction,
  madeOn: z.string().max(40),
  expiresOn: z.string().max(40),
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

export const setUpSchema = z.strictObject({
  id: z.uuid(),
  name,
  meshId: z.uuid(),
  squeegeeId: z.uuid(),
  strokeCount: z.number().int().min(1).max(6),
  /** From weighing garments before and after printing, before cure; null: estimated from the mesh. */
  weighed: z
    .strictObject({
      meanGsm: z.number().positive().max(500),
      sdGsm: z.number().min(0).max(200),
      pieceCount: z.number().int().min(1),
      densityGramsPerCm3: z.number().min(0.5).max(5),
    })
    .nullable(),
});

export const shopDefaultsSchema = z.strictObject({
  shopName: z.string().max(120),
  currency: z.string().max(8),
  units: z.strictObject({
    temperature: z.enum(["celsius", "fahrenheit"]),
    length: z.enum(["mm", "inch"]),
    threadCount: z.enum(["per-cm", "per-inch"]),
    mass: z.enum(["gram", "ounce"]),
  }),
  instrument: z.strictObject({ viewing: viewingSchema, geometry: geometrySchema }),
  /** Tint steps the shop mixes, as mass fractions, ascending. */
  tintLadder: z.array(fraction),
  /** Above this many pieces an untested dyed polyester needs a test print. */
  testAboveCount: z.number().int().min(0),
  prices: z.strictObject({
    print: money,
    polyesterSurcharge: money,
    screen: money,
    inkChange: money,
    testPrint: money,
  }),
  spoilageFraction: fraction,
  /** Part of the pieces out of band that a customer would refuse. */
  refusedFraction: fraction,
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

export type Base = z.infer<typeof baseSchema>;
export type Colourant = z.infer<typeof colourantSchema>;
export type Master = z.infer<typeof masterSchema>;
export type Mesh = z.infer<typeof meshSchema>;
export type Squeegee = z.infer<typeof squeegeeSchema>;
export type SetUp = z.infer<typeof setUpSchema>;
export type ShopDefaults = z.infer<typeof shopDefaultsSchema>;
export type Shelf = z.infer<typeof shelfSchema>;
