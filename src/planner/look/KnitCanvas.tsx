/** A piece of cloth, drawn: knit in the garment's colour, bare or with a print across it. */
import { type RefObject, useEffect, useLayoutEffect, useRef, useState } from "react";
import { type KnitTile, knitTile } from "../../artwork/knit.ts";
import { type PrintedClothPicture, printedClothPixels } from "../../artwork/printedCloth.ts";
import { useScreenGamut } from "./screenGamut.ts";

interface Props {
  readonly widthPx: number;
  readonly heightPx: number;
  /** The colours are #rrggbb of the screen's gamut, see `useScreenGamut`. */
  readonly bareHex: string;
  readonly print: PrintedClothPicture["print"];
  /** Drawn only once it comes near the window: for long tables. */
  readonly whenSeen?: boolean;
}

/** So far outside the window a cloth is drawn already, to be there when it is scrolled to. */
const NEAR_PX = 400;

/** The tiles by pixel density: a screen has one, two when it is moved to another. */
const tiles = new Map<number, KnitTile>();

function tileFor(pxPerUnit: number): KnitTile {
  const known = tiles.get(pxPerUnit);
  if (known !== undefined) return known;
  const made = knitTile(pxPerUnit);
  tiles.set(pxPerUnit, made);
  return made;
}

function useSeen(canvas: RefObject<HTMLCanvasElement | null>, whenSeen: boolean): boolean {
  const [isSeen, setSeen] = useState(!whenSeen || typeof IntersectionObserver === "undefined");
  useEffect(() => {
    if (isSeen || canvas.current === null) return;
    const observer = new IntersectionObserver(
      (entries) => {
        if (entries.some(({ isIntersecting }) => isIntersecting)) setSeen(true);
      },
      { rootMargin: `${NEAR_PX}px` },
    );
    observer.observe(canvas.current);
    return () => observer.disconnect();
  }, [isSeen, canvas]);
  return isSeen;
}

/** For the eye only: the words beside it say what it shows. */
export function KnitCanvas({ widthPx, heightPx, bareHex, print, whenSeen = false }: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const isSeen = useSeen(canvas, whenSeen);
  const gamut = useScreenGamut();
  const pxPerUnit = Math.min(2, Math.max(1, Math.round(window.devicePixelRatio || 1)));
  const { lightHex = null, darkHex = null, edge = null } = print ?? {};
  useLayoutEffect(() => {
    if (!isSeen) return;
    const context = canvas.current?.getContext("2d", { colorSpace: gamut });
    if (!context) return;
    const size = { widthPx: widthPx * pxPerUnit, heightPx: heightPx * pxPerUnit };
    const crossing =
      lightHex === null || darkHex === null || edge === null ? null : { lightHex, darkHex, edge };
    const pixels = printedClothPixels({ ...size, pxPerUnit, bareHex, print: crossing }, tileFor(pxPerUnit));
    const image = context.createImageData(size.widthPx, size.heightPx, { colorSpace: gamut });
    image.data.set(pixels);
    context.putImageData(image, 0, 0);
  }, [widthPx, heightPx, pxPerUnit, bareHex, lightHex, darkHex, edge, gamut, isSeen]);
  return (
    <span className="knit" aria-hidden="true">
      <canvas
        // A canvas keeps the gamut that it was first asked for.
        key={gamut}
        ref={canvas}
        className="swatch"
        width={widthPx * pxPerUnit}
        height={heightPx * pxPerUnit}
        style={{ width: widthPx, height: heightPx }}
      />
    </span>
  );
}
