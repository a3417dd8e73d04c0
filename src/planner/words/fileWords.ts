/** What the columns of a readings file hold, and how it writes reflectances. */
import type { ColumnRole } from "../../exchange/readings/columnNames.ts";
import type { ReflectanceScale } from "../../exchange/readings/readSample.ts";

interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
}

export const COLUMN_ROLES: readonly Option<ColumnRole>[] = [
  { value: "left-out", label: "left out" },
  { value: "name", label: "name of the reading" },
  { value: "L", label: "L*" },
  { value: "a", label: "a*" },
  { value: "b", label: "b*" },
  { value: "X", label: "X" },
  { value: "Y", label: "Y" },
  { value: "Z", label: "Z" },
  { value: "light", label: "light" },
  { value: "observer", label: "observer" },
  { value: "geometry", label: "geometry" },
];

export function columnRoleWords(role: ColumnRole): string {
  if (role.startsWith("nm:")) return `${role.slice(3)}\u00a0nm`;
  return COLUMN_ROLES.find(({ value }) => value === role)?.label ?? role;
}

export const REFLECTANCE_SCALES: readonly Option<ReflectanceScale>[] = [
  { value: "percent", label: "percent, 0 to 100" },
  { value: "fraction", label: "fractions, 0 to 1" },
];
