/** A typed tint against the shop's other records of the colourant: 5 % where every other is 0.5 % stands out by itself. */
import type { EvidenceRecord } from "./record.ts";

/** Fewer other records say nothing of what is usual. Invented default. */
const LEAST_RECORDS = 5;
/** Shops try tints over a wide range: the spread of ln mass fraction is never taken for less. Invented default. */
const LEAST_SD = 0.7;

/** What is usual of a colourant: mean and standard deviation of ln mass fraction over the records that hold it. */
export interface TintHabit {
  readonly mean: number;
  readonly sd: number;
}

/** The habit of each colourant, by key, over `records`. */
export function tintHabits(records: readonly EvidenceRecord[]): ReadonlyMap<string, TintHabit> {
  const fractions = new Map<string, number[]>();
  for (const { print } of records) {
    print.mix.parts.forEach((part, i) => {
      if (part.kind !== "colourant" || part.massFraction === 0) return;
      const key = print.itemKeys[i]!;
      const list = fractions.get(key);
      if (list === undefined) fractions.set(key, [Math.log(part.massFraction)]);
      else list.push(Math.log(part.massFraction));
    });
  }
  const habits = new Map<string, TintHabit>();
  for (const [key, list] of fractions) {
    if (list.length < LEAST_RECORDS) continue;
    const mean = list.reduce((sum, value) => sum + value, 0) / list.length;
    const variance = list.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (list.length - 1);
    habits.set(key, { mean, sd: Math.max(LEAST_SD, Math.sqrt(variance)) });
  }
  return habits;
}

/** How far above the habit the tints of a record lie, in its standard deviations, at most; 0 for what is usual or less. */
export function tintExcess({ print }: EvidenceRecord, habits: ReadonlyMap<string, TintHabit>): number {
  let most = 0;
  print.mix.parts.forEach((part, i) => {
    if (part.kind !== "colourant" || part.massFraction === 0) return;
    const habit = habits.get(print.itemKeys[i]!);
    if (habit !== undefined) most = Math.max(most, (Math.log(part.massFraction) - habit.mean) / habit.sd);
  });
  return most;
}
