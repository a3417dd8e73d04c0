// The band kernel: its committed code, what lies in its memory, and that predictions do without it.
import { readFile } from "node:fs/promises";
import { afterEach, describe, expect, it, vi } from "vitest";
import { assembledKernel, CODE_FILE, kernelModule, TEXT_FILE } from "../../../../scripts/assembledKernel.mjs";
import { compress } from "../../../../src/core/colorimetry/cielab.ts";
import { compressSums, luminancePlane } from "../../../../src/core/prediction/colourPlanes.ts";
import { sumRow } from "../../../../src/core/prediction/colourSums.ts";
import { filmRow } from "../../../../src/core/prediction/filmRow.ts";
import { bandKernel } from "../../../../src/core/prediction/kernel/bandKernel.ts";
import { addressOf, residentBands } from "../../../../src/core/prediction/kernel/residentBands.ts";
import { printableInk } from "../../../../src/core/prediction/printableInk.ts";
import { workspaceFor } from "../../../../src/core/prediction/printedColour.ts";
import { printedFilm } from "../../../../src/core/prediction/printedFilm.ts";
import { lightnessOver, printedLab } from "../../../../src/core/prediction/printedLab.ts";
import { spreadOf } from "../../../../src/core/prediction/spread.ts";
import { wettableGarment } from "../../../../src/core/prediction/wettableGarment.ts";
import { constantSpectrum } from "../../../../src/core/spectrum/spectrum.ts";
import { GARMENTS, VIEWING } from "../cloths.ts";
import { base, black, mixOf, navy, SOFT_WHITE, STROKE, tinted } from "../inks.ts";

/** More than the kernel's memory has places for. */
const MANY = 2000;
/** The plain form adds up the bands in another order. */
const LAB_ROUNDING = 1e-9;
/** Two steps of Halley's method from 6 % off. */
const F_ROUNDING = 1e-12;
/** A surface is fitted through nodes that carry both. */
const SPREAD_ROUNDING = 1e-8;
const BAND = { deltaL: -4, tolerance: 1.5, hueLimit: 2 };
const MIX = tinted("curable", black, 0.005);

afterEach(() => {
  vi.unstubAllGlobals();
  vi.resetModules();
});

