/** What every reader hands on, still as the file says it, before scales, conditions and limits are judged. */
import type { Lab, Tristimulus } from "../../core/colorimetry/viewing.ts";
import type { Conditions } from "./conditions.ts";
import type { ReflectanceScale } from "./readSample.ts";

export interface RawSpectrum {
  readonly wavelengthsNm: readonly number[];
  readonly values: readonly number[];
  /** As the file states it; null where it does not. */
  readonly scale: ReflectanceScale | null;
}

export interface RawSample {
  readonly name: string;
  readonly where: string;
  readonly line: number | null;
  /** Samples of one table are written in one scale. */
  readonly table: number;
  readonly lab: Lab | null;
  readonly tristimulus: Tristimulus | null;
  readonly spectrum: RawSpectrum | null;
  readonly conditions: Conditions;
}
