// Batches and weigh sheets once more, in plain arithmetic as one would do them on paper. Nothing is imported from src.

export interface PaperBatch {
  readonly pieces: number;
  readonly spoilage: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cover: number;
  /** Weighed ink, g/m2, and the density of that ink; or the mesh. */
  readonly ink:
    | { readonly weighedGsm: number; readonly weighedDensity: number }
    | { readonly threadsPerCm: number; readonly threadUm: number };
  readonly density: number;
}

/** Prints, grams of one print, and the batch with 400 g for the screen. */
export function batchOnPaper(batch: PaperBatch): { gramsPerPrint: number; batchGrams: number } {
  const cm2 = (batch.widthMm / 10) * (batch.heightMm / 10) * batch.cover;
  let gramsPerCm2: number;
  if ("weighedGsm" in batch.ink) {
    gramsPerCm2 = ((batch.ink.weighedGsm / 10_000) * batch.density) / batch.ink.weighedDensity;
  } else {
    // all that the openings of the mesh hold: a fabric 1.6 threads thick
    const threadCm = batch.ink.threadUm / 10_000;
    const openPart = (1 - batch.ink.threadsPerCm * threadCm) ** 2;
    gramsPerCm2 = openPart * 1.6 * threadCm * batch.density;
  }
  const gramsPerPrint = cm2 * gramsPerCm2;
  const prints = batch.pieces + batch.pieces * batch.spoilage;
  return { gramsPerPrint, batchGrams: prints * gramsPerPrint * 1.1 + 400 };
}

/** Grams of base, then tint in the form that has 50 steps: neat, 10 % or 2 % master in the same base. */
export function tintOnPaper(
  batchGrams: number,
  tintPercent: number,
  step: number,
): { base: number; tint: number; form: "neat" | "10 %" | "2 %"; truePercent: number } {
  const onScale = (grams: number) => Math.round(grams / step) * step;
  const neat = (batchGrams * tintPercent) / 100;
  const forms = [
    { form: "neat", grams: neat, percent: 100 },
    { form: "10 %", grams: neat * 10, percent: 10 },
    { form: "2 %", grams: neat * 50, percent: 2 },
  ] as const;
  const { form, grams, percent } = forms.find((one) => one.grams >= 50 * step - 1e-6) ?? forms[2];
  const tint = onScale(grams);
  const base = onScale(batchGrams - grams);
  return { base, tint, form, truePercent: (tint * percent) / (tint + base) };
}
