/** Draws whole libraries for property tests: every schema's branches, every reference leading somewhere. */
import fc from "fast-check";
import type { ColourDocument, LabDocument } from "../../src/job/colourDocument.ts";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import type { Library } from "../../src/job/libraryDocument.ts";
import type { MixComponent } from "../../src/job/mixDocument.ts";
import type { Approval, TestPrint } from "../../src/job/recordDocument.ts";
import type { Shelf } from "../../src/job/shelfDocument.ts";

/** Text keeps no sign on a zero. */
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((value) => value + 0);
export const fraction = number(0, 1);
export const text = fc.string({ unit: "grapheme", maxLength: 12 });
export const name = fc.string({ unit: "grapheme", minLength: 1, maxLength: 12 });
export const uuid = fc.uuid();
export const time = fc
  .date({ min: new Date("2020-01-01"), max: new Date("2040-01-01"), noInvalidDate: true })
  .map((date) => date.toISOString());
const geometry = fc.constantFrom("45:0" as const, "specular-included" as const, "specular-excluded" as const);
export const viewing = fc.record({
  illuminant: fc.constantFrom("D65" as const, "D50" as const, "A" as const, "F11" as const, "LED" as const),
  observer: fc.constantFrom("2deg" as const, "10deg" as const),
});
const lab: fc.Arbitrary<LabDocument> = fc.record({
  L: number(0, 120),
  a: number(-200, 200),
  b: number(-200, 200),
});
const reflectance = fc.array(number(0, 1.5), { minLength: 36, maxLength: 36 });
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

const cure = fc.record({
  filmCelsius: fc.option(number(20, 260)),
  seconds: fc.option(number(0, 3600)),
  note: text,
});

/** Parts that sum to 1: one part and what it leaves. */
export const pairOfParts = fraction.map((part) => [part, 1 - part] as const);

function list<Item extends { id: string }>(item: fc.Arbitrary<Item>): fc.Arbitrary<Item[]> {
  return fc.uniqueArray(item, { minLength: 1, maxLength: 3, selector: ({ id }) => id });
}

const arbitraryShelf: fc.Arbitrary<Shelf> = fc
  .record({
    bases: list(
      fc.record({
        id: uuid,
        name,
        role: fc.constantFrom("base" as const, "additive" as const, "reducer" as const),
        strength: number(0, 3),
        reference: fc.boolean(),
        hazePerUm: fraction,
        closedFraction: fraction,
        largestFraction: fraction,
        lowCure: fc.boolean(),
        densityGramsPerCm3: number(0.5, 5),
        cure,
        pricePerKg: fc.option(money),
      }),
    ),
    colourants: list(
      fc.record({
        id: uuid,
        name,
        strengthDefinition: fc.constantFrom(
          "ready-made-ink" as const,
          "pigment-concentrate" as const,
          "dry-pigment" as const,
        ),
        optics: fc.oneof(
          fc.constant({ kind: "black" as const }),
          fc.constant({ kind: "white" as const }),
          fc.record({
            kind: fc.constant("masstone" as const),
            masstone: arbitraryColour,
            strengthPerUm: number(0, 20),
          }),
        ),
        largestFraction: fraction,
        densityGramsPerCm3: number(0.5, 5),
        cure,
        pricePerKg: fc.option(money),
      }),
    ),
    meshes: list(
      fc.record({
        id: uuid,
        name,
        threadsPerCm: number(5, 250),
        threadUm: number(10, 400),
        thicknessUm: fc.option(number(10, 800)),
        screensAtHand: fc.nat(9),
      }),
    ),
    squeegees: list(
      fc.record({
        id: uuid,
        name,
        shoreA: fc.array(number(30, 100), { minLength: 1, maxLength: 3 }),
        hard: fc.boolean(),
      }),
    ),
    masterIds: fc.uniqueArray(uuid, { maxLength: 2 }),
    setUpIds: fc.uniqueArray(uuid, { minLength: 1, maxLength: 3 }),
    setUp: fc.record({
      name,
      strokeCount: fc.integer({ min: 1, max: 6 }),
      weighed: fc.option(
        fc.record({
          meanGsm: number(0.1, 500),
          sdGsm: number(0, 200),
          pieceCount: fc.integer({ min: 1, max: 50 }),
          densityGramsPerCm3: number(0.5, 5),
        }),
      ),
    }),
    defaults: fc.record({
      shopName: text,
      currency: fc.constantFrom("EUR", ""),
      units: fc.record({
        temperature: fc.constantFrom("celsius" as const, "fahrenheit" as const),
        length: fc.constantFrom("mm" as const, "inch" as const),
        threadCount: fc.constantFrom("per-cm" as const, "per-inch" as const),
        mass: fc.constantFrom("gram" as const, "ounce" as const),
      }),
      instrument: fc.record({ viewing, geometry }),
      tintLadder: fc.array(fraction, { maxLength: 5 }),
      testAboveCount: fc.nat(500),
      prices: fc.record({
        print: money,
        polyesterSurcharge: money,
        screen: money,
        inkChange: money,
        testPrint: money,
      }),
      spoilageFraction: fraction,
      refusedFraction: fraction,
    }),
    pick: fc.nat(100),
    fraction,
  })
  .map(({ masterIds, setUpIds, setUp, pick, fraction: massFraction, ...shelf }) => ({
    ...shelf,
    masters: masterIds.map((id) => ({
      id,
      colourantId: chosen(shelf.colourants, pick).id,
      baseId: chosen(shelf.bases, pick).id,
      massFraction,
      madeOn: "",
      expiresOn: "2026-07-01",
    })),
    setUps: setUpIds.map((id, index) => ({
      id,
      ...setUp,
      meshId: chosen(shelf.meshes, pick + index).id,
      squeegeeId: chosen(shelf.squeegees, pick + index).id,
    })),
  }));

