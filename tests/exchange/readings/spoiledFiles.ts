/** Good invented files, and ways to spoil them: what the tests try a few hundred of, and the soak many thousand. */
import fc from "fast-check";
import {
  bytesOf,
  cgatsFile,
  cgatsTable,
  cxf3File,
  type ExampleSample,
  labCsv,
  spectralCsv,
  TEN_NM,
} from "./exampleFiles.ts";

export type Format = "cgats" | "csv" | "cxf3";
export const FORMATS: readonly Format[] = ["cgats", "csv", "cxf3"];

/** What a careless or hostile hand may put into a file. */
const TOKENS = [
  ..."\"'#<>&;,|\t\n\r %=-+.0",
  "\u0000",
  "\uFEFF",
  "\u2212",
  "é",
  "𝛌",
  "\n\n\n",
  '""',
  "\r\n",
  "NaN",
  "1e999",
  "-1",
  "0x1F",
  "1,5",
  "1.5",
  "100",
  "45",
  "BEGIN_DATA",
  "\nEND_DATA\n",
  "\nBEGIN_DATA_FORMAT\n",
  "\nEND_DATA_FORMAT\n",
  "\nNUMBER_OF_SETS 2\n",
  "\nNUMBER_OF_FIELDS 5\n",
  "LAB_L",
  "\tLAB_A",
  "SPECTRAL_NM SPECTRAL_PCT ",
  "NM400 ",
  "\nILLUMINATION_NAME D50\n",
  "L*,a*,b*\n",
  "50;1;2\n",
  "__proto__",
  "constructor",
  "<!--",
  "-->",
  "<![CDATA[",
  "]]>",
  "<!DOCTYPE x>",
  "&amp;",
  "&#x41;",
  "&#0;",
  "&bogus;",
  "<?xml version='1.0'?>",
  "<cc:Object>",
  "</cc:Object>",
  "<cc:L>",
  "</cc:L>",
  '<cc:ColorCIELab ColorSpecification="S1"><cc:L>1</cc:L></cc:ColorCIELab>',
  ' StartWL="400"',
  ' Increment="0"',
];

const example: fc.Arbitrary<ExampleSample> = fc.record({
  name: fc.constantFrom("G03 bare 1", "G03 print 1", "Waldgrün", "", "7", "a, b; c", "navy # 2"),
  L: fc.integer({ min: 200, max: 9500 }).map((value) => value / 100),
  a: fc.integer({ min: -5000, max: 5000 }).map((value) => value / 100),
  b: fc.integer({ min: -5000, max: 5000 }).map((value) => value / 100),
});
const examples = fc.array(example, { minLength: 1, maxLength: 4 });
const band = fc.constantFrom(
  TEN_NM,
  { firstNm: 400, lastNm: 700, stepNm: 20 },
  { firstNm: 400, lastNm: 700, stepNm: 10 },
);
const scale = fc.constantFrom(1 as const, 100 as const);

/** X, Y and Z that some cloth could have, in the places of L*, a* and b*. */
const nearGrey = ({ name, L }: ExampleSample): ExampleSample => ({ name, L, a: 1.02 * L, b: 0.9 * L });

const cgats = fc
  .record({
    tables: fc.array(
      fc.record({
        samples: examples,
        kind: fc.constantFrom("lab" as const, "xyz" as const, "spectral" as const),
        separator: fc.constantFrom("\t" as const, " " as const),
        hasKeywords: fc.boolean(),
        band,
        scale,
      }),
      { minLength: 1, maxLength: 2 },
    ),
  })
  .map(({ tables }) =>
    cgatsFile(
      ...tables.map(({ samples, hasKeywords, ...options }) =>
        cgatsTable(
          options.kind === "xyz" ? samples.map(nearGrey) : samples,
          hasKeywords ? options : { ...options, keywords: [] },
        ),
      ),
    ),
  );

/** A cell's text as a careful writer puts it. */
const csvName = ({ name, ...rest }: ExampleSample): ExampleSample => ({ name: `"${name}"`, ...rest });

const csv = fc.oneof(
  fc
    .record({
      samples: examples,
      style: fc.constantFrom([",", "."] as const, [";", ","] as const, ["\t", "."] as const),
    })
    .map(({ samples, style }) => labCsv(samples.map(csvName), ...style)),
  fc
    .record({ samples: examples, scale, band })
    .map((given) => spectralCsv(given.samples.map(csvName), given.scale, given.band)),
);

const cxf3 = fc
  .record({
    samples: examples,
    values: fc.constantFrom("lab" as const, "spectral" as const, "both" as const),
    band,
  })
  .map(({ samples, ...options }) => cxf3File(samples, options));

export const GOOD: Readonly<Record<Format, fc.Arbitrary<string>>> = { cgats, csv, cxf3 };

type Mutation = (bytes: number[]) => number[];

/** A share of the file's length, every part of it as likely: fast-check's own numbers favour the ends. */
const place = fc.noBias(fc.nat(999_999)).map((part) => part / 999_999);
const at = (bytes: number[], share: number): number =>
  Math.min(bytes.length, Math.floor(share * (bytes.length + 1)));

