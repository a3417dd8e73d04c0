/** Draws whole shelves: every branch of their schemas, every reference leading somewhere. */
import fc from "fast-check";
import type { Shelf } from "../../src/job/shelfDocument.ts";
import {
  arbitraryColour,
  chosen,
  day,
  fraction,
  geometry,
  list,
  money,
  name,
  number,
  text,
  time,
  uuid,
  viewing,
} from "./arbitraryValues.ts";

const cure = fc.record({
  filmCelsius: fc.option(number(20, 260)),
  seconds: fc.option(number(0, 3600)),
  note: text,
});

const dataSheet = {
  inStock: fc.boolean(),
  largestFraction: fraction,
  lowCure: fc.boolean(),
  densityGramsPerCm3: number(0.5, 5),
  cure,
  highestCelsius: fc.option(number(20, 300)),
  hazards: fc.option(fc.array(name, { maxLength: 2 })),
  lots: fc.uniqueArray(
    fc.record({ id: uuid, code: name, receivedOn: fc.option(day), expiresOn: fc.option(day), note: text }),
    { maxLength: 2, selector: ({ id }) => id },
  ),
  pricePerKg: fc.option(money),
};

const weighed = fc.oneof(
  fc.record({
    kind: fc.constant("mean" as const),
    meanGsm: number(0.1, 500),
    sdGsm: number(0, 200),
    pieceCount: fc.integer({ min: 1, max: 50 }),
    densityGramsPerCm3: number(0.5, 5),
  }),
  fc.record({
    kind: fc.constant("pieces" as const),
    pieces: fc.array(
      fc.record({ beforeGrams: number(50, 400), inkGrams: number(0.1, 20) }).map((piece) => ({
        beforeGrams: piece.beforeGrams,
        afterGrams: piece.beforeGrams + piece.inkGrams,
      })),
      { minLength: 1, maxLength: 3 },
    ),
    printedAreaM2: number(0.01, 1),
    scaleStepGrams: number(0.01, 1),
    densityGramsPerCm3: number(0.5, 5),
    weighedAt: time,
  }),
);

export const arbitraryShelf: fc.Arbitrary<Shelf> = fc
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
        ...dataSheet,
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
        ...dataSheet,
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
      flood: fc.option(fc.constantFrom("none" as const, "light" as const, "full" as const)),
      transferFraction: fc.option(number(0.05, 1)),
      weighed: fc.option(weighed),
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
        pressHour: money,
      }),
      spoilageRule: fc.oneof(
        fc.record({ code: fc.constant("shop" as const), fraction }),
        fc.record({ code: fc.constantFrom("three-percent" as const, "by-quantity" as const) }),
      ),
      refusedFraction: fraction,
      liableFraction: fraction,
      testing: fc.record({
        perDay: fc.option(fc.integer({ min: 1, max: 1000 })),
        restDays: fc.nat(30),
        pieceCount: fc.integer({ min: 1, max: 100 }),
        pairCount: fc.integer({ min: 1, max: 1000 }),
      }),
      scales: fc.uniqueArray(
        fc.record({ id: name, name, stepGrams: number(0.01, 10), maxGrams: fc.option(number(1, 1e5)) }),
        { maxLength: 2, selector: ({ id }) => id },
      ),
      potSizes: fc.uniqueArray(fc.record({ id: name, name, volumeCm3: number(1, 1e5) }), {
        maxLength: 2,
        selector: ({ id }) => id,
      }),
      screenWetGrams: number(0, 1000),
      changeMinutes: fc.record({
        wipe: number(0, 60),
        washUp: number(0, 60),
        lowCureCleaning: number(0, 60),
        darkToLight: number(0, 60),
        screenSetUp: number(0, 60),
      }),
      priorScales: fc.option(fc.dictionary(fc.constantFrom("style", "mill", "deposit"), number(0.1, 10))),
      columnMatchings: fc.array(
        fc.record({ name, columns: fc.dictionary(fc.constantFrom("bareL", "printL"), text) }),
        { maxLength: 2 },
      ),
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
      madeOn: null,
      expiresOn: "2026-07-01",
      gramsLeft: 250,
      dilutionId: null,
      note: "",
    })),
    setUps: setUpIds.map((id, index) => ({
      id,
      ...setUp,
      meshId: chosen(shelf.meshes, pick + index).id,
      squeegeeId: chosen(shelf.squeegees, pick + index).id,
    })),
  }));
