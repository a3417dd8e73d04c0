/** A bench form as text and back: what a tablet keeps of a record that is being typed while it sleeps. */
import { z } from "zod";
import { geometrySchema, viewingSchema } from "../colourDocument.ts";
import { recipeSchema } from "../mixDocument.ts";
import { readingsSchema, testPrintSchema } from "../recordDocument.ts";
import type { BenchForm } from "./benchForm.ts";

const number = z.number().nullable();
const text = z.string();
const lab = z.strictObject({ L: number, a: number, b: number });
const pair = z.strictObject({ bare: lab, print: lab });
const kept = testPrintSchema.shape;

const formSchema = z.strictObject({
  garmentLotId: z.uuid().nullable(),
  recipe: recipeSchema.nullable(),
  setUpId: z.uuid().nullable(),
  actualGrams: kept.actualGrams,
  depositGsm: kept.depositGsm,
  halftoneFraction: kept.halftoneFraction,
  smoothed: kept.smoothed,
  cure: kept.cure,
  printedAt: z.iso.datetime().nullable(),
  readAt: z.iso.datetime().nullable(),
  operator: text,
  instrument: text,
  backing: text,
  note: text,
  washCount: kept.washCount,
  verdict: kept.verdict,
  photo: kept.photo,
  supersedesId: kept.supersedesId,
  way: z.enum(["pairs", "mean", "by-eye", "file"]),
  illuminant: viewingSchema.shape.illuminant.nullable(),
  observer: viewingSchema.shape.observer.nullable(),
  geometry: geometrySchema.nullable(),
  pairs: z.array(pair).min(1).max(1000),
  mean: z.strictObject({ pair, pairCount: number, sdPairDifference: number }),
  byEye: z.strictObject({
    grade: number,
    direction: z.enum(["darker", "lighter"]).nullable(),
    light: viewingSchema.shape.illuminant,
    observerCount: z.number().int().min(1),
  }),
  fromFile: readingsSchema.nullable(),
  pieceCount: z.number().int().min(1),
  readsAgainId: z.uuid().nullable(),
});

export function storedForm(form: BenchForm): string {
  return JSON.stringify(form);
}

/** The form that the text stands for; null where it is none of this version's, so that nothing half-read is offered. */
export function formFromStored(stored: string | null): BenchForm | null {
  if (stored === null) return null;
  let value: unknown;
  try {
    value = JSON.parse(stored);
  } catch {
    return null;
  }
  const parsed = formSchema.safeParse(value);
  if (!parsed.success) return null;
  const { fromFile, ...rest } = parsed.data;
  return fromFile?.kind === "by-eye" ? null : { ...rest, fromFile };
}
