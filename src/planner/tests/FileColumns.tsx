/** Which column of a plain table holds what: as its headings suggest or as the shop remembers, put right by hand. */
import type { ColumnRole } from "../../exchange/readings/columnNames.ts";
import type { ColumnMatching } from "../../exchange/readings/csvColumns.ts";
import type { ReflectanceScale } from "../../exchange/readings/readSample.ts";
import { Choice } from "../controls/Choice.tsx";
import { COLUMN_ROLES, columnRoleWords, REFLECTANCE_SCALES } from "../words/fileWords.ts";

interface Props {
  readonly matching: ColumnMatching;
  readonly rememberedName: string | null;
  readonly isOpen: boolean;
  readonly scale: ReflectanceScale | null;
  readonly onMatch: (matching: ColumnMatching) => void;
  readonly onScale: (scale: ReflectanceScale | null) => void;
}

/** A column's own wavelength stays among its choices. */
const optionsFor = (role: ColumnRole) =>
  COLUMN_ROLES.some(({ value }) => value === role)
    ? COLUMN_ROLES
    : [{ value: role, label: columnRoleWords(role) }, ...COLUMN_ROLES];

export function FileColumns({ matching, rememberedName, isOpen, scale, onMatch, onScale }: Props) {
  const spectral = matching.columns.filter(({ role }) => role.startsWith("nm:"));
  const others = matching.columns.flatMap((column, index) =>
    column.role.startsWith("nm:") ? [] : [{ ...column, index }],
  );
  return (
    <details className="tests__more" open={isOpen}>
      <summary>
        {rememberedName === null
          ? "Columns, as their headings suggest"
          : `Columns, as remembered from ${rememberedName}`}
      </summary>
      {spectral.length > 0 && (
        <p>
          {spectral.length} columns of a spectrum, {columnRoleWords(spectral[0]?.role ?? "left-out")} to{" "}
          {columnRoleWords(spectral.at(-1)?.role ?? "left-out")}.
        </p>
      )}
      <div className="fields">
        {spectral.length > 0 && (
          <Choice
            label="Reflectances are written as"
            value={scale ?? ""}
            options={[{ value: "", label: "as the values suggest" }, ...REFLECTANCE_SCALES]}
            onChange={(value) => onScale(value === "" ? null : value)}
          />
        )}
        {others.map(({ heading, role, index }) => (
          <Choice
            key={`${index} ${heading}`}
            label={heading === "" ? `Column ${index + 1}` : heading}
            value={role}
            options={optionsFor(role)}
            onChange={(value) =>
              onMatch({
                ...matching,
                columns: matching.columns.map((column, i) =>
                  i === index ? { ...column, role: value } : column,
                ),
              })
            }
          />
        ))}
      </div>
    </details>
  );
}
