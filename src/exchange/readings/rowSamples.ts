/** Turns the rows of a table into samples, every cell that is needed read as a number or named as wrong. */
import type { Problem } from "../../job/problem.ts";
import { type ConditionTexts, conditionsFrom } from "./conditions.ts";
import { observerFrom } from "./conditionWords.ts";
import { quoted } from "./limits.ts";
import type { RawSample, RawSpectrum } from "./rawSample.ts";
import type { ReflectanceScale } from "./readSample.ts";
import type { AxisColumns, TableColumns } from "./tableColumns.ts";
import { type DecimalSign, decimalSignOf, writtenNumber } from "./writtenNumber.ts";

export interface TableRow {
  readonly cells: readonly string[];
  readonly line: number;
  readonly where: string;
}

export interface RowSamples {
  readonly samples: readonly RawSample[];
  readonly problems: readonly Problem[];
  readonly warnings: readonly Problem[];
}

/** All columns whose cells have to be numbers. */
export function numberColumns({ lab, tristimulus, spectrum }: TableColumns): number[] {
  const wavelengths = spectrum.flatMap(({ column, nm }) =>
    typeof nm === "number" ? [column] : [nm.column, column],
  );
  return [...(lab ?? []), ...(tristimulus ?? []), ...wavelengths];
}

function* cellsOf(rows: readonly TableRow[], columns: readonly number[]): Generator<string> {
  for (const { cells } of rows) for (const column of columns) yield cells[column] ?? "";
}

/** Percent signs in all of a row's reflectances state the scale. */
function statedScale(columns: TableColumns, cells: readonly string[]): ReflectanceScale | null {
  const signed = columns.spectrum.every(({ column }) => (cells[column] ?? "").trim().endsWith("%"));
  return columns.scale ?? (signed ? "percent" : null);
}

/** The samples of `rows`; `stated` is what the file says for the whole table. */
export function rowSamples(
  rows: readonly TableRow[],
  columns: TableColumns,
  table: number,
  stated: ConditionTexts,
): RowSamples {
  const needed = numberColumns(columns);
  const decimal = decimalSignOf(cellsOf(rows, needed));
  const samples: RawSample[] = [];
  const problems: Problem[] = [];
  const warnings: Problem[] = [];
  const conditionsByText = new Map<string, RawSample["conditions"]>();
  for (const row of rows) {
    const cell = (column: number | null): string => (column === null ? "" : (row.cells[column] ?? ""));
    if (needed.every((column) => cell(column).trim() === "")) {
      const values = { line: row.line, name: quoted(cell(columns.name)) };
      warnings.push({ code: "readings-row-without-readings", where: row.where, values });
      continue;
    }
    const light = cell(columns.light);
    const beside = observerFrom(light) === null ? [] : [light];
    const texts: ConditionTexts = {
      light: [...stated.light, ...columns.stated.light, light],
      observer: [...stated.observer, ...columns.stated.observer, cell(columns.observer), ...beside],
      geometry: [...stated.geometry, ...columns.stated.geometry, cell(columns.geometry)],
    };
    const key = JSON.stringify(texts);
    const conditions = conditionsByText.get(key) ?? conditionsFrom(texts);
    conditionsByText.set(key, conditions);
    const numbers = new RowNumbers(row, columns, decimal);
    const lab = numbers.axes(columns.lab);
    const xyz = numbers.axes(columns.tristimulus);
    const spectrum = numbers.spectrum();
    problems.push(...numbers.problems);
    samples.push({
      name: cell(columns.name).trim(),
      where: row.where,
      line: row.line,
      table,
      lab: lab === null ? null : { L: lab[0], a: lab[1], b: lab[2] },
      tristimulus: xyz === null ? null : { X: xyz[0], Y: xyz[1], Z: xyz[2] },
      spectrum,
      conditions,
    });
  }
  return { samples, problems, warnings };
}

/** Reads the numbers of one row and keeps what is wrong with them. */
class RowNumbers {
  readonly problems: Problem[] = [];

  constructor(
    private readonly row: TableRow,
    private readonly columns: TableColumns,
    private readonly decimal: DecimalSign,
  ) {}

  private number(column: number): number {
    const text = this.row.cells[column] ?? "";
    const found = writtenNumber(text, this.decimal);
    if (found !== null) return found;
    const values = { line: this.row.line, heading: quoted(this.columns.headings[column] ?? "") };
    const { where } = this.row;
    if (text.trim() === "") this.problems.push({ code: "readings-value-missing", where, values });
    else
      this.problems.push({ code: "readings-not-a-number", where, values: { ...values, text: quoted(text) } });
    return Number.NaN;
  }

  private isEmpty(columns: readonly number[]): boolean {
    return columns.every((column) => (this.row.cells[column] ?? "").trim() === "");
  }

  axes(columns: AxisColumns | null): readonly [number, number, number] | null {
    if (columns === null || this.isEmpty(columns)) return null;
    return [this.number(columns[0]), this.number(columns[1]), this.number(columns[2])];
  }

  spectrum(): RawSpectrum | null {
    const { spectrum } = this.columns;
    if (spectrum.length === 0 || this.isEmpty(spectrum.map(({ column }) => column))) return null;
    return {
      wavelengthsNm: spectrum.map(({ nm }) => (typeof nm === "number" ? nm : this.number(nm.column))),
      values: spectrum.map(({ column }) => this.number(column)),
      scale: statedScale(this.columns, this.row.cells),
    };
  }
}
