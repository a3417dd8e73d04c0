// The part of the registry's spectral.js 3.0.0 that the cross-check uses; the package ships no types.
declare module "spectral.js" {
  export class Color {
    /** 38 reflectances, 380-750 nm in 10 nm steps, or a colour as #rrggbb. */
    constructor(reflectance: number[] | string);
    readonly sRGB: number[];
    readonly R: number[];
    readonly KS: number[];
    readonly luminance: number;
    readonly tintingStrength: number;
  }
  export function mix(...parts: [Color, number][]): Color;
}
