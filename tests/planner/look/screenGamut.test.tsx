/** A screen is told Display P3 only where it says it is wide and the canvas says it took the wish. */
import { afterEach, beforeEach, expect, it, vi } from "vitest";

const answers = { isWide: true, colorSpace: "display-p3" as string | undefined };

beforeEach(() => {
  vi.resetModules();
  answers.isWide = true;
  answers.colorSpace = "display-p3";
  window.matchMedia = ((query: string) => ({
    matches: query === "(color-gamut: p3)" && answers.isWide,
  })) as unknown as typeof window.matchMedia;
  vi.spyOn(HTMLCanvasElement.prototype, "getContext").mockImplementation((() =>
    answers.colorSpace === undefined
      ? {}
      : {
          getContextAttributes: () => ({ colorSpace: answers.colorSpace }),
        }) as unknown as HTMLCanvasElement["getContext"]);
});

afterEach(() => {
  vi.restoreAllMocks();
});

/** The answer of the canvas is kept for the page's life, so every test asks a fresh page. */
const gamutNow = async () => (await import("../../../src/planner/look/screenGamut.ts")).screenGamut();

it("is Display P3 on a wide screen whose canvas takes it", async () => {
  expect(await gamutNow()).toBe("display-p3");
});

it("is sRGB on a screen that is not wide", async () => {
  answers.isWide = false;
  expect(await gamutNow()).toBe("srgb");
});

it("is sRGB where the canvas stays with sRGB, or does not say", async () => {
  answers.colorSpace = "srgb";
  expect(await gamutNow()).toBe("srgb");
  vi.resetModules();
  answers.colorSpace = undefined;
  expect(await gamutNow()).toBe("srgb");
});

it("writes a colour for CSS in its gamut", async () => {
  const { cssColour } = await import("../../../src/planner/look/screenGamut.ts");
  expect(cssColour("#ff8000", "srgb")).toBe("#ff8000");
  expect(cssColour("#ff8000", "display-p3")).toBe("color(display-p3 1.0000 0.5020 0.0000)");
});
