/** From a lot to the garment the predictor takes: right, or a problem with its place, never a throw. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { labFromReflectance } from "../../src/core/colorimetry/cielab.ts";
import { labFromHex } from "../../src/core/colorimetry/hex.ts";
import { weightsFor } from "../../src/core/colorimetry/weights.ts";
import type { ColourDocument } from "../../src/job/colourDocument.ts";
import type { GarmentLot } from "../../src/job/garmentLotDocument.ts";
import { garmentFor } from "../../src/job/predictionInputs.ts";
import type { Shelf } from "../../src/job/shelfDocument.ts";
import { arbitraryColour } from "../exchange/arbitraryDocuments.ts";
import { exampleDocuments, ids, lotDraft } from "./exampleDocuments.ts";

const { shelf } = exampleDocuments().library;
const lot: GarmentLot = { ...lotDraft, id: ids.lot };

/** The reconstruction's Newton steps end below this in any axis. */
const LAB_DIGITS = 4;

function garmentOf(change: Partial<GarmentLot>) {
  const made = garmentFor({ ...lot, ...change }, shelf);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made;
}

describe("a garment", () => {
  it("of readings has a reflectance with their mean colour under their own light and observer", () => {
    const viewing = { illuminant: "D65", observer: "10deg" } as const;
    const { garment } = garmentOf({});
    const lab = labFromReflectance(garment.bare, weightsFor(viewing));
    expect(lab.L).toBeCloseTo(30.5, LAB_DIGITS);
    expect(lab.a).toBeCloseTo(-15, LAB_DIGITS);
    expect(lab.b).toBeCloseTo(6.5, LAB_DIGITS);
    expect([garment.bareSource, garment.readUnder, garment.geometry]).toEqual([
      "reconstructed",
      viewing,
      "45:0",
    ]);
  });

  it("of a spectrum has that spectrum, measured", () => {
    const reflectance = Array.from({ length: 36 }, (_, i) => 0.1 + i / 100);
    const { garment } = garmentOf({
      bare: { kind: "spectrum", geometry: "specular-included", reflectance, assumptions: [] },
    });
    expect([...garment.bare]).toEqual(reflectance);
    expect([garment.bareSource, garment.readUnder, garment.geometry]).toEqual([
      "measured",
      null,
      "specular-included",
    ]);
  });

  it("of a screen colour is approximate, has that colour, and takes the instrument's geometry", () => {
    const on: Shelf = {
      ...shelf,
      defaults: {
        ...shelf.defaults,
        instrument: { ...shelf.defaults.instrument, geometry: "specular-excluded" },
      },
    };
    const made = garmentFor({ ...lot, bare: { kind: "hex", hex: "#335577" } }, on);
    if (!made.ok) throw new Error("refused");
    const viewing = { illuminant: "D65", observer: "2deg" } as const;
    const lab = labFromReflectance(made.garment.bare, weightsFor(viewing));
    expect(lab.L).toBeCloseTo(labFromHex("#335577").L, LAB_DIGITS);
    expect(lab.b).toBeCloseTo(labFromHex("#335577").b, LAB_DIGITS);
    expect([made.garment.bareSource, made.garment.geometry, made.bareMoved]).toEqual([
      "approximate",
      "specular-excluded",
      false,
    ]);
  });

  it("says that a screen colour no cloth can have was moved: full white reflects everything", () => {
    expect(garmentOf({ bare: { kind: "hex", hex: "#ffffff" } }).bareMoved).toBe(true);
  });

  it("with readings that no cloth has is refused with the place and the figures", () => {
    const bare: ColourDocument = {
      kind: "readings",
      viewing: { illuminant: "D65", observer: "10deg" },
      geometry: "45:0",
      readings: [{ L: 50, a: 150, b: -150 }],
    };
    expect(garmentFor({ ...lot, bare }, shelf)).toEqual({
      ok: false,
      problems: [
        {
          code: "colour-no-cloth-has",
          where: "bare.readings",
          values: { L: 50, a: 150, b: -150, illuminant: "D65", observer: "10deg" },
        },
      ],
    });
  });

  it("is never thrown at, whatever colour its schema accepts, and its bands are all within 0..1.5", () => {
    fc.assert(
      fc.property(arbitraryColour, (bare) => {
        const made = garmentFor({ ...lot, bare }, shelf);
        if (made.ok) expect(made.garment.bare.every((value) => value >= 0 && value <= 1.5)).toBe(true);
        else expect(made.problems.length).toBeGreaterThan(0);
      }),
    );
  });

  it("has its polyester by yarn, its other fibres by name", () => {
    const blend = (["cotton", "viscose", "polyester", "nylon", "elastane"] as const).map((fibre) => ({
      fibre,
      massFraction: 0.2,
      dyed: fibre === "cotton",
    }));
    const fibres = (yarn: GarmentLot["yarn"]) => garmentOf({ blend, yarn }).garment.fibres;
    expect(fibres("spun").map(({ fibre }) => fibre)).toEqual([
      "cotton",
      "viscose",
      "polyester-spun",
      "nylon",
      "elastane",
    ]);
    expect(fibres("filament")[2]).toEqual({ fibre: "polyester-filament", massFraction: 0.2, dyed: false });
  });

  it.each([
    ["none", false],
    ["wicking", false],
    ["softener", false],
    ["silicone", true],
    ["repellent", true],
  ] as const)("finished with %s resists: %s", (finish, resists) => {
    expect(garmentOf({ finish }).garment.resistantFinish).toBe(resists);
  });
});
