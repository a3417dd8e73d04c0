/** Prints a predicted matrix as JSON or as CSV. */
import type { Lab, Viewing } from "../core/colorimetry/viewing.ts";
import { csvText } from "../exchange/csvText.ts";
import type { Job } from "../job/jobDocument.ts";
import type { MatrixRow } from "./plannedMatrix.ts";

/** Digits of a CSV number: below anything that a colour or a chance is read to. JSON has all digits. */
const CSV_DECIMALS = 4;

/** JSON with every digit; colours as L, a, b under the viewing that it states, deposits in µm. */
export function matrixJson(job: Job, viewing: Viewing, rows: readonly MatrixRow[]): string {
  const { id, number, customer } = job;
  return `${JSON.stringify({ job: { id, number, customer }, viewing, rows }, null, 2)}\n`;
}

function rounded(value: number): number {
  return Number(value.toFixed(CSV_DECIMALS)) + 0;
}

function labColumns(prefix: string, { L, a, b }: Lab): Record<string, number> {
  return { [`${prefix}_L`]: rounded(L), [`${prefix}_a`]: rounded(a), [`${prefix}_b`]: rounded(b) };
}

function csvRow(job: Job, viewing: Viewing, row: MatrixRow): Record<string, string | number> {
  return {
    job: job.number,
    place: row.place,
    garment: row.garment,
    lot: row.lot,
    pieces: row.pieceCount,
    mix: row.mix,
    set_up: row.setUp,
    deposit_um: rounded(row.depositUm),
    deposit_weighed: row.depositWeighed ? "yes" : "no",
    light: viewing.illuminant,
    observer: viewing.observer,
    ...labColumns("bare", row.bare),
    ...labColumns("printed", row.printed),
    delta_L: rounded(row.deltaL),
    delta_E00: rounded(row.deltaE00),
    delta_L_5: rounded(row.deltaL5),
    delta_L_50: rounded(row.deltaL50),
    delta_L_95: rounded(row.deltaL95),
    ...labColumns("printed_5", row.printed5),
    ...labColumns("printed_50", row.printed50),
    ...labColumns("printed_95", row.printed95),
    band_delta_L: rounded(row.bandDeltaL),
    band_tolerance: rounded(row.bandTolerance),
    chance_in_band: rounded(row.chanceInBand),
    evidence: row.evidence,
    warnings: row.warnings.join(" "),
    line_id: row.lineId,
    candidate_id: row.candidateId,
  };
}

/** CSV with a header line and four digits; the columns' units are CIELAB units, µm and fractions. */
export function matrixCsv(job: Job, viewing: Viewing, rows: readonly MatrixRow[]): string {
  return csvText(rows.map((row) => csvRow(job, viewing, row)));
}
