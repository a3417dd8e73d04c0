// The band kernel: its committed code, what lies in its memory, and that predictions do without it.
import { readFile } from "node:fs/promises";
import { afterEach, describe, expect, it, vi } from "vitest";
import { assembledKernel, CODE_FILE, kernelModule, TEXT_FILE } from "../../../../scripts/assembledKernel.mjs";
import { bandKernel } from "../../../../src/core/prediction/kernel/bandKernel.ts";
import { addressOf, residentBands } from "../../../../src/core/prediction/kernel/residentBands.ts";
import { wetCloth, workspaceFor } from "../../../../src/core/prediction/printedColour.ts";
import { printedFilm } from "../../../../src/core/prediction/printedFilm.ts";
import { labsOver, lightnessOver, printedLab } from "../../../../src/core/prediction/printedLab.ts";
import { wettableGarment } from "../../../../src/core/prediction/wettableGarment.ts";
import { constantSpectrum } from "../../../../src/core/spectrum/spectrum.ts";
import { GARMENTS, VIEWING } from "../cloths.ts";
import { black, STROKE, tinted } from "../inks.ts";

/** More than the kernel's memory has places for. */
const MANY = 2000;
/** The plain form adds up the bands in another order. */
const LAB_ROUNDING = 1e-9;
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
    const first = residentBands(constantSpectrum(0.25), constantSpectrum(0.75));
    const firstValueOf = (bands: typeof first): number => bandKernel!.numbers[addressOf(bands) / 8]!;
    expect(firstValueOf(first)).toBe(0.25);
    for (let i = 0; i < MANY; i++) expect(firstValueOf(residentBands(constantSpectrum(i)))).toBe(i);
    expect(firstValueOf(first)).toBe(0.25);
    expect(bandKernel!.numbers[addressOf(first) / 8 + 36]).toBe(0.75);
  });

  it("gives the same colours however many spectra came between, wherever its places begin anew", () => {
    const cloth = wettableGarment(GARMENTS["graphite heather, polyester dyed"]!, VIEWING);
    const room = workspaceFor(cloth);
    const films = [0, 0.1, 0.2, 0.3, 0.4].map((tint) => printedFilm(MIX, STROKE, {}, tint));
    const out = new Float64Array(15);
    const colours = (): number[] => {
      wetCloth(room, cloth, films[0]!);
      labsOver(out, room, cloth, films);
      return [...out];
    };
    const first = colours();
    // Bringing in one more each time, the first film meets every place there is.
    for (let i = 0; i < MANY; i++) {
      addressOf(residentBands(constantSpectrum(i)));
      expect(colours()).toEqual(first);
    }
    expect(films.map((film) => lightnessOver(room, cloth, film))).toEqual(
      [0, 3, 6, 9, 12].map((k) => first[k]),
    );
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
});
