/**
 * The strength of a change in words a shop knows: the ISO 105-A02 grey scale for change in colour.
 */

export type GreyScaleGrade = "5" | "4-5" | "4" | "3-4" | "3" | "2-3" | "2" | "1-2" | "1";

export interface GreyScaleStep {
  readonly grade: GreyScaleGrade;
  /** Nominal CIELAB difference of the pair of chips. */
  readonly deltaEab: number;
}

/** Published: ISO 105-A02, table 1; 5 is no change to be seen, 1 the strongest. */
export const GREY_SCALE_STEPS: readonly GreyScaleStep[] = [
  { grade: "5", deltaEab: 0 },
  { grade: "4-5", deltaEab: 0.8 },
  { grade: "4", deltaEab: 1.7 },
  { grade: "3-4", deltaEab: 2.5 },
  { grade: "3", deltaEab: 3.4 },
  { grade: "2-3", deltaEab: 4.8 },
  { grade: "2", deltaEab: 6.8 },
  { grade: "1-2", deltaEab: 9.6 },
  { grade: "1", deltaEab: 13.6 },
];

/**
 * The grade whose nominal difference (ISO 105-A02 table 1) lies nearest to `deltaEab`; midway, the stronger change.
 * @throws RangeError where `deltaEab` is negative or not a number.
 */
export function greyScaleGrade(deltaEab: number): GreyScaleGrade {
  if (!(deltaEab >= 0)) throw new RangeError(`deltaEab must be >= 0; got ${deltaEab}`);
  let grade: GreyScaleGrade = "5";
  for (let i = 1; i < GREY_SCALE_STEPS.length; i++) {
    const weaker = GREY_SCALE_STEPS[i - 1]!;
    const stronger = GREY_SCALE_STEPS[i]!;
    if (deltaEab < (weaker.deltaEab + stronger.deltaEab) / 2) break;
    grade = stronger.grade;
  }
  return grade;
}
