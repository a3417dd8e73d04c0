/** The words for what a garment is: fibres, finish, yarn, how its bare colour was read. */
import type { ColourDocument, GeometryDocument, ViewingDocument } from "../../job/colourDocument.ts";
import type { BlendPart, Fibre, Finish, GarmentLot } from "../../job/garmentLotDocument.ts";
import { printNumber } from "../controls/typedNumber.ts";

interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

export const FIBRES: readonly Option<Fibre>[] = [
  { value: "cotton", label: "cotton" },
  { value: "polyester", label: "polyester" },
  { value: "viscose", label: "viscose" },
  { value: "nylon", label: "nylon" },
  { value: "elastane", label: "elastane" },
];

export const FINISHES: readonly Option<Finish>[] = [
  { value: "none", label: "none" },
  { value: "wicking", label: "wicking" },
  { value: "softener", label: "softener" },
  { value: "silicone", label: "silicone" },
  { value: "repellent", label: "water repellent" },
];

export const YARNS: readonly Option<GarmentLot["yarn"]>[] = [
  { value: "spun", label: "spun" },
  { value: "filament", label: "filament" },
];

export const ILLUMINANTS: readonly Option<ViewingDocument["illuminant"]>[] = [
  { value: "D65", label: "D65" },
  { value: "D50", label: "D50" },
  { value: "A", label: "A" },
  { value: "F11", label: "F11" },
  { value: "LED", label: "warm LED" },
];

export const OBSERVERS: readonly Option<ViewingDocument["observer"]>[] = [
  { value: "10deg", label: "10°" },
  { value: "2deg", label: "2°" },
];

export const GEOMETRIES: readonly Option<GeometryDocument>[] = [
  { value: "45:0", label: "45:0" },
  { value: "specular-included", label: "gloss included" },
  { value: "specular-excluded", label: "gloss excluded" },
];

/** "50 %" with as many digits as are stored, and a blank that does not break. */
export function percentWords(fraction: number): string {
  return `${printNumber(Number((fraction * 100).toFixed(7)))}\u00a0%`;
}

/** "90 % cotton (undyed), 10 % polyester". */
export function blendWords(blend: readonly BlendPart[]): string {
  return blend
    .map(
      ({ fibre, massFraction, dyed }) => `${percentWords(massFraction)} ${fibre}${dyed ? "" : " (undyed)"}`,
    )
    .join(", ");
}

export function viewingWords({ illuminant, observer }: ViewingDocument): string {
  return `${illuminant === "LED" ? "warm LED" : illuminant}/${observer === "10deg" ? "10°" : "2°"}`;
}

/** A figure of L*, a*, b* as it is read out: one decimal, a true minus sign. */
export function labFigure(value: number): string {
  return value
    .toFixed(1)
    .replace(/^-(0\.0)$/, "$1")
    .replace("-", "\u2212");
}

/** How a bare colour was obtained, in a few words; `viewing` is what a spectrum's figures are computed for. */
export function bareSourceWords(bare: ColourDocument, viewing: ViewingDocument): string {
  if (bare.kind === "hex") return "approximate, from a screen";
  if (bare.kind === "spectrum") return `spectrum, ${viewingWords(viewing)}`;
  const count = bare.readings.length;
  return `${count} ${count === 1 ? "reading" : "readings"}, ${viewingWords(bare.viewing)}`;
}
