/** The sentences for what a bench form notices while a test print is typed: what is odd, and what to look at. */
import type { Problem } from "../../job/problem.ts";

type Values = NonNullable<Problem["values"]>;

const OBSERVERS: Readonly<Record<string, string>> = { "2deg": "2°", "10deg": "10°" };
const GEOMETRIES: Readonly<Record<string, string>> = {
  "45:0": "45:0",
  "specular-included": "gloss included",
  "specular-excluded": "gloss excluded",
};

function percent(fraction: string | number | undefined): string {
  return typeof fraction === "number" ? `${Number((fraction * 100).toPrecision(3))} %` : "an unknown part";
}

function figure(value: string | number | undefined, digits: number): string {
  return typeof value === "number" ? value.toFixed(digits) : "unknown";
}

function viewing(illuminant: Values[string] | undefined, observer: Values[string] | undefined): string {
  return `${illuminant}/${OBSERVERS[String(observer)] ?? observer}`;
}

function geometry(value: Values[string] | undefined): string {
  return GEOMETRIES[String(value)] ?? String(value);
}

function usualViewing({ usualIlluminant, usualObserver }: Values): string {
  return viewing(usualIlluminant, usualObserver);
}

const SENTENCES: Readonly<Record<string, (values: Values) => string>> = {
  "bench-print-lighter": ({ deltaL }) =>
    deltaL === undefined
      ? "The print is lighter than the bare cloth, though there is no white in the ink. Are the two swapped?"
      : `The print reads ${figure(deltaL, 1)} lighter than the bare cloth, though there is no white in the ink. Are the two swapped?`,
  "bench-pair-identical": ({ pair }) => `Pair ${pair} has the same reading twice: bare cloth and print.`,
  "bench-pair-swapped": ({ pair, deltaL, usual }) =>
    `Pair ${pair} changes by ${figure(deltaL, 1)} in L*, the others by ${figure(usual, 1)}. Are its two readings swapped?`,
  "bench-pair-unlike-others": ({ pair, deltaL, usual }) =>
    `Pair ${pair} changes by ${figure(deltaL, 1)} in L*, the others by ${figure(usual, 1)}. Read it again.`,
  "bench-viewing-unlike-lot": (values) =>
    `These readings are for ${viewing(values.illuminant, values.observer)}; this lot was read under ${usualViewing(values)}. They are never compared.`,
  "bench-viewing-unusual": (values) =>
    `These readings are for ${viewing(values.illuminant, values.observer)}; the shop's others are for ${usualViewing(values)}. Check the instrument's setting.`,
  "bench-geometry-unlike-lot": (values) =>
    `These readings are ${geometry(values.geometry)}; this lot was read ${geometry(values.usualGeometry)}. They are never compared.`,
  "bench-bare-unlike-lot": (values) =>
    `The bare cloth is ΔE00 ${figure(values.deltaE00, 1)} away from what this lot read before (L* ${figure(values.lotL, 1)}, a* ${figure(values.lotA, 1)}, b* ${figure(values.lotB, 1)}). Is it this lot, and this light?`,
  "bench-few-reads": (values) =>
    `${values.pairCount} ${values.pairCount === 1 ? "pair is" : "pairs are"} few for this cloth: ${values.needed} pin the change down to ±${figure(values.halfWidth, 1)} L*.`,
  "bench-tint-unlike-others": (values) =>
    `${values.name} is ${percent(values.massFraction)} here; in ${values.count} other recipes it is ${values.smallest === values.largest ? percent(values.smallest) : `${percent(values.smallest)} to ${percent(values.largest)}`}. Is the point in its place?`,
  "bench-grams-unlike-recipe": (values) =>
    `By the grams, ${values.name} is ${percent(values.massFraction)}; the recipe says ${percent(values.wanted)}.`,
  "bench-read-hot": (values) =>
    `It was read ${figure(values.minutes, 0)} minutes after printing. Let it rest for ${values.restMinutes} minutes: warm cloth reads differently.`,
  "bench-read-before-printed": () => "It was read before it was printed. Check the two times.",
};

/** Every code that has a sentence here. */
export const BENCH_CODES: readonly string[] = Object.keys(SENTENCES);

/** What the form says of one check. An unknown code is said as it is. */
export function benchSentence({ code, where, values = {} }: Problem): string {
  return SENTENCES[code]?.(values) ?? (where === "" ? `${code}.` : `${code}: ${where}.`);
}
