/** The conditions of a reading as a file's own words state them: known, of another kind, unclear, or not stated. */
import type { IlluminantName, ObserverName } from "../../core/colorimetry/viewing.ts";
import type { GeometryDocument } from "../../job/colourDocument.ts";
import { geometryFrom, lightFrom, observerFrom } from "./conditionWords.ts";
import { quoted } from "./limits.ts";
import type { Asked } from "./readSample.ts";

/** All texts of a file, table or row that speak of each condition. */
export interface ConditionTexts {
  readonly light: readonly string[];
  readonly observer: readonly string[];
  readonly geometry: readonly string[];
}

export interface Conditions {
  readonly light: IlluminantName | null;
  /** A standard light that is stated and that we do not compute with; null where there is none. */
  readonly otherLight: string | null;
  readonly observer: ObserverName | null;
  readonly geometry: GeometryDocument | null;
  /** What was said and not understood, so that it has to be asked. */
  readonly unclear: readonly { readonly what: Asked; readonly text: string }[];
  /** What two texts state differently. */
  readonly contradicts: readonly Asked[];
}

export const NOTHING_STATED: ConditionTexts = { light: [], observer: [], geometry: [] };

/** The one value that texts agree on; `undefined` among several different ones. */
function agreed<Value>(values: readonly Value[]): Value | null | undefined {
  const different = new Set(values);
  if (different.size > 1) return undefined;
  return values[0] ?? null;
}

const isSaid = (text: string): boolean => text.trim() !== "";

/** What the texts state together. Texts that are not understood never outvote one that is. */
export function conditionsFrom(texts: ConditionTexts): Conditions {
  const unclear: { what: Asked; text: string }[] = [];
  const contradicts: Asked[] = [];
  const settle = <Value>(what: Asked, found: readonly (Value | null)[], said: readonly string[]) => {
    const understood = found.filter((value) => value !== null);
    const value = agreed(understood);
    if (value === undefined) contradicts.push(what);
    if (understood.length === 0 && said.length > 0) unclear.push({ what, text: quoted(said[0] ?? "") });
    return value ?? null;
  };
  const lightTexts = texts.light.filter(isSaid);
  const lightWords = lightTexts.map(lightFrom);
  const names = lightWords.map((word) =>
    word?.kind === "known" ? word.light : word?.kind === "other" ? word.text : null,
  );
  const light = settle<string>("light", names, lightTexts);
  const known = lightWords.find((word) => word?.kind === "known");
  const observerTexts = texts.observer.filter(isSaid);
  const geometryTexts = texts.geometry.filter(isSaid);
  return {
    light: known?.kind === "known" && light !== null ? known.light : null,
    otherLight: known === undefined ? light : null,
    observer: settle("observer", observerTexts.map(observerFrom), observerTexts),
    geometry: settle("geometry", geometryTexts.map(geometryFrom), geometryTexts),
    unclear,
    contradicts,
  };
}
