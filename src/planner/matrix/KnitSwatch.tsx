/** The cloth of a cell, drawn: knit in the garment's colour with the print across it. */
import { useLayoutEffect, useRef } from "react";
import { type KnitTile, knitTile } from "../../artwork/knit.ts";
import { type EdgeForm, printedClothPixels } from "../../artwork/printedCloth.ts";
import type { EvidenceLevel } from "../../core/prediction/prediction.ts";

export const SWATCH_HEIGHT_PX = 72;

export const EDGE_FORMS: Readonly<Record<EvidenceLevel, EdgeForm>> = {
  "this lot": "clean",
  "related prints": "long-dashed",
  "model only": "dotted",
};

interface Props {
  readonly widthPx: number;
  readonly heightPx?: number;
  readonly bareHex: string;
  readonly lightHex: string;
  readonly darkHex: string;
  readonly evidence: EvidenceLevel;
}

/** The tiles by pixel density: a screen has one, two when it is moved to another. */
const tiles = new Map<number, KnitTile>();

function tileFor(pxPerUnit: number): KnitTile {
  const known = tiles.get(pxPerUnit);
  if (known !== undefined) return known;
  const made = knitTile(pxPerUnit);
  tiles.set(pxPerUnit, made);
  return made;
}

/** The words of the cell say what it shows. */
export function KnitSwatch(props: Props) {
  const { widthPx, heightPx = SWATCH_HEIGHT_PX, bareHex, lightHex, darkHex, evidence } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const pxPerUnit = Math.min(2, Math.max(1, Math.round(window.devicePixelRatio || 1)));
  useLayoutEffect(() => {
    const context = canvas.current?.getContext("2d");
    if (!context) return;
    const size = { widthPx: widthPx * pxPerUnit, heightPx: heightPx * pxPerUnit };
    const pixels = printedClothPixels(
      { ...size, pxPerUnit, bareHex, print: { lightHex, darkHex, edge: EDGE_FORMS[evidence] } },
      tileFor(pxPerUnit),
    );
    const image = context.createImageData(size.widthPx, size.heightPx);
    image.data.set(pixels);
    context.putImageData(image, 0, 0);
  }, [widthPx, heightPx, pxPerUnit, bareHex, lightHex, darkHex, evidence]);
  return (
    <span className="knit" aria-hidden="true">
      <canvas
        ref={canvas}
        className="swatch"
        width={widthPx * pxPerUnit}
        height={heightPx * pxPerUnit}
        style={{ width: widthPx, height: heightPx }}
      />
    </span>
  );
}
