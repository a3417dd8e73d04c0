/** Calendar days as the documents store them: YYYY-MM-DD, and a day that the calendar has. */
import "./zodWithoutEval.ts";
import { z } from "zod";

export const daySchema = z.iso.date();

/** Whether a text is such a day. */
export function isDay(text: string): boolean {
  return daySchema.safeParse(text).success;
}

const MS_PER_DAY = 86_400_000;

/** Days from one day to another; negative where the second is the earlier. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / MS_PER_DAY);
}
