/** What a readings file gives: samples as they were read, what has to be asked, and what was noticed on the way. */
import type { IlluminantName, Lab, ObserverName, Tristimulus } from "../../core/colorimetry/viewing.ts";
import type { GeometryDocument } from "../../job/colourDocument.ts";
import type { Problem } from "../../job/problem.ts";

/** A measured spectrum on the grid of every computation (core/spectrum), fit for a colour document. */
export interface ReadSpectrum {
  /** Reflectance factors, 36 bands from 380 to 730 nm, 0..1.5. */
  readonly reflectance: readonly number[];
  /** Codes of what was assumed, as pasted spectra have them: "short-end-extended:380-390". */
  readonly assumptions: readonly string[];
}

/**
 * One measured patch. A light, observer or geometry of null is not stated in the file: it is asked for
 * (`answerAsked`), never assumed.
 */
export interface ReadSample {
  readonly name: string;
  /** Path in the file: tables[0].rows[3], rows[3] or objects[3], counted from 0. */
  readonly where: string;
  /** Line of the file or row of the sheet, counted from 1; null where the format has none. */
  readonly line: number | null;
  readonly lab: Lab | null;
  /** X, Y, Z with Y = 100 for the perfect diffuser: kept only until light and observer are known, then turned into Lab. */
  readonly tristimulus: Tristimulus | null;
  readonly light: IlluminantName | null;
  readonly observer: ObserverName | null;
  readonly geometry: GeometryDocument | null;
  readonly spectrum: ReadSpectrum | null;
}

export type Asked = "light" | "observer" | "geometry";

/**
 * All of a file or nothing of it. One rule for every reader: where anything is wrong with one row, the file is refused
 * and every wrong row is named (the first 50), so that nothing is ever left out unseen. Only what holds no reading at
 * all (an empty line, a table or object of another kind) is passed over, and `warnings` say so.
 */
export type ReadingsResult =
  | {
      readonly ok: true;
      readonly format: ReadingsFormat;
      readonly samples: readonly ReadSample[];
      readonly toAsk: readonly Asked[];
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type ReadingsFormat = "cgats" | "csv" | "cxf3";

/** What somebody answered where a file was silent or unclear. */
export interface ReadingsOptions {
  /** How reflectances are written; null: told by the units or by the size of the file's values. */
  readonly scale: ReflectanceScale | null;
}

export type ReflectanceScale = "fraction" | "percent";

export const NOTHING_ANSWERED: ReadingsOptions = { scale: null };

/** More than this helps nobody; the first ones name the cause. */
export const MOST_PROBLEMS = 50;

/** The file refused for one reason. */
export function refuse(code: string, where: string, values: Problem["values"] = {}): ReadingsResult {
  return { ok: false, problems: [{ code, where, values }] };
}

/** The file refused for all of `problems`. */
export function refuseAll(problems: readonly Problem[]): ReadingsResult {
  return { ok: false, problems: problems.slice(0, MOST_PROBLEMS) };
}
