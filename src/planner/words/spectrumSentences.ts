/** The sentences for a pasted spectrum: what is wrong with it, and what was assumed. */
import type { Problem } from "../../job/problem.ts";

type Values = Readonly<Record<string, string | number>>;

const PROBLEMS: Readonly<Record<string, (values: Values) => string>> = {
  "spectrum-empty": () => "Paste the values first.",
  "spectrum-not-a-number": ({ word, position }) => `Value ${position} is not a number: “${word}”.`,
  "spectrum-too-few": ({ count, fewest }) =>
    `${count} ${count === 1 ? "value is" : "values are"} too few: 400 to 700 nm takes at least ${fewest}.`,
  "spectrum-range-unknown": ({ count }) =>
    `${count} values do not tell their wavelengths: type the first and the last wavelength.`,
  "spectrum-step": ({ count, firstNm, lastNm, stepNm }) =>
    `${count} values from ${firstNm} to ${lastNm} nm are ${stepNm} nm apart; 5, 10 or 20 nm can be read.`,
  "spectrum-uneven": ({ afterNm, stepNm }) =>
    `After ${afterNm} nm the wavelengths do not go on in steps of ${stepNm} nm.`,
  "spectrum-range-short": ({ firstNm, lastNm }) =>
    `The values run from ${firstNm} to ${lastNm} nm; 400 to 700 nm is needed.`,
  "spectrum-off-raster": ({ firstNm }) => `The first wavelength, ${firstNm} nm, is not on an even step.`,
  "spectrum-value": ({ value, nm }) =>
    `${value} at ${nm} nm is no reflectance: factors run from 0 to 1.5, percents from 0 to 150.`,
};

export function spectrumProblemSentence({ code, values = {} }: Problem): string {
  return PROBLEMS[code]?.(values) ?? `The spectrum cannot be used: ${code}.`;
}

const ASSUMPTIONS: Readonly<Record<string, (range: string) => string>> = {
  "read-as-percent": () => "Read as percents, because a value is above 1.5.",
  "range-from-count": (range) => `Taken as ${range} nm, from the number of values.`,
  "short-end-extended": (range) => `${range} nm was not measured; the shortest value is repeated there.`,
  "long-end-extended": (range) => `${range} nm was not measured; the longest value is repeated there.`,
  "short-end-dropped": (range) => `${range} nm lies below 380 nm and is left out.`,
  "long-end-dropped": (range) => `${range} nm lies above 730 nm and is left out.`,
  "picked-from-5-nm": (range) => `Of the 5 nm steps every second value is used, ${range} nm.`,
  "interpolated-from-20-nm": (range) => `Between the 20 nm steps the values are interpolated, ${range} nm.`,
  "cubic-not-positive": (range) => `At ${range} nm the mean of the neighbours is used.`,
};

/** What a stored "code:first-last" says. A text that is no code of ours is shown as it is. */
export function assumptionSentence(assumption: string): string {
  const [code = "", range = ""] = assumption.split(":", 2);
  const [first = "", last = ""] = range.split("-", 2);
  return ASSUMPTIONS[code]?.(first === last ? first : `${first} to ${last}`) ?? assumption;
}
