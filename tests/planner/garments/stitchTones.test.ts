/** The knit never changes the colour that it is drawn on. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { stitchTones } from "../../../src/planner/garments/stitchTones.ts";

const channels = (hex: string) => [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));

it("keeps the mean of every channel for any colour", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 0xffffff }), (number) => {
      const hex = `#${number.toString(16).padStart(6, "0")}`;
      const { light, dark } = stitchTones(hex);
      expect(light).toMatch(/^#[0-9a-f]{6}$/);
      expect(dark).toMatch(/^#[0-9a-f]{6}$/);
      channels(hex).forEach((channel, i) => {
        expect(((channels(light)[i] ?? -1) + (channels(dark)[i] ?? -1)) / 2).toBe(channel);
      });
    }),
  );
});

it("shows stitches wherever a channel has room", () => {
  expect(stitchTones("#808080")).toEqual({ light: "#8b8b8b", dark: "#757575" });
});
