/** A job: whose it is, its garment lines, print places with their candidate mixes, choices and checklist. */
import { z } from "zod";
import { daySchema } from "./calendarDay.ts";
import { viewingSchema } from "./colourDocument.ts";
import { mixSchema } from "./mixDocument.ts";
import { pressEntrySchema } from "./pressDocument.ts";

export const lineSchema = z.strictObject({
  id: z.uuid(),
  garmentLotId: z.uuid(),
  quantities: z.array(z.strictObject({ size: z.string().max(40), count: z.number().int().min(0) })),
  suppliedBy: z.enum(["shop", "customer"]),
  piecePrice: z.number().min(0).nullable(),
  /** The lot that was approved and that this one stands in for. */
  substitutedForLotId: z.uuid().nullable(),
  /** Pieces to print tests on, besides the order; null: nobody has said. */
  sparePieceCount: z.number().int().min(0).max(1_000_000).nullable(),
  note: z.string().max(2000),
});

export const bandSchema = z.strictObject({
  /** Wanted change of L* against the bare cloth; negative is darker. */
  deltaL: z.number().min(-100).max(100),
  tolerance: z.number().min(0).max(50),
  /** Largest hue shift beyond that of the clear alone, in CIELAB delta-H units. */
  hueLimit: z.number().min(0).max(50),
});

/** One column of the matrix: a mix printed through a set-up. */
export const candidateSchema = z.strictObject({
  id: z.uuid(),
  mixId: z.uuid(),
  setUpId: z.uuid(),
});

/** A recipe as text that is equal for equal recipes (`recipeKey`); one that no mix has any more has no effect. */
const recipeKeySchema = z.string().min(1).max(4000);

/** What the mix search is to heed. */
export const mixRulesSchema = z.strictObject({
  atMostMixes: z.number().int().min(1).max(100).nullable(),
  stockOnly: z.boolean(),
  lowCureOnly: z.boolean(),
  /** Also the tint that each garment would need exactly, not the shop's ladder alone. */
  exactTints: z.boolean(),
  keptRecipes: z.array(recipeKeySchema).max(100),
  forbiddenRecipes: z.array(recipeKeySchema).max(1000),
});

export const placeSchema = z.strictObject({
  id: z.uuid(),
  name: z.string().min(1).max(120),
  widthMm: z.number().positive().max(2000),
  heightMm: z.number().positive().max(2000),
  /** Part of the print's rectangle that carries ink; enters ink consumption, never the colour. */
  coverFraction: z.number().min(0).max(1),
  /** Halftone area; 1 is a solid. */
  halftoneFraction: z.number().min(0).max(1),
  /** Pressed or printed with a smoothing screen afterwards. */
  smoothed: z.boolean(),
  band: bandSchema,
  candidates: z.array(candidateSchema),
  mixRules: mixRulesSchema,
  /** The lines printed here; null: all. */
  lineIds: z.array(z.uuid()).nullable(),
});

export const choiceSchema = z.strictObject({
  lineId: z.uuid(),
  placeId: z.uuid(),
  candidateId: z.uuid(),
});

/** One entry of the checklist's ledger. Entries are added, never changed or removed. */
export const checklistEntrySchema = z.strictObject({
  id: z.uuid(),
  lineId: z.uuid(),
  placeId: z.uuid(),
  action: z.enum(["sign", "withdraw", "override", "release", "hold"]),
  /** The item signed or withdrawn; null for override, release and hold, which concern the whole line. */
  itemCode: z.string().max(60).nullable(),
  /** The lot, recipe and set-up it was signed for; when that changes the signature no longer counts. */
  subject: z.string().max(4000),
  signer: z.string().min(1).max(120),
  at: z.iso.datetime(),
  note: z.string().max(2000),
  /** What was predicted and risked when it was written; null where nothing was. */
  said: z
    .strictObject({
      deltaL: z.number().min(-120).max(120),
      p5: z.number().min(-120).max(120),
      p95: z.number().min(-120).max(120),
      chanceInBand: z.number().min(0).max(1),
      evidence: z.enum(["this lot", "related prints", "model only"]),
      /** Money. */
      expectedLoss: z.number().min(0).nullable(),
      modelVersion: z.string().max(40),
    })
    .nullable(),
});

export const jobSchema = z.strictObject({
  id: z.uuid(),
  number: z.string().min(1).max(60),
  customer: z.string().max(120),
  createdAt: z.iso.datetime(),
  /** Adds the published limits for children's products to the checklist. */
  forChildren: z.boolean(),
  lines: z.array(lineSchema),
  places: z.array(placeSchema),
  mixes: z.array(mixSchema),
  choices: z.array(choiceSchema),
  viewing: viewingSchema,
  checklist: z.array(checklistEntrySchema),
  /** The day the run has to start; null: nobody has said. */
  runStartsOn: daySchema.nullable(),
  pressLog: z.array(pressEntrySchema),
});

/** The lists of a job that are only ever added to. */
export const JOB_LEDGER_NAMES = ["checklist", "pressLog"] as const;

export type JobLedgerName = (typeof JOB_LEDGER_NAMES)[number];
export type Line = z.infer<typeof lineSchema>;
export type MixRules = z.infer<typeof mixRulesSchema>;
export type Band = z.infer<typeof bandSchema>;
export type Candidate = z.infer<typeof candidateSchema>;
export type Place = z.infer<typeof placeSchema>;
export type Choice = z.infer<typeof choiceSchema>;
export type ChecklistEntry = z.infer<typeof checklistEntrySchema>;
export type Job = z.infer<typeof jobSchema>;
