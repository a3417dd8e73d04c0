/** Between the screen's 8-bit channels and linear light (IEC 61966-2-1), by tables: a swatch has a hundred thousand pixels. */

const STEPS = 1 << 14;

function decoded(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
}

function encoded(light: number): number {
  return light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
}

const encodedByStep = Uint8ClampedArray.from({ length: STEPS + 1 }, (_, step) =>
  Math.round(255 * encoded(step / STEPS)),
);

/** Linear light 0..1 of a channel 0..255. */
export function lightFromChannel(channel: number): number {
  return decoded(channel / 255);
}

/** The channel 0..255 of linear light; light outside 0..1 is what a screen makes of it: none, or full. */
export function channelFromLight(light: number): number {
  if (light <= 0) return 0;
  return encodedByStep[light >= 1 ? STEPS : (light * STEPS + 0.5) | 0]!;
}

/** Linear light of `#rrggbb`. @throws RangeError where `hex` has another form. */
export function lightFromHex(hex: string): readonly [number, number, number] {
  if (!/^#[0-9a-f]{6}$/i.test(hex)) throw new RangeError(`hex must be #rrggbb; got ${JSON.stringify(hex)}`);
  const light = (at: number) => lightFromChannel(Number.parseInt(hex.slice(at, at + 2), 16));
  return [light(1), light(3), light(5)];
}
