/** Calendar days as the documents store them: YYYY-MM-DD, and a day that the calendar has. */
import "./zodWithoutEval.ts";
import { z } from "zod";

export const daySchema = z.iso.date();

/** Whether a text is such a day. */
export function isDay(text: string): boolean {
  return daySchema.safeParse(text).success;
}
