/** Which colours this screen can be told: Display P3 where screen and browser both know it, else sRGB. */
import { useSyncExternalStore } from "react";
import type { ScreenGamut } from "../../job/screenColour.ts";

const WIDE = "(color-gamut: p3)";

/** A canvas says itself whether it took the wish for a wide gamut; an old browser says nothing or something else. */
function canvasTakesP3(): boolean {
  try {
    const context = document.createElement("canvas").getContext("2d", { colorSpace: "display-p3" });
    return context?.getContextAttributes?.().colorSpace === "display-p3";
  } catch {
    return false;
  }
}

let canvasAnswer: boolean | null = null;

export function screenGamut(): ScreenGamut {
  if (typeof window.matchMedia !== "function" || !window.matchMedia(WIDE).matches) return "srgb";
  canvasAnswer ??= canvasTakesP3();
  return canvasAnswer ? "display-p3" : "srgb";
}

/** The gamut of the screen that the window is on; it changes when the window is moved to another. */
export function useScreenGamut(): ScreenGamut {
  return useSyncExternalStore((onChange) => {
    if (typeof window.matchMedia !== "function") return () => undefined;
    const list = window.matchMedia(WIDE);
    list.addEventListener("change", onChange);
    return () => list.removeEventListener("change", onChange);
  }, screenGamut);
}

/** #rrggbb of a gamut as a colour for CSS. */
export function cssColour(hex: string, gamut: ScreenGamut): string {
  if (gamut === "srgb") return hex;
  const channel = (at: number) => (Number.parseInt(hex.slice(at, at + 2), 16) / 255).toFixed(4);
  return `color(display-p3 ${channel(1)} ${channel(3)} ${channel(5)})`;
}