describe("the band kernel", () => {
  it("is committed as its text assembles to", async () => {
    const code = await assembledKernel(await readFile(TEXT_FILE, "utf8"));
    expect(await readFile(CODE_FILE, "utf8")).toBe(kernelModule(code));
  });

  it("runs here, so that the tests of fused loops test it", () => {
    expect(bandKernel).not.toBeNull();
  });

  it("brings spectra in again once newer ones have taken their place", () => {
    const first = residentBands([constantSpectrum(0.25), constantSpectrum(0.75)], 2);
    const firstValueOf = (bands: typeof first): number => bandKernel!.numbers[addressOf(bands) / 8]!;
    expect(firstValueOf(first)).toBe(0.25);
    for (let i = 0; i < MANY; i++) expect(firstValueOf(residentBands([constantSpectrum(i)]))).toBe(i);
    expect(firstValueOf(first)).toBe(0.25);
    expect([2, 3, 4].map((i) => bandKernel!.numbers[addressOf(first) / 8 + i])).toEqual([0.75, 0.75, 0.25]);
  });

  it("gives the same sums however many spectra came between, wherever its places begin anew", () => {
    const cloth = wettableGarment(GARMENTS["graphite heather, polyester dyed"]!, VIEWING);
    const room = workspaceFor(cloth);
    const films = [0, 0.1, 0.2, 0.3, 0.4].map((tint) => printedFilm(MIX, STROKE, {}, tint));
    const row = filmRow(films);
    const strengths = Float64Array.of(0.5, 1);
    const { y } = room.spread.colours;
    const sums = (): number[] => {
      sumRow(room, cloth, row, 0, 5, strengths, 0.02);
      return [...y.sums.subarray(0, 10)];
    };
    const first = sums();
    // Bringing in one more each time, the films meet every place there is.
    for (let i = 0; i < MANY; i++) {
      addressOf(residentBands([constantSpectrum(i)]));
      expect(sums()).toEqual(first);
    }
    sumRow(room, cloth, row, 3, 1, strengths, 0.02);
    expect([y.sums[0], y.sums[1]]).toEqual([first[3], first[8]]);
  });

  it("takes f of CIELAB to the last digits, straight part and all", () => {
    const plane = luminancePlane();
    const ratios = Float64Array.from({ length: 64 }, (_, i) => (i < 20 ? (i - 2) * 0.0008 : 1.3 ** (i - 60)));
    plane.sums.set(ratios);
    compressSums(plane, 64);
    for (const [i, ratio] of ratios.entries()) {
      expect(Math.abs(plane.sums[i]! - compress(ratio))).toBeLessThan(F_ROUNDING);
    }
  });

  it("keeps garments apart whose predictions alternate", () => {
    const ready = Object.values(GARMENTS).map((garment) => wettableGarment(garment, VIEWING));
    const film = printedFilm(MIX, STROKE);
    const rooms = ready.map(workspaceFor);
    const apart = ready.map((cloth) => printedLab(workspaceFor(cloth), cloth, film).L);
    for (const [i, cloth] of ready.entries()) printedLab(rooms[i]!, cloth, film);
    expect(ready.map((cloth, i) => lightnessOver(rooms[i]!, cloth, film))).toEqual(apart);
  });

  it.each([
    ["no WebAssembly", undefined],
    [
      "a page that forbids it",
      {
        Module: class {
          constructor() {
            throw new Error("blocked by a content security policy");
          }
        },
        Instance: class {},
      },
    ],
  ])("is done without where there is %s, to the same colours", async (_, host) => {
    vi.stubGlobal("WebAssembly", host);
    vi.resetModules();
    const kernel = await import("../../../../src/core/prediction/kernel/bandKernel.ts");
    const plain = await import("../../../../src/core/prediction/printedLab.ts");
    expect(kernel.bandKernel).toBeNull();
    const film = printedFilm(MIX, STROKE);
    for (const garment of Object.values(GARMENTS)) {
      const cloth = wettableGarment(garment, VIEWING);
      const room = workspaceFor(cloth);
      const without = plain.printedLab(room, cloth, film);
      const withIt = printedLab(room, cloth, film);
      expect(Math.abs(without.L - withIt.L)).toBeLessThan(LAB_ROUNDING);
      expect(Math.abs(without.a - withIt.a)).toBeLessThan(LAB_ROUNDING);
      expect(Math.abs(without.b - withIt.b)).toBeLessThan(LAB_ROUNDING);
      expect(Math.abs(plain.lightnessOver(room, cloth, film) - withIt.L)).toBeLessThan(LAB_ROUNDING);
    }
  });

  it("is done without to the same spreads, whatever is laid on whatever", async () => {
    vi.stubGlobal("WebAssembly", undefined);
    vi.resetModules();
    const plain = {
      ...(await import("../../../../src/core/prediction/spread.ts")),
      ...(await import("../../../../src/core/prediction/printedColour.ts")),
      ...(await import("../../../../src/core/prediction/printableInk.ts")),
      ...(await import("../../../../src/core/prediction/wettableGarment.ts")),
    };
    const white = GARMENTS["white filament polyester"]!;
    const clothes = [
      ...Object.values(GARMENTS),
      { ...GARMENTS["denim 50/50"]!, geometry: "specular-included" as const },
      { ...white, bare: constantSpectrum(0.8).fill(1.1, 6, 12) },
      { ...white, bare: constantSpectrum(0.4) },
    ];
    const mixes = [mixOf(base("gloss")), mixOf(base("matt")), MIX, tinted("matt", navy, 0.01), SOFT_WHITE];
    for (const garment of clothes) {
      for (const [m, mix] of mixes.entries()) {
        const application = { ...STROKE, halftoneFraction: m === 2 ? 0.6 : 1, smoothed: m === 3 };
        const [without, withIt] = [plain, { spreadOf, workspaceFor, printableInk, wettableGarment }].map(
          (by) => {
            const cloth = by.wettableGarment(garment, VIEWING);
            const { chanceInBand, deltaL5, deltaL50, deltaL95 } = by.spreadOf(
              by.workspaceFor(cloth),
              cloth,
              by.printableInk(mix, application),
              BAND,
            );
            return [chanceInBand, deltaL5, deltaL50, deltaL95];
          },
        );
        for (let i = 0; i < 4; i++)
          expect(Math.abs(without![i]! - withIt![i]!)).toBeLessThan(SPREAD_ROUNDING);
      }
    }
  });
});
