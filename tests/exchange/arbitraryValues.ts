/** Draws the values that documents are made of: texts, times, readings, colours. */
import fc from "fast-check";
import type { ColourDocument, LabDocument } from "../../src/job/colourDocument.ts";

/** Text keeps no sign on a zero. */
export const number = (min: number, max: number) =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);
export const fraction = number(0, 1);
export const text = fc.string({ unit: "grapheme", maxLength: 12 });
export const name = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 });
export const uuid = fc.uuid();
export const time = fc
  .date({ min: new Date("2020-01-01"), max: new Date("2040-01-01"), noInvalidDate: true })
  .map((date) => date.toISOString());
export const geometry = fc.constantFrom(
  "45:0" as const,
  "specular-included" as const,
  "specular-excluded" as const,
);
export const viewing = fc.record({
  illuminant: fc.constantFrom("D65" as const, "D50" as const, "A" as const, "F11" as const, "LED" as const),
  observer: fc.constantFrom("2deg" as const, "10deg" as const),
});
export const lab: fc.Arbitrary<LabDocument> = fc.record({
  L: number(0, 120),
  a: number(-200, 200),
  b: number(-200, 200),
});
export const reflectance = fc.array(number(0, 1.5), { minLength: 36, maxLength: 36 });
export const day = time.map((iso) => iso.slice(0, 10));
export const money = number(0, 1000);

export const arbitraryColour: fc.Arbitrary<ColourDocument> = fc.oneof(
  fc.record({
    kind: fc.constant("readings" as const),
    viewing,
    geometry,
    readings: fc.array(lab, { minLength: 1, maxLength: 3 }),
  }),
  fc.record({
    kind: fc.constant("spectrum" as const),
    geometry,
    reflectance,
    assumptions: fc.array(text, { maxLength: 2 }),
  }),
  fc.record({
    kind: fc.constant("hex" as const),
    hex: fc.nat(0xffffff).map((value) => `#${value.toString(16).padStart(6, "0")}`),
  }),
);

/** Parts that sum to 1: one part and what it leaves. */
export const pairOfParts = fraction.map((part) => [part, 1 - part] as const);

/** One to three items of different ids. */
export function list<Item extends { id: string }>(item: fc.Arbitrary<Item>): fc.Arbitrary<Item[]> {
  return fc.uniqueArray(item, { minLength: 1, maxLength: 3, selector: ({ id }) => id });
}

export function chosen<Item>(items: readonly Item[], pick: number): Item {
  const item = items[pick % items.length];
  if (item === undefined) throw new RangeError("a list to choose from is empty");
  return item;
}
