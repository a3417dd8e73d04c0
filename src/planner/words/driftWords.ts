/** How a print moved between its readings, in words: while it rested, and after washes. */
import type { PrintSeries, SeriesReading } from "../../job/recordBook/printSeries.ts";
import { labFigure } from "./garmentWords.ts";
import { restWords, washWords } from "./testsWords.ts";

/** Less than this is within what two readings of one print differ by anyway. Invented, as the noise of a mean of pairs. */
const NO_DRIFT_L = 0.2;

/** "−0.9 L* in 72 h". */
export function driftWords({ sinceFirst, restHours }: SeriesReading): string | null {
  if (sinceFirst === null) return null;
  const sign = sinceFirst > 0 ? "+" : "";
  return `${sign}${labFigure(sinceFirst)}\u00a0L* in ${restWords(Math.round(restHours))}`;
}

/** The drift of a print that was read more than once; null where there is nothing to compare. */
export function driftSentence({ resting }: PrintSeries): string | null {
  const later = resting.filter(({ sinceFirst }) => sinceFirst !== null);
  const last = later.at(-1);
  if (last?.sinceFirst == null) return null;
  const words = later.flatMap((reading) => driftWords(reading) ?? []);
  if (Math.abs(last.sinceFirst) < NO_DRIFT_L) return `It stands still: ${words.join(", ")}.`;
  const way = last.sinceFirst < 0 ? "went on darkening" : "grew lighter";
  return `It ${way}: ${words.join(", ")}.`;
}

/** What washes did: "+0.4 L* after 5 washes". */
export function durabilityWords(reading: SeriesReading): string {
  const { sinceFirst, record } = reading;
  const after = washWords(record.washCount);
  if (sinceFirst === null) return `${after}: no reading before the wash to compare with`;
  return `${sinceFirst > 0 ? "+" : ""}${labFigure(sinceFirst)}\u00a0L* ${after}`;
}
