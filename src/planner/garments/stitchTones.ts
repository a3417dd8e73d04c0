/** The two tones of the knit's stitches: as much lighter as darker in every channel, so that the mean stays the cloth's. */

/** Deep enough to read as cloth, flat enough not to hide the colour. Invented default. */
const DEPTH = 11;

/** `hex` as #rrggbb; where a channel has less room than the depth, both tones move by that room only. */
export function stitchTones(hex: string): { readonly light: string; readonly dark: string } {
  const channels = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  const moved = (sign: 1 | -1) =>
    channels
      .map((channel) => channel + sign * Math.min(DEPTH, channel, 255 - channel))
      .map((channel) => channel.toString(16).padStart(2, "0"))
      .join("");
  return { light: `#${moved(1)}`, dark: `#${moved(-1)}` };
}