export function chosen<Item>(items: readonly Item[], pick: number): Item {
  const item = items[pick % items.length];
  if (item === undefined) throw new RangeError("a list to choose from is empty");
  return item;
}

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

const readings: fc.Arbitrary<TestPrint["readings"]> = fc.oneof(
  fc.record({
    kind: fc.constant("lab" as const),
    viewing,
    geometry,
    pairs: fc.array(fc.record({ bare: lab, print: lab }), { minLength: 1, maxLength: 2 }),
  }),
  fc.record({
    kind: fc.constant("spectral" as const),
    geometry,
    pairs: fc.array(fc.record({ bare: reflectance, print: reflectance }), { minLength: 1, maxLength: 2 }),
  }),
);

export const arbitraryLibrary: fc.Arbitrary<Library> = fc
  .record({
    shelf: arbitraryShelf,
    garmentLots: list(arbitraryLot),
    printIds: fc.uniqueArray(uuid, { minLength: 1, maxLength: 4 }),
    print: fc.record({
      printedAt: time,
      readAt: time,
      operator: text,
      readings,
      verdict: fc.constantFrom("reference" as const, "rejected" as const, "none" as const),
      note: text,
    }),
    approvalIds: fc.uniqueArray(uuid, { maxLength: 2 }),
    approvedAt: time,
    parts: pairOfParts,
    pick: fc.nat(100),
  })
  .map(({ shelf, garmentLots, printIds, print, approvalIds, approvedAt, parts, pick }) => {
    const testPrints = printIds.map((id, index) => ({
      id,
      ...print,
      garmentLotId: chosen(garmentLots, pick + index).id,
      recipe: recipe(shelf, pick, parts),
      setUpId: chosen(shelf.setUps, pick).id,
      supersedesId: index === 0 ? null : (printIds[index - 1] ?? null),
    }));
    const approvals: Approval[] = approvalIds.map((id, index) => {
      const approved = chosen(testPrints, pick + index);
      return {
        id,
        garmentLotId: approved.garmentLotId,
        testPrintId: approved.id,
        approvedBy: "buyer",
        approvedAt,
        note: "",
        supersedesId: index === 0 ? null : (approvalIds[index - 1] ?? null),
      };
    });
    return { shelf, garmentLots, testPrints, approvals };
  });
