/** Finds what the command line names, and names what it prints. */
import type { Documents } from "../job/documents.ts";
import type { Line, Place } from "../job/jobDocument.ts";
import { lineName } from "../job/lineName.ts";
import { lotOfLine, setUpOf } from "../job/lookup.ts";
import { partsOf, type Recipe } from "../job/recipeParts.ts";
import type { Shelf } from "../job/shelfDocument.ts";

/** "Matt clear + 0.5 % Black": the base first, without its own percentage. */
export function recipeText(recipe: Recipe, shelf: Shelf): string {
  const [base, ...others] = partsOf(recipe, shelf).toSorted(
    (one, other) => other.massFraction - one.massFraction,
  );
  const percent = (fraction: number) => `${Number((fraction * 100).toFixed(4))} %`;
  return [
    base?.item.name ?? "",
    ...others.map(({ item, massFraction }) => `${percent(massFraction)} ${item.name}`),
  ].join(" + ");
}

export const setUpName = (setUpId: string | null, { library }: Documents): string =>
  setUpId === null ? "" : (setUpOf(library.shelf, setUpId)?.name ?? "");

/** Style, colourway and mill of a line, with its lot. */
export function lineText(
  documents: Documents,
  lineId: string,
): { readonly garment: string; readonly lot: string } {
  const line = documents.job.lines.find(({ id }) => id === lineId);
  const lot = line === undefined ? null : lotOfLine(documents, line);
  return lot === null ? { garment: "", lot: "" } : { garment: lineName(lot), lot: lot.lot };
}

/** The one item that `wanted` names; otherwise a sentence. */
function theOne<Item>(
  what: string,
  items: readonly Item[],
  wanted: string | null,
  namesOf: (item: Item) => readonly string[],
): Item | string {
  const [only] = items;
  if (wanted === null) {
    if (items.length === 1 && only !== undefined) return only;
    return `the job has ${items.length} ${what}s: name one with --${what}`;
  }
  const text = wanted.toLowerCase();
  const exact = items.filter((item) => namesOf(item).some((name) => name.toLowerCase() === text));
  const near =
    exact.length > 0
      ? exact
      : items.filter((item) => namesOf(item).some((name) => name.toLowerCase().includes(text)));
  if (near.length === 1) return near[0]!;
  return near.length === 0
    ? `no ${what} is called ${wanted}`
    : `${near.length} ${what}s are called ${wanted}`;
}

/** The place of that name or id; the only one where none is named. */
export function namedPlace({ job }: Documents, wanted: string | null): Place | string {
  return theOne("place", job.places, wanted, ({ id, name }) => [id, name]);
}

/** The line whose garment, lot or id holds that text. */
export function namedLine(documents: Documents, wanted: string | null): Line | string {
  return theOne("line", documents.job.lines, wanted, ({ id }) => {
    const { garment, lot } = lineText(documents, id);
    return [id, lot, garment];
  });
}
