/** The words of the shelf: what its lists, their choices and their figures are called. */
import type { Problem } from "../../job/problem.ts";
import type { Base, Colourant, SetUp, ShopDefaults } from "../../job/shelfDocument.ts";
import type { ShelfList } from "../../job/shelfItemUse.ts";

interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

/** One thing of each list, for "Add a base" and "This base is in use". */
export const LIST_NOUNS: Readonly<Record<ShelfList, string>> = {
  bases: "base",
  colourants: "colourant",
  masters: "master",
  meshes: "mesh",
  squeegees: "squeegee",
  setUps: "set-up",
};

export const ROLES: readonly Option<Base["role"]>[] = [
  { value: "base", label: "base" },
  { value: "additive", label: "additive" },
  { value: "reducer", label: "reducer" },
];

export const STRENGTH_DEFINITIONS: readonly Option<Colourant["strengthDefinition"]>[] = [
  { value: "ready-made-ink", label: "ready-made ink" },
  { value: "pigment-concentrate", label: "pigment concentrate" },
  { value: "dry-pigment", label: "dry pigment" },
];

export const OPTICS_KINDS: readonly Option<Colourant["optics"]["kind"]>[] = [
  { value: "black", label: "black" },
  { value: "white", label: "white" },
  { value: "masstone", label: "a colour of its own" },
];

export const FLOODS: readonly Option<NonNullable<SetUp["flood"]> | "">[] = [
  { value: "", label: "not entered" },
  { value: "none", label: "none" },
  { value: "light", label: "light" },
  { value: "full", label: "full" },
];

export const TEMPERATURES: readonly Option<ShopDefaults["units"]["temperature"]>[] = [
  { value: "celsius", label: "°C" },
  { value: "fahrenheit", label: "°F" },
];

export const LENGTHS: readonly Option<ShopDefaults["units"]["length"]>[] = [
  { value: "mm", label: "millimetres" },
  { value: "inch", label: "inches" },
];

export const THREAD_COUNTS: readonly Option<ShopDefaults["units"]["threadCount"]>[] = [
  { value: "per-cm", label: "threads per cm" },
  { value: "per-inch", label: "threads per inch" },
];

export const MASSES: readonly Option<ShopDefaults["units"]["mass"]>[] = [
  { value: "gram", label: "grams and kilograms" },
  { value: "ounce", label: "ounces and pounds" },
];

export function strengthDefinitionWords(definition: Colourant["strengthDefinition"]): string {
  return STRENGTH_DEFINITIONS.find(({ value }) => value === definition)?.label ?? definition;
}

/** A figure with at most so many digits after the point, and none that are zeros. */
export function figure(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}

export function strokeWords(count: number): string {
  if (count === 1) return "one stroke";
  return count === 2 ? "two strokes" : `${count} strokes`;
}

/** What keeps a colourant from being predicted; null where nothing does. */
export function colourantProblem({ name, optics, strengthDefinition }: Colourant): Problem | null {
  const values = { name };
  if (optics.kind === "white" && strengthDefinition !== "ready-made-ink") {
    return { code: "white-not-ready-made", where: "colourant", values };
  }
  if (optics.kind === "masstone" && optics.strengthPerUm === 0) {
    return { code: "colourant-without-strength", where: "colourant", values };
  }
  return null;
}

export const CURE_NOTE = "From your ink maker's data sheet. Nothing is filled in for you.";
export const NOT_IN_STOCK = "not in stock";

export const LARGEST_NOTE = "What its data sheet allows; a mix above it is refused.";
