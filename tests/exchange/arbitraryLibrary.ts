/** Draws whole libraries for property tests: every schema's branches, every reference leading somewhere. */
import fc from "fast-check";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import type { Library } from "../../src/job/libraryDocument.ts";
import type { MixComponent } from "../../src/job/mixDocument.ts";
import type { Shelf } from "../../src/job/shelfDocument.ts";
import { arbitraryRecords, recordsOf } from "./arbitraryRecords.ts";
import { arbitraryShelf } from "./arbitraryShelf.ts";
import { arbitraryColour, chosen, list, name, pairOfParts, text, uuid } from "./arbitraryValues.ts";

const arbitraryLot: fc.Arbitrary<GarmentLot> = fc.record({
  id: uuid,
  style: name,
  colourway: text,
  mill: text,
  country: text,
  lot: text,
  blend: pairOfParts.map(([one, other]) => [
    { fibre: "cotton" as const, massFraction: one, dyed: true },
    { fibre: "polyester" as const, massFraction: other, dyed: false },
  ]),
  yarn: fc.constantFrom("spun" as const, "filament" as const),
  finish: fc.constantFrom("none" as const, "wicking" as const, "repellent" as const),
  heather: fc.boolean(),
  bleeds: fc.boolean(),
  bare: arbitraryColour,
  note: text,
});

export function recipe(shelf: Shelf, pick: number, parts: readonly [number, number]): MixComponent[] {
  return [
    { itemId: chosen(shelf.bases, pick).id, massFraction: parts[0] },
    { itemId: chosen(shelf.colourants, pick).id, massFraction: parts[1] },
  ];
}

export const arbitraryLibrary: fc.Arbitrary<Library> = fc
  .record({
    shelf: arbitraryShelf,
    garmentLots: list(arbitraryLot),
    records: arbitraryRecords,
    parts: pairOfParts,
    pick: fc.nat(100),
  })
  .map(({ shelf, garmentLots, records, parts, pick }) => {
    const ledgers = recordsOf(records, { shelf, garmentLots, recipe: recipe(shelf, pick, parts), pick });
    // A master of the shelf comes from the first dilution, where there is one of its colourant and base.
    const [made] = ledgers.dilutions;
    const masters = shelf.masters.map((master) =>
      made !== undefined && made.colourantId === master.colourantId && made.baseId === master.baseId
        ? { ...master, dilutionId: made.id }
        : master,
    );
    return { shelf: { ...shelf, masters }, garmentLots, ...ledgers };
  });