/** A change of the text behind the bytes, each byte a character, so that nothing else changes. */
function onText(change: (text: string) => string): Mutation {
  return (bytes) => {
    const text = bytes.map((byte) => String.fromCharCode(byte)).join("");
    return Array.from(change(text), (character) => character.charCodeAt(0) & 0xff);
  };
}

/** `text` with one of the matches of `pattern` changed. */
function replacedAt(text: string, pattern: RegExp, share: number, change: (found: string) => string): string {
  const matches = [...text.matchAll(pattern)];
  const match = matches[Math.floor(share * (matches.length - 1))];
  if (match === undefined) return text;
  return text.slice(0, match.index) + change(match[0]) + text.slice(match.index + match[0].length);
}

const mutation: fc.Arbitrary<Mutation> = fc.oneof(
  // A token somewhere.
  fc.tuple(place, fc.constantFrom(...TOKENS)).map(
    ([share, token]): Mutation =>
      (bytes) => {
        const i = at(bytes, share);
        return [...bytes.slice(0, i), ...bytesOf(token), ...bytes.slice(i)];
      },
  ),
  // A piece taken out, or written twice.
  fc.tuple(place, fc.integer({ min: 1, max: 60 }), fc.boolean()).map(
    ([share, length, twice]): Mutation =>
      (bytes) => {
        const i = at(bytes, share);
        return [...bytes.slice(0, twice ? i + length : i), ...bytes.slice(twice ? i : i + length)];
      },
  ),
  // A whole line taken out, or written twice.
  fc.tuple(place, fc.boolean()).map(
    ([share, twice]): Mutation =>
      (bytes) => {
        const i = at(bytes, share);
        const start = bytes.lastIndexOf(10, i - 1) + 1;
        const end = bytes.indexOf(10, i) + 1 || bytes.length;
        return [...bytes.slice(0, twice ? end : start), ...bytes.slice(twice ? start : end)];
      },
  ),
  // One byte changed.
  fc.tuple(place, fc.nat(255)).map(
    ([share, byte]): Mutation =>
      (bytes) => {
        const changed = [...bytes];
        if (changed.length > 0) changed[Math.min(changed.length - 1, at(bytes, share))] = byte;
        return changed;
      },
  ),
  // One number changed for another, or for none.
  fc
    .tuple(place, fc.constantFrom("0", "-1", "99.5", "1.2", "150", "0.5", "10", "400", "1e3", "", "x"))
    .map(
      ([share, number]): Mutation =>
        onText((text) => replacedAt(text, /-?\d+(?:\.\d+)?/g, share, () => number)),
    ),
  // One word changed wherever it stands, so that what opens still closes.
  fc.tuple(place, fc.constantFrom("Other", "L", "Object", "cc:A", "LAB_B")).map(
    ([share, word]): Mutation =>
      onText((text) => {
        const words = [...text.matchAll(/[A-Za-z:_]{2,}/g)].map(([found]) => found);
        const old = words[Math.floor(share * (words.length - 1))];
        return old === undefined ? text : text.replaceAll(old, word);
      }),
  ),
  // A whole element taken out, or written twice.
  fc.tuple(place, fc.boolean()).map(
    ([share, twice]): Mutation =>
      onText((text) => {
        const starts = [...text.matchAll(/<[A-Za-z]/g)].map((match) => match.index);
        const start = starts[Math.floor(share * (starts.length - 1))] ?? 0;
        const element = /^<([\w:]+)(?:\s[^<>]*)?>[\s\S]*?<\/\1>/.exec(text.slice(start))?.[0] ?? "";
        return text.slice(0, start) + (twice ? element + element : "") + text.slice(start + element.length);
      }),
  ),
  // Cut short.
  place.map(
    (share): Mutation =>
      (bytes) =>
        bytes.slice(0, at(bytes, share)),
  ),
  // Written in another encoding.
  fc.constantFrom("utf-16le" as const, "utf-16be" as const, "latin-1" as const).map(
    (encoding): Mutation =>
      (bytes) => {
        const text = new TextDecoder().decode(Uint8Array.from(bytes));
        const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i));
        if (encoding === "latin-1") return units.map((unit) => unit & 0xff);
        return [0xfeff, ...units].flatMap((unit) =>
          encoding === "utf-16le" ? [unit & 0xff, unit >> 8] : [unit >> 8, unit & 0xff],
        );
      },
  ),
);

/** Bytes of a file of this format, spoiled in a few places; one in ten is noise or a heap of tokens. */
export function spoiled(format: Format): fc.Arbitrary<Uint8Array> {
  const spoiledFile = fc
    .tuple(GOOD[format], fc.array(mutation, { minLength: 1, maxLength: 4 }))
    .map(([text, mutations]) =>
      Uint8Array.from(mutations.reduce<number[]>((bytes, mutate) => mutate(bytes), [...bytesOf(text)])),
    );
  return fc.oneof(
    { weight: 18, arbitrary: spoiledFile },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 400 }) },
    {
      weight: 1,
      arbitrary: fc
        .array(fc.constantFrom(...TOKENS), { maxLength: 60 })
        .map((tokens) => bytesOf(tokens.join(""))),
    },
  );
}
