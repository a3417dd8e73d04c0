/** Puts what somebody answered where a file was silent; what the file says is never overwritten. */
import type { Viewing } from "../../core/colorimetry/viewing.ts";
import type { GeometryDocument } from "../../job/colourDocument.ts";
import { withLab } from "./finishSample.ts";
import type { ReadSample } from "./readSample.ts";

export interface Answers {
  readonly light: Viewing["illuminant"] | null;
  readonly observer: Viewing["observer"] | null;
  readonly geometry: GeometryDocument | null;
}

/** The samples with the answers where nothing was stated, XYZ turned into Lab where that is now possible. */
export function answerAsked(samples: readonly ReadSample[], answers: Answers): ReadSample[] {
  return samples.map((sample) =>
    withLab({
      ...sample,
      light: sample.light ?? answers.light,
      observer: sample.observer ?? answers.observer,
      geometry: sample.geometry ?? answers.geometry,
    }),
  );
}

/** The light and observer a sample's Lab stands for; null while either is unknown. */
export function viewingOf({ light, observer }: ReadSample): Viewing | null {
  return light === null || observer === null ? null : { illuminant: light, observer };
}
