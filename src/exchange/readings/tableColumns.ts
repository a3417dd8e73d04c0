/** Where each figure of a sample stands in the rows of a table. */
import type { Problem } from "../../job/problem.ts";
import { axisOf, type ColourAxis, type ColumnRole, saysPercent } from "./columnNames.ts";
import type { ConditionTexts } from "./conditions.ts";
import { conditionTextsOf } from "./guessRoles.ts";
import { quoted } from "./limits.ts";
import type { ReflectanceScale } from "./readSample.ts";

/** A spectrum's value, at a wavelength from the heading or, in CGATS's SPECTRAL_NM pairs, from a cell of the row. */
export interface SpectrumColumn {
  readonly column: number;
  readonly nm: number | { readonly column: number };
}

export type AxisColumns = readonly [number, number, number];

export interface TableColumns {
  readonly headings: readonly string[];
  readonly name: number | null;
  readonly lab: AxisColumns | null;
  readonly tristimulus: AxisColumns | null;
  readonly spectrum: readonly SpectrumColumn[];
  readonly scale: ReflectanceScale | null;
  readonly light: number | null;
  readonly observer: number | null;
  readonly geometry: number | null;
  /** What the headings of the Lab or XYZ columns say. */
  readonly stated: ConditionTexts;
}

export type ColumnsOrProblems =
  | { readonly ok: true; readonly columns: TableColumns }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const WAVELENGTH = /^nm:(\d{3})$/;

/** Spectral columns that no role can name, since their wavelengths stand in the rows; and the scale they state. */
export interface PairedSpectrum {
  readonly columns: readonly SpectrumColumn[];
  readonly scale: ReflectanceScale;
}

/** The columns of these roles; refused where a figure has two columns, or there is no whole Lab, XYZ or spectrum. */
export function tableColumns(
  headings: readonly string[],
  roles: readonly ColumnRole[],
  where: string,
  paired: PairedSpectrum | null = null,
): ColumnsOrProblems {
  const byRole = new Map<ColumnRole, number>();
  const problems: Problem[] = [];
  for (const [column, role] of roles.entries()) {
    if (role === "left-out") continue;
    if (byRole.has(role)) {
      const values = { heading: quoted(headings[column] ?? ""), role };
      problems.push({ code: "readings-column-twice", where, values });
    } else byRole.set(role, column);
  }
  const axes = (...names: ColourAxis[]): AxisColumns | null => {
    const [first, second, third] = names.map((name) => byRole.get(name));
    if (first === undefined || second === undefined || third === undefined) return null;
    return [first, second, third];
  };
  const lab = axes("L", "a", "b");
  const tristimulus = axes("X", "Y", "Z");
  const spectrum: SpectrumColumn[] = [...(paired?.columns ?? [])];
  for (const [role, column] of byRole) {
    const nm = WAVELENGTH.exec(role)?.[1];
    if (nm !== undefined) spectrum.push({ column, nm: Number(nm) });
  }
  if (problems.length > 0) return { ok: false, problems };
  if (lab === null && tristimulus === null && spectrum.length === 0)
    return { ok: false, problems: [{ code: "readings-no-columns", where }] };
  const saysSo = ({ column }: SpectrumColumn) => saysPercent(headings[column] ?? "");
  const axisHeadings = [...(lab ?? tristimulus ?? [])].map((column) => headings[column] ?? "");
  const conditions = axisHeadings.map((heading) => axisOf(heading)?.conditions ?? "");
  return {
    ok: true,
    columns: {
      headings,
      name: byRole.get("name") ?? null,
      lab,
      tristimulus: lab === null ? tristimulus : null,
      spectrum,
      scale: paired?.scale ?? (spectrum.some(saysSo) ? "percent" : null),
      light: byRole.get("light") ?? null,
      observer: byRole.get("observer") ?? null,
      geometry: byRole.get("geometry") ?? null,
      stated: conditionTextsOf(conditions.find((text) => text !== "") ?? ""),
    },
  };
}
