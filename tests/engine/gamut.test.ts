/** A wide screen is told Display P3: what sRGB has to move, it shows as it is. */
import { describe, expect, it } from "vitest";
import { screenColourFromReflectance } from "../../src/core/colorimetry/screenColour.ts";
import type { Garment } from "../../src/core/prediction/inputs.ts";
import { predictDetail, predictPackedMatrix } from "../../src/engine/matrixPrediction.ts";
import { unpackCell } from "../../src/engine/packedCells.ts";
import type { MatrixRequest } from "../../src/engine/protocol.ts";
import { bareScreenColour, type ScreenGamut, shownIn } from "../../src/job/screenColour.ts";
import { GARMENTS, VIEWING } from "../core/prediction/cloths.ts";
import { base, mixOf, STROKE } from "../core/prediction/inks.ts";

const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };

/** Dark below a step near `edgeNm`, light above: a strong orange-red, more saturated than sRGB has. */
const stepSpectrum = (edgeNm: number, low: number, high: number): Float64Array =>
  Float64Array.from({ length: 36 }, (_, band) => {
    const nm = 380 + 10 * band;
    return low + (high - low) / (1 + Math.exp((edgeNm - nm) / 8));
  });

const orange = stepSpectrum(570, 0.02, 0.62);
const garment: Garment = { ...GARMENTS["denim 50/50"]!, bare: orange };
const request = (gamut?: ScreenGamut): MatrixRequest => ({
  rows: [{ lineId: "line", garment }],
  columns: [{ candidateId: "candidate", mix: mixOf(base("curable")), application: STROKE }],
  viewing: VIEWING,
  band: BAND,
  ...(gamut === undefined ? {} : { gamut }),
});
const cellIn = (gamut?: ScreenGamut) =>
  unpackCell(predictPackedMatrix(request(gamut)), 0, "line", "candidate");

describe("a colour outside sRGB and inside Display P3", () => {
  it("is one: the spectrum of the test lies between the two gamuts", () => {
    const colour = screenColourFromReflectance(orange);
    expect(colour.srgbMoved).toBe(true);
    expect(colour.displayP3Moved).toBe(false);
  });

  it("comes through unmarked for a wide screen and marked for the other, the figures the same", () => {
    const [narrow, wide] = [cellIn("srgb"), cellIn("display-p3")];
    expect(narrow.warnings).toContain("screen-colour-moved");
    expect(wide.warnings).not.toContain("screen-colour-moved");
    expect(wide.deltaL).toBe(narrow.deltaL);
    expect(wide.bareHex).not.toBe(narrow.bareHex);
    expect(cellIn()).toEqual(narrow);
  });

  it("carries the channels of its gamut, in the matrix and in the details", () => {
    const { displayP3 } = screenColourFromReflectance(orange);
    const wide = cellIn("display-p3");
    const channels = [1, 3, 5].map((at) => Number.parseInt(wide.bareHex.slice(at, at + 2), 16));
    expect(channels).toEqual(displayP3.map((part) => Math.round(part * 255)));
    const { rows, columns, viewing, band } = request();
    const asked = { row: rows[0]!, column: columns[0]!, viewing, band, tints: [] };
    const detail = predictDetail({ ...asked, gamut: "display-p3" });
    expect(detail.bareHex).toBe(wide.bareHex);
    expect(detail.darkHex).toBe(wide.darkHex);
    expect(detail.screenColourMoved).toBe(false);
    expect(predictDetail(asked).screenColourMoved).toBe(true);
  });

  it("is shown as a garment's bare colour in either gamut", () => {
    const bare = { kind: "spectrum", geometry: "45:0", reflectance: [...orange], assumptions: [] } as const;
    const stored = { ...bare, reflectance: [...bare.reflectance], assumptions: [] };
    expect(bareScreenColour(stored, "srgb").moved).toBe(true);
    const wide = bareScreenColour(stored, "display-p3");
    expect(wide).toEqual(shownIn(screenColourFromReflectance(orange), "display-p3"));
    expect(wide.moved).toBe(false);
  });
});

it("gives a grey the same channels in both gamuts, which share their white and their curve", () => {
  const grey = screenColourFromReflectance(new Float64Array(36).fill(0.2));
  const [narrow, wide] = [shownIn(grey, "srgb").hex, shownIn(grey, "display-p3").hex];
  for (const at of [1, 3, 5]) {
    const step = Number.parseInt(narrow.slice(at, at + 2), 16) - Number.parseInt(wide.slice(at, at + 2), 16);
    expect(Math.abs(step)).toBeLessThanOrEqual(1);
  }
});
