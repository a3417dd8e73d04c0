// The garments that predictions are tried on: invented colours of the demo's kind, one for every way the model takes.
import { reflectanceFromLab } from "../../../src/core/colorimetry/reconstruct.ts";
import type { Viewing } from "../../../src/core/colorimetry/viewing.ts";
import type { Garment } from "../../../src/core/prediction/inputs.ts";
import type { Spectrum } from "../../../src/core/spectrum/spectrum.ts";

export const VIEWING: Viewing = { illuminant: "D65", observer: "10deg" };

type Fibre = Garment["fibres"][number]["fibre"];
type Blend = readonly (readonly [fibre: Fibre, massFraction: number, dyed?: boolean])[];

export const ALL_COTTON: Blend = [["cotton", 1]];
export const HALF_AND_HALF: Blend = [
  ["polyester-spun", 0.5],
  ["cotton", 0.5],
];
export const TRI_BLEND: Blend = [
  ["polyester-spun", 0.5],
  ["cotton", 0.25],
  ["viscose", 0.25],
];
export const SPUN_POLYESTER: Blend = [["polyester-spun", 1]];
export const FILAMENT_POLYESTER: Blend = [["polyester-filament", 1]];

/** The reconstructed spectrum of a colour. */
export function spectrumOf(lab: readonly [number, number, number], viewing: Viewing = VIEWING): Spectrum {
  const [L, a, b] = lab;
  const found = reflectanceFromLab({ L, a, b }, viewing);
  if (!found.ok) throw new RangeError(`no reflectance has Lab ${lab}: ${found.reason}`);
  return found.spectrum;
}

/** A garment of a colour and a blend; `more` overrides what is not usual. */
export function cloth(
  lab: readonly [number, number, number],
  blend: Blend,
  more: Partial<Garment> = {},
  viewing: Viewing = VIEWING,
): Garment {
  return {
    bare: spectrumOf(lab, viewing),
    bareSource: "reconstructed",
    readUnder: viewing,
    fibres: blend.map(([fibre, massFraction, dyed = true]) => ({ fibre, massFraction, dyed })),
    resistantFinish: false,
    geometry: "45:0",
    ...more,
  };
}

/** Twelve garments by name, the colours and blends of the demo job. */
export const GARMENTS: Readonly<Record<string, Garment>> = {
  "navy cotton": cloth([21.5, 1.5, -14], ALL_COTTON),
  "light grey heather": cloth(
    [72, 0.3, -1],
    [
      ["cotton", 0.9, false],
      ["polyester-spun", 0.1],
    ],
  ),
  "forest 50/50": cloth([30.5, -15, 6.5], HALF_AND_HALF),
  "denim 50/50": cloth([48, -3, -20], HALF_AND_HALF),
  "graphite heather, polyester dyed": cloth(
    [45, 0.4, -1.8],
    [
      ["polyester-spun", 0.5],
      ["cotton", 0.5, false],
    ],
  ),
  "red heather, cotton dyed": cloth(
    [50, 38, 18],
    [
      ["cotton", 0.5],
      ["polyester-spun", 0.5, false],
    ],
  ),
  "denim tri-blend": cloth([42, -2, -18], TRI_BLEND),
  "brick spun polyester": cloth([38, 42, 24], SPUN_POLYESTER),
  "royal filament polyester": cloth([30, 12, -45], FILAMENT_POLYESTER),
  "black filament polyester": cloth([14.5, 0.2, -0.8], FILAMENT_POLYESTER),
  "white filament polyester": cloth([94, 1.2, -4.5], FILAMENT_POLYESTER),
  "slate filament polyester, repellent": cloth([47, -1.5, -6], FILAMENT_POLYESTER, { resistantFinish: true }),
};
