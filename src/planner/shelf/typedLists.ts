/** Lists of numbers that are typed into one field: the layers of a squeegee, the steps of a tint ladder. */
import { printNumber, readNumber } from "../controls/typedNumber.ts";

/** The schema's range of a layer's hardness. */
const SHORE_A = { min: 30, max: 100 };
const MOST_LAYERS = 3;
/** More steps than anyone mixes. Invented default. */
const MOST_STEPS = 20;

export const layersSentence = "One to three numbers from 30 to 100, as 70/90/70.";

/** "70/90/70" as its layers; null where it is something else. */
export function readLayers(text: string): number[] | null {
  const layers = text.split("/").map((part) => readNumber(part, SHORE_A));
  const values = layers.flatMap((layer) => (layer.ok && layer.value !== null ? [layer.value] : []));
  return values.length === layers.length && values.length <= MOST_LAYERS ? values : null;
}

export const ladderSentence = "Percentages from 0 to 100 in rising order, as 0; 0.1; 0.25; 0.5; 1.";

/** "0; 0.1; 0.25" in percent as mass fractions; null where it is something else. */
export function readLadder(text: string): number[] | null {
  const parts = text
    .replaceAll("%", " ")
    .split(/[;\s]+/)
    .map((part) => part.replace(/,$/, ""))
    .filter((part) => part !== "");
  const percents = parts.map((part) => readNumber(part, { min: 0, max: 100 }));
  const values = percents.flatMap((percent) => (percent.ok && percent.value !== null ? [percent.value] : []));
  const isRising = values.every((value, index) => index === 0 || value > (values[index - 1] ?? value));
  if (values.length !== parts.length || values.length === 0 || values.length > MOST_STEPS || !isRising)
    return null;
  return values.map((percent) => Number((percent / 100).toFixed(9)));
}

export function printLadder(fractions: readonly number[]): string {
  return fractions.map((fraction) => printNumber(Number((fraction * 100).toFixed(7)))).join("; ");
}
