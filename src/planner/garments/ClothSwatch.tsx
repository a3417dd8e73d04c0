/** A small piece of the bare cloth in its colour: cloth, not a colour card, so it carries the knit. */
import type { CSSProperties } from "react";
import type { ColourDocument } from "../../job/colourDocument.ts";
import { bareScreenColour } from "../../job/screenColour.ts";
import { stitchTones } from "./stitchTones.ts";

function clothStyle(hex: string): CSSProperties {
  const { light, dark } = stitchTones(hex);
  return { backgroundColor: hex, "--stitch-light": light, "--stitch-dark": dark } as CSSProperties;
}

/** The name and the words beside it say what it is; a colour says nothing to a screen reader. */
export function ClothSwatch({ bare }: { readonly bare: ColourDocument }) {
  const { hex } = bareScreenColour(bare);
  return (
    <span
      className="swatch cloth"
      data-approximate={bare.kind === "hex" ? "" : undefined}
      data-unknown={hex === null ? "" : undefined}
      aria-hidden="true"
      style={hex === null ? undefined : clothStyle(hex)}
    >
      {hex === null ? "?" : null}
    </span>
  );
}
