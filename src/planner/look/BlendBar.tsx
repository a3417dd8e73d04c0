/** The blend as a bar: a part's length is its share; dyed fibre is filled, undyed fibre is hatched. */
import type { BlendPart } from "../../job/garmentLotDocument.ts";

/** For the eye only; the words beside it say the same. */
export function BlendBar({ blend }: { readonly blend: readonly BlendPart[] }) {
  let start = 0;
  return (
    <span className="blend-bar" aria-hidden="true">
      {blend.map((part) => {
        const left = start;
        start += part.massFraction;
        return (
          <span
            key={left}
            className="blend-bar__part"
            data-dyed={part.dyed ? "yes" : "no"}
            style={{ width: `${part.massFraction * 100}%` }}
          />
        );
      })}
    </span>
  );
}
