/** From documents to the predictor's inputs: right, or a problem with its place, never a throw. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { RELATIVE_STRENGTH } from "../../src/core/optics/colourant.ts";
import { changeShelfItem } from "../../src/job/edits/shelf.ts";
import { type Mix, mixSchema } from "../../src/job/mixDocument.ts";
import { mixProblems } from "../../src/job/mixProblems.ts";
import { applicationFor, applicationProblems, inkMixFor } from "../../src/job/predictionInputs.ts";
import type { Colourant, Shelf } from "../../src/job/shelfDocument.ts";
import { arbitraryColour } from "../exchange/arbitraryDocuments.ts";
import { exampleDocuments, exampleId, ids } from "./exampleDocuments.ts";

const { job, library } = exampleDocuments();
const { shelf } = library;
function mixOfParts(...parts: [itemId: string, massFraction: number][]): Mix {
  const recipe = parts.map(([itemId, massFraction]) => ({ itemId, massFraction }));
  return { id: exampleId(900), name: "", recipe, clothCoverFraction: null };
}

function inkOf(mix: Mix, on: Shelf = shelf) {
  const made = inkMixFor(mix, on);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.mix;
}

function codesOf(mix: Mix, on: Shelf = shelf): string[] {
  const made = inkMixFor(mix, on);
  return made.ok ? [] : made.problems.map((problem) => problem.code);
}

function shelfWith(id: string, change: Partial<Omit<Colourant, "id">>): Shelf {
  return changeShelfItem(exampleDocuments(), "colourants", id, change).library.shelf;
}

describe("an ink mix", () => {
  it("has its bases, additives and colourants as parts", () => {
    const { parts } = inkOf(mixOfParts([ids.clear, 0.695], [ids.softener, 0.3], [ids.black, 0.005]));
    expect(parts.slice(0, 2)).toEqual([
      { kind: "base", massFraction: 0.695, strength: 1, reference: true, hazePerUm: 0, closedFraction: 0.02 },
      {
        kind: "base",
        massFraction: 0.3,
        strength: 0.85,
        reference: false,
        hazePerUm: 0,
        closedFraction: 0.02,
      },
    ]);
    expect(parts[2]).toMatchObject({
      kind: "colourant",
      massFraction: 0.005,
      family: "black",
      ownBaseStrength: 1,
    });
  });

  it.each(["pigment-concentrate", "dry-pigment"] as const)(
    "counts a colourant stated as %s by the same factor in every band, and not as a base",
    (strengthDefinition) => {
      for (const id of [ids.black, ids.red]) {
        const mix = mixOfParts([ids.clear, 0.99], [id, 0.01]);
        const ready = inkOf(mix).parts[1];
        const stated = inkOf(mix, shelfWith(id, { strengthDefinition })).parts[1];
        if (ready?.kind !== "colourant" || stated?.kind !== "colourant") throw new Error("no colourant");
        const factor = RELATIVE_STRENGTH[strengthDefinition];
        ready.absorptionPerUm.forEach((value, band) => {
          expect(stated.absorptionPerUm[band]).toBeCloseTo(factor * value, 12);
        });
        expect([ready.ownBaseStrength, stated.ownBaseStrength]).toEqual([1, null]);
      }
    },
  );

  it("absorbs at most as the shelf says for a tint, where its masstone is darkest", () => {
    const part = inkOf(mixOfParts([ids.clear, 0.9], [ids.red, 0.1])).parts[1];
    if (part?.kind !== "colourant") throw new Error("no colourant");
    expect(Math.max(...part.absorptionPerUm)).toBeCloseTo(0.5, 12);
    expect(part.family).toBe("tint");
  });

  it("holds a component at its data sheet's limit and refuses it above, with figures for the sentence", () => {
    expect(codesOf(mixOfParts([ids.clear, 0.5], [ids.softener, 0.5]))).toEqual([]);
    expect(inkMixFor(mixOfParts([ids.clear, 0.4], [ids.softener, 0.6]), shelf)).toEqual({
      ok: false,
      problems: [
        {
          code: "above-data-sheet-limit",
          where: "recipe[1].massFraction",
          detail: ids.softener,
          values: { name: "Soft-hand additive", massFraction: 0.6, largestFraction: 0.5 },
        },
      ],
    });
  });

  it("is white ink alone, which is its own base", () => {
    expect(inkOf(mixOfParts([ids.white, 1])).parts[0]).toMatchObject({ family: "white", ownBaseStrength: 1 });
  });

  it.each<[string, Mix, Shelf, string[]]>([
    [
      "a component that is gone",
      mixOfParts([ids.clear, 0.5], [exampleId(999), 0.5]),
      shelf,
      ["component-missing"],
    ],
    ["a sum below 1", mixOfParts([ids.clear, 0.9]), shelf, ["mix-sum"]],
    [
      "nothing that wets the cloth",
      mixOfParts([ids.black, 1]),
      shelfWith(ids.black, { strengthDefinition: "dry-pigment" }),
      ["no-base"],
    ],
    [
      "a tint of no strength",
      mixOfParts([ids.clear, 0.9], [ids.red, 0.1]),
      shelfWith(ids.red, {
        optics: { kind: "masstone", masstone: { kind: "hex", hex: "#a02020" }, strengthPerUm: 0 },
      }),
      ["colourant-without-strength"],
    ],
    [
      "a masstone brighter than any ink",
      mixOfParts([ids.clear, 0.9], [ids.red, 0.1]),
      shelfWith(ids.red, {
        optics: {
          kind: "masstone",
          masstone: {
            kind: "spectrum",
            geometry: "45:0",
            reflectance: Array.from({ length: 36 }, () => 1.2),
            assumptions: [],
          },
          strengthPerUm: 1,
        },
      }),
      ["masstone-impossible"],
    ],
    [
      "white that is no ready-made ink",
      mixOfParts([ids.clear, 0.9], [ids.white, 0.1]),
      shelfWith(ids.white, { strengthDefinition: "pigment-concentrate" }),
      ["white-not-ready-made"],
    ],
  ])("is refused for %s", (_, mix, on, codes) => {
    expect(codesOf(mix, on)).toEqual(codes);
  });

  it("is never thrown at for any masstone its schema accepts", () => {
    const mix = mixOfParts([ids.clear, 0.9], [ids.red, 0.1]);
    fc.assert(
      fc.property(arbitraryColour, (masstone) => {
        const on = shelfWith(ids.red, { optics: { kind: "masstone", masstone, strengthPerUm: 1 } });
        const made = inkMixFor(mix, on);
        if (!made.ok) expect(made.problems.length).toBeGreaterThan(0);
      }),
    );
  });

  it("allows the rounding of a sum that its schema allows", () => {
    const mix = mixOfParts([ids.clear, 0.9], [ids.black, 0.1 + 5e-7]);
    expect(mixSchema.safeParse(mix).success).toBe(true);
    expect(mixProblems(mix, shelf)).toEqual([]);
  });
});

describe("an application", () => {
  const [weighed, estimated] = shelf.setUps as [Shelf["setUps"][number], Shelf["setUps"][number]];
  const place = { ...job.places[0]!, halftoneFraction: 0.4, smoothed: true };

  it("takes the weighed deposit: 23 g/m2 of 1.15 g/cm3 is 20 um, twice the density half of it", () => {
    const made = applicationFor(weighed, place, shelf);
    expect(made.depositUm).toBeCloseTo(20, 12);
    const heavy = { ...weighed, weighed: { ...weighed.weighed!, densityGramsPerCm3: 2.3 } };
    expect(applicationFor(heavy, place, shelf).depositUm).toBeCloseTo(10, 12);
    expect(made).toMatchObject({ depositWeighed: true, halftoneFraction: 0.4, smoothed: true });
  });

  it("estimates from the mesh what was not weighed: open area x thickness x 0.6, x 1.4 a stroke, x 0.85 hard", () => {
    const openingUm = 10000 / 120 - 34;
    const volumeUm = (openingUm / (openingUm + 34)) ** 2 * 55;
    const made = applicationFor(estimated, place, shelf);
    expect(made.depositUm).toBeCloseTo(0.6 * volumeUm, 9);
    expect(made.depositWeighed).toBe(false);
    const hard: Shelf = { ...shelf, squeegees: [{ ...shelf.squeegees[0]!, hard: true }] };
    const twice = applicationFor({ ...estimated, strokeCount: 2 }, place, hard);
    expect(twice.depositUm).toBeCloseTo(0.6 * volumeUm * 1.4 * 0.85, 9);
  });

  it("takes 1.6 threads for a thickness that is not given", () => {
    const openingUm = 10000 / 61 - 64;
    const made = applicationFor({ ...weighed, weighed: null }, place, shelf);
    expect(made.depositUm).toBeCloseTo(0.6 * (openingUm / (openingUm + 64)) ** 2 * 1.6 * 64, 9);
  });

  it.each<[string, Shelf, string]>([
    ["mesh-missing", { ...shelf, meshes: [] }, "meshId"],
    ["squeegee-missing", { ...shelf, squeegees: [] }, "squeegeeId"],
    [
      "mesh-without-opening",
      { ...shelf, meshes: shelf.meshes.map((mesh) => ({ ...mesh, threadUm: 90 })) },
      "meshId",
    ],
  ])("has the problem %s told beforehand and throws when it is not heeded", (code, on, where) => {
    expect(applicationProblems(estimated, on)).toMatchObject([{ code, where }]);
    expect(() => applicationFor(estimated, place, on)).toThrow(RangeError);
    expect(applicationProblems(weighed, on)).toEqual([]);
  });

  it("has no problem in the example", () => {
    expect(shelf.setUps.flatMap((setUp) => applicationProblems(setUp, shelf))).toEqual([]);
  });
});
