/** A small piece of the bare cloth in its colour: cloth, not a colour card, so it carries the knit. */
import type { ColourDocument } from "../../job/colourDocument.ts";
import { bareScreenColour } from "../../job/screenColour.ts";
import { KnitCanvas } from "./KnitCanvas.tsx";
import { useScreenGamut } from "./screenGamut.ts";

const SIZE = { widthPx: 72, heightPx: 48 };

/** The name and the words beside it say what it is; a colour says nothing to a screen reader. */
export function ClothSwatch({ bare }: { readonly bare: ColourDocument }) {
  const { hex } = bareScreenColour(bare, useScreenGamut());
  return (
    <span
      className="cloth"
      data-approximate={bare.kind === "hex" ? "" : undefined}
      data-unknown={hex === null ? "" : undefined}
      aria-hidden="true"
    >
      {hex === null ? "?" : <KnitCanvas {...SIZE} bareHex={hex} print={null} whenSeen />}
    </span>
  );
}
