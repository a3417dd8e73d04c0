/** Figures of meshes and set-ups: those of the core's geometry, with what is estimated said so. */
import { describe, expect, it } from "vitest";
import { changeShelfItem } from "../../src/job/edits/shelf.ts";
import { depositFigures, meshFigures } from "../../src/job/meshFigures.ts";
import { exampleDocuments, ids } from "./exampleDocuments.ts";

describe("a mesh's figures", () => {
  it("follow from its label by hand: 61 threads/cm of 64 um", () => {
    const figures = meshFigures({ threadsPerCm: 61, threadUm: 64, thicknessUm: null })!;
    // 10000/61 - 64 = 99.93; (99.93/163.93)^2 = 0.3716; 1.6 x 64 = 102.4; 0.3716 x 102.4 = 38.05
    expect(figures.openingUm).toBeCloseTo(99.93, 2);
    expect(figures.openAreaFraction).toBeCloseTo(0.3716, 4);
    expect(figures.thicknessUm).toBeCloseTo(102.4, 9);
    expect(figures.thicknessEstimated).toBe(true);
    expect(figures.volumeUm).toBeCloseTo(38.05, 2);
  });

  it("take a thickness that was entered", () => {
    const figures = meshFigures({ threadsPerCm: 61, threadUm: 64, thicknessUm: 100 })!;
    expect([figures.thicknessUm, figures.thicknessEstimated]).toEqual([100, false]);
    expect(figures.volumeUm).toBeCloseTo(37.16, 2);
  });

  it("are none where the threads leave no opening", () => {
    expect(meshFigures({ threadsPerCm: 100, threadUm: 100, thicknessUm: null })).toBeNull();
  });
});

describe("a set-up's film", () => {
  const { shelf } = exampleDocuments().library;

  it("is the weighed one, for the colour and for the ink to mix", () => {
    expect(depositFigures(shelf.setUps[0]!, shelf)).toEqual({
      ok: true,
      depositUm: 20,
      weighed: true,
      inkToMixUm: 20,
    });
  });

  it("is estimated from the mesh otherwise, and mixed for at full transfer", () => {
    const found = depositFigures(shelf.setUps[1]!, shelf);
    // 120-34: opening 49.33, open area 0.3505, thickness 55: 19.28 um; six tenths of it are 11.57
    expect(found).toMatchObject({ ok: true, weighed: false });
    expect(found.ok && found.depositUm).toBeCloseTo(11.57, 2);
    expect(found.ok && found.inkToMixUm).toBeCloseTo(19.28, 2);
  });

  it("takes the shop's own transfer while it is not weighed, and is mixed for as before", () => {
    const change = { transferFraction: 0.45 };
    const own = changeShelfItem(exampleDocuments(), "setUps", ids.otherSetUp, change).library.shelf;
    const found = depositFigures(own.setUps[1]!, own);
    // 0.45 of 19.28 um is 8.67
    expect(found.ok && found.depositUm).toBeCloseTo(8.67, 2);
    expect(found.ok && found.inkToMixUm).toBeCloseTo(19.28, 2);
  });

  it("has no figure where the mesh has no opening, and says why", () => {
    const closed = changeShelfItem(exampleDocuments(), "meshes", ids.fineMesh, { threadUm: 90 }).library
      .shelf;
    expect(depositFigures(closed.setUps[1]!, closed)).toMatchObject({
      ok: false,
      problems: [{ code: "mesh-without-opening" }],
    });
  });
});
