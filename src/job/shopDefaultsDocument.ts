/** How the shop works, as stored: its units, instrument, scales, pots, prices and rules of thumb. */
import { z } from "zod";
import { geometrySchema, viewingSchema } from "./colourDocument.ts";

const fraction = z.number().min(0).max(1);
const money = z.number().min(0);
const minutes = z.number().min(0).max(1440);
/** Ids of the two small lists below are the shop's words for them, since an empty library has no source of new ids. */
const wordId = z.string().min(1).max(60);

export const scaleSchema = z.strictObject({
  id: wordId,
  name: z.string().min(1).max(120),
  stepGrams: z.number().positive().max(1000),
  /** The most it can carry; null where nothing was entered. */
  maxGrams: z.number().positive().max(1_000_000).nullable(),
});

export const potSizeSchema = z.strictObject({
  id: wordId,
  name: z.string().min(1).max(120),
  volumeCm3: z.number().positive().max(1_000_000),
});

const isUnique = (items: readonly { readonly id: string }[]) =>
  new Set(items.map(({ id }) => id)).size === items.length;
const unique = { params: { code: "repeated-id" } };

export const spoilageRuleSchema = z.discriminatedUnion("code", [
  z.strictObject({ code: z.literal("shop"), fraction }),
  z.strictObject({ code: z.literal("three-percent") }),
  z.strictObject({ code: z.literal("one-and-a-half-percent") }),
  z.strictObject({ code: z.literal("by-quantity") }),
]);

/** How the columns of a readings file were matched, to be offered again; what the words mean is the reader's business. */
export const columnMatchingSchema = z.strictObject({
  name: z.string().min(1).max(200),
  columns: z.record(z.string().min(1).max(120), z.string().max(200)),
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
    pressHour: money,
  }),
  spoilageRule: spoilageRuleSchema,
  /** Part of the pieces out of band that a customer would refuse. */
  refusedFraction: fraction,
  /** Part of the price of a customer's own piece that the shop owes where it is spoiled. */
  liableFraction: fraction,
  /** How test prints are made here. */
  testing: z.strictObject({
    /** As many as are printed and read in a day; null: as many as are wanted. */
    perDay: z.number().int().min(1).max(1000).nullable(),
    /** Days from a test print to its reading, cooling and waiting for moving dye included. */
    restDays: z.number().int().min(0).max(30),
    /** Pieces that one test is printed on, and pairs read on them. */
    pieceCount: z.number().int().min(1).max(100),
    pairCount: z.number().int().min(1).max(1000),
  }),
  scales: z.array(scaleSchema).refine(isUnique, unique),
  potSizes: z.array(potSizeSchema).refine(isUnique, unique),
  /** Ink that keeps one screen wet. */
  screenWetGrams: z.number().min(0).max(100_000),
  /** What each kind of change on press takes. */
  changeMinutes: z.strictObject({
    wipe: minutes,
    washUp: minutes,
    lowCureCleaning: minutes,
    darkToLight: minutes,
    screenSetUp: minutes,
  }),
  /**
   * Standard deviations of the prior re-estimated from the shop's own records, by the names of core/evidence; taken over
   * only with the user's consent. Null, or a name that is not here: the defaults.
   */
  priorScales: z.record(z.string().min(1).max(60), z.number().positive().max(100)).nullable(),
  columnMatchings: z.array(columnMatchingSchema),
});

export type Scale = z.infer<typeof scaleSchema>;
export type StoredPotSize = z.infer<typeof potSizeSchema>;
export type ColumnMatching = z.infer<typeof columnMatchingSchema>;
