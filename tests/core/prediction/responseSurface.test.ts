// What a spread is read from, groups of bands and a surface through few nodes, against the exact model.
import { describe, expect, it } from "vitest";
import { groupMeans, groupSums } from "../../../src/core/prediction/bandGroups.ts";
import { cellResponse, lightnessAt } from "../../../src/core/prediction/cellResponse.ts";
import { compressSums } from "../../../src/core/prediction/colourPlanes.ts";
import { sumRow, tieSums } from "../../../src/core/prediction/colourSums.ts";
import { printableInk } from "../../../src/core/prediction/printableInk.ts";
import { wetCloth, workspaceFor } from "../../../src/core/prediction/printedColour.ts";
import { printedFilm } from "../../../src/core/prediction/printedFilm.ts";
import { lightnessOver, tristimulusOver } from "../../../src/core/prediction/printedLab.ts";
import { wettableGarment } from "../../../src/core/prediction/wettableGarment.ts";
import { constantSpectrum } from "../../../src/core/spectrum/spectrum.ts";
import { GARMENTS, VIEWING } from "./cloths.ts";
import { black, navy, red, STROKE, tinted } from "./inks.ts";
import { GRID_MIXES } from "./spreadGrid.ts";

const STRONG = { mix: tinted("curable", navy, 0.04), depositUm: 20 };
const MIXES = [
  ...Object.values(GRID_MIXES),
  STRONG,
  { mix: tinted("curable", red, 0.02), depositUm: 20 },
  { mix: tinted("curable", black, 0.02), depositUm: 20 },
];
const STEPS = [-2, -1, 0, 1, 2];
/** In L*, within two standard deviations. */
const GROUPS_MISS = 0.05;
const SURFACE_MISS = 0.06;

const cells = Object.entries(GARMENTS).flatMap(([name, garment]) =>
  MIXES.flatMap(({ mix, depositUm }) =>
    [true, false].map((depositWeighed) => {
      const cloth = wettableGarment(garment, VIEWING);
      const application = { ...STROKE, depositUm, depositWeighed };
      return {
        name,
        cloth,
        mix,
        application,
        room: workspaceFor(cloth),
        ink: printableInk(mix, application),
      };
    }),
  ),
);

describe("what a spread is read from", () => {
  it("is within 0.05 L* by groups of bands, once tied to the colour that all bands give", () => {
    for (const { name, cloth, room, ink } of cells) {
      const { film, row } = ink;
      const { doubt } = cellResponse(room, cloth, ink, 2);
      const { colours } = room.spread;
      wetCloth(room, cloth, film);
      const centre = tristimulusOver(room, cloth, film);
      sumRow(room, cloth, row, 0, 1, Float64Array.of(film.wetOutStrength), film.closedFraction);
      tieSums(colours, cloth, film, centre);
      for (const step of STEPS) {
        const strengths = Float64Array.of(film.wetOutStrength * Math.exp(step * doubt.wetOutSd));
        sumRow(room, cloth, row, 0, row.films.length, strengths, film.closedFraction);
        compressSums(colours.y, row.films.length);
        const byGroups = Array.from(colours.y.sums.slice(0, row.films.length), (f) => 116 * f - 16);
        row.films.forEach((one, f) => {
          // the film without its tint is not tied to the print's colour
          if (ink.hasTint && f === ink.nodesAt) return;
          wetCloth(room, cloth, one, step * doubt.wetOutSd);
          expect(Math.abs(byGroups[f]! - lightnessOver(room, cloth, one)), name).toBeLessThan(GROUPS_MISS);
        });
      }
    }
  });

  it("is within 0.06 L* on the surface through its nodes, steep reds and a strong tint included", () => {
    for (const { name, cloth, mix, application, room, ink } of cells) {
      const response = cellResponse(room, cloth, ink, 2);
      const { wetOutSd, tintSd } = response.doubt;
      for (const wet of STEPS) {
        for (const tint of ink.hasTint ? STEPS : [0]) {
          if (Math.hypot(wet, tint) > 2) continue;
          const film = printedFilm(mix, application, {}, Math.exp(tint * tintSd));
          wetCloth(room, cloth, film, wet * wetOutSd);
          const miss =
            lightnessOver(room, cloth, film) - lightnessAt(response, wet * wetOutSd, tint * tintSd);
          expect(Math.abs(miss), name).toBeLessThan(SURFACE_MISS);
        }
      }
    }
  });

  it("keeps the total of weights and the mean of what is even", () => {
    const { y } = wettableGarment(GARMENTS["denim 50/50"]!, VIEWING).weights;
    expect(groupSums(y).reduce((sum, value) => sum + value, 0)).toBeCloseTo(100, 9);
    for (const mean of groupMeans(constantSpectrum(0.3))) expect(mean).toBeCloseTo(0.3, 12);
  });
});
