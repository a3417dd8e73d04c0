/** The words that a test print can be found by. */
import type { Library } from "./libraryDocument.ts";
import type { TestPrint } from "./recordDocument.ts";

/** A function from a print to its words, with the names behind its ids looked up once. */
export function lookupNames({
  shelf,
  garmentLots,
}: Pick<Library, "shelf" | "garmentLots">): (print: TestPrint) => string[] {
  const inks = new Map([...shelf.bases, ...shelf.colourants].map(({ id, name }) => [id, name]));
  const setUps = new Map(shelf.setUps.map(({ id, name }) => [id, name]));
  const lots = new Map(
    garmentLots.map(({ id, style, colourway, mill, country, lot }) => [
      id,
      [style, colourway, mill, country, lot],
    ]),
  );
  return (print) => [
    ...(lots.get(print.garmentLotId) ?? []),
    ...print.recipe.map(({ itemId }) => inks.get(itemId) ?? ""),
    setUps.get(print.setUpId) ?? "",
    print.operator,
    print.instrument,
    print.backing,
    // The day as it is stored: 2026-02-17, or a part of it.
    print.printedAt.slice(0, 10),
    print.verdict === "none" ? "" : print.verdict,
    print.washCount > 0 ? "washed" : "",
    print.readings.kind === "by-eye" ? "by eye" : print.readings.kind,
    print.note,
  ];
}
