/** A later pull as it is typed beside the press: L* of bare cloth and print, or the mean change, or an eye's step. */
import { z } from "zod";
import { type PressEntry, type PressReadings, pressReadingsSchema } from "../pressDocument.ts";

const number = z.number().nullable();
const change = z.enum(["none", "lot", "pot", "shift", "restart", "recovery"]);

const pullFormSchema = z.strictObject({
  way: z.enum(["pairs", "mean", "by-eye"]),
  /** L* alone: a pull teaches nothing, so its hue is not asked for. */
  pairs: z
    .array(z.strictObject({ bare: number, print: number }))
    .min(1)
    .max(200),
  mean: z.strictObject({ deltaL: number, pairCount: number }),
  byEye: z.strictObject({ grade: number, direction: z.enum(["darker", "lighter"]).nullable() }),
  pieceCount: z.number().int().min(1),
  change,
  by: z.string(),
  note: z.string(),
  /** The entry this one corrects. */
  supersedesId: z.uuid().nullable(),
});

export type PullForm = z.infer<typeof pullFormSchema>;
export type PullChange = PressEntry["change"];

const EMPTY = { bare: null, print: null };

/** A form without readings; way, pieces and name as of the last pull. */
export function newPullForm(last: Pick<PressEntry, "readings" | "by"> | null): PullForm {
  const readings = last?.readings ?? null;
  return {
    way: readings?.kind ?? "pairs",
    pairs: [EMPTY],
    mean: { deltaL: null, pairCount: readings?.kind === "mean" ? readings.pairCount : null },
    byEye: { grade: null, direction: null },
    pieceCount: readings === null || readings.kind === "by-eye" ? 1 : readings.pieceCount,
    change: "none",
    by: last?.by ?? "",
    note: "",
    supersedesId: null,
  };
}

/** An entry again, to be corrected. Pairs were kept as changes alone, so their mean and number stand for them. */
export function pullCorrection({ id, readings, change: before, by, note }: PressEntry): PullForm {
  const form = { ...newPullForm({ readings, by }), change: before, note, supersedesId: id };
  if (readings.kind === "by-eye") {
    return { ...form, byEye: { grade: readings.grade, direction: readings.direction } };
  }
  if (readings.kind === "mean") {
    return { ...form, mean: { deltaL: readings.deltaL, pairCount: readings.pairCount } };
  }
  const sum = readings.deltaL.reduce((total, value) => total + value, 0);
  const pairCount = readings.deltaL.length;
  return { ...form, way: "mean", mean: { deltaL: Number((sum / pairCount).toFixed(2)), pairCount } };
}

/** The whole pairs as they are typed so far. */
function typedChanges({ pairs }: PullForm): number[] {
  return pairs.flatMap(({ bare, print }) => (bare === null || print === null ? [] : [print - bare]));
}

/** What the form says so far; null while nothing is whole. */
export function readingsOfPull(form: PullForm): PressReadings | null {
  const read = typedOfPull(form);
  if (read === null) return null;
  const parsed = pressReadingsSchema.safeParse(read);
  return parsed.success ? parsed.data : null;
}

function typedOfPull(form: PullForm): PressReadings | null {
  const { way, mean, byEye, pieceCount } = form;
  if (way === "by-eye") {
    const { grade, direction } = byEye;
    if (grade === null || (direction === null && grade < 5)) return null;
    return { kind: "by-eye", grade, direction: direction ?? "darker" };
  }
  if (way === "mean") {
    const { deltaL, pairCount } = mean;
    if (deltaL === null || pairCount === null) return null;
    return {
      kind: "mean",
      deltaL,
      pairCount,
      pieceCount: Math.min(pieceCount, pairCount),
      sdPairDifference: null,
    };
  }
  const deltaL = typedChanges(form);
  if (deltaL.length === 0) return null;
  return { kind: "pairs", deltaL, pieceCount: Math.min(pieceCount, deltaL.length) };
}

export function storedPull(form: PullForm): string {
  return JSON.stringify(form);
}

/** The form that the text stands for; null where it is none of this version's. */
export function pullFromStored(stored: string | null): PullForm | null {
  if (stored === null) return null;
  try {
    const parsed = pullFormSchema.safeParse(JSON.parse(stored));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}
