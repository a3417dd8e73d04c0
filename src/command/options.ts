/** Reads the command line of `npm run plan`. */
import { parseArgs } from "node:util";
import { isDay } from "../job/calendarDay.ts";

/** What is asked of the job besides its matrix. */
export type Question =
  | { readonly kind: "matrix" }
  | { readonly kind: "mixes"; readonly place: string | null }
  | { readonly kind: "tests"; readonly today: string }
  | {
      readonly kind: "recover";
      /** Change of L* of the first-off; null: the record book has it. */
      readonly deltaL: number | null;
      readonly pairCount: number;
      readonly line: string | null;
      readonly place: string | null;
      readonly halftonesAllowed: boolean;
    };

export interface Options {
  readonly file: string;
  readonly format: "json" | "csv";
  readonly question: Question;
}

export const USAGE =
  "npm run plan -- FILE [--csv] [--mixes [--place P] | --tests [--today YYYY-MM-DD] | --recover DELTA_L|recorded --line L [--place P] [--pairs N] [--halftones]]";

/** The word for a first-off that stands in the record book already. */
const RECORDED = "recorded";
/** Pairs of a first-off unless said (common practice, no source). */
const USUAL_PAIRS = 4;

const PARSED = {
  csv: { type: "boolean" },
  mixes: { type: "boolean" },
  tests: { type: "boolean" },
  recover: { type: "string" },
  place: { type: "string" },
  line: { type: "string" },
  pairs: { type: "string" },
  halftones: { type: "boolean" },
  today: { type: "string" },
} as const;

/** An option that belongs to another question. */
const BELONGS: Readonly<Record<string, readonly Question["kind"][]>> = {
  place: ["mixes", "recover"],
  line: ["recover"],
  pairs: ["recover"],
  halftones: ["recover"],
  today: ["tests"],
};

/** `--recover -8.1` is a value, not an option: joined, so that a minus is not taken for one. */
function joined(args: readonly string[]): string[] {
  const at = args.indexOf("--recover");
  const value = args[at + 1];
  if (at < 0 || value === undefined || !/^-[\d.,]/.test(value)) return [...args];
  return [...args.slice(0, at), `--recover=${value}`, ...args.slice(at + 2)];
}

/** The options, or one sentence that says what is wrong with them. @param today YYYY-MM-DD where none is given */
export function readOptions(args: readonly string[], today: string): Options | string {
  let parsed: ReturnType<typeof parseArgs<{ options: typeof PARSED; allowPositionals: true }>>;
  try {
    parsed = parseArgs({ args: joined(args), options: PARSED, allowPositionals: true, strict: true });
  } catch (error) {
    return `${error instanceof Error ? error.message : String(error)}; usage: ${USAGE}`;
  }
  const { values, positionals } = parsed;
  const [file, second] = positionals;
  if (file === undefined) return `no file given; usage: ${USAGE}`;
  if (second !== undefined) return `more than one file given (${second}); usage: ${USAGE}`;
  const kinds = (["mixes", "tests", "recover"] as const).filter((kind) => values[kind] !== undefined);
  if (kinds.length > 1) return `one question at a time, not ${kinds.join(" and ")}; usage: ${USAGE}`;
  const kind = kinds[0] ?? "matrix";
  for (const [name, of] of Object.entries(BELONGS)) {
    if (values[name as keyof typeof PARSED] !== undefined && !of.includes(kind)) {
      return `--${name} belongs to ${of.map((one) => `--${one}`).join(" and ")}; usage: ${USAGE}`;
    }
  }
  const question = readQuestion(kind, values, today);
  if (typeof question === "string") return `${question}; usage: ${USAGE}`;
  return { file, format: values.csv === true ? "csv" : "json", question };
}

type Values = Readonly<Partial<Record<keyof typeof PARSED, string | boolean>>>;

const textOf = (value: string | boolean | undefined): string | null =>
  typeof value === "string" ? value : null;

function readQuestion(kind: Question["kind"], values: Values, today: string): Question | string {
  const place = textOf(values.place);
  if (kind === "mixes") return { kind, place };
  if (kind === "tests") {
    const day = textOf(values.today) ?? today;
    return isDay(day) ? { kind, today: day } : `--today must be a day as YYYY-MM-DD; got ${day}`;
  }
  if (kind === "matrix") return { kind };
  const reading = textOf(values.recover) ?? "";
  const deltaL = reading === RECORDED ? null : Number(reading);
  if (deltaL !== null && (reading.trim() === "" || !(Math.abs(deltaL) <= 100))) {
    return `--recover needs the change of L* that was read, or "${RECORDED}"; got ${reading}`;
  }
  const pairCount = Number(textOf(values.pairs) ?? USUAL_PAIRS);
  if (!Number.isInteger(pairCount) || pairCount < 1 || pairCount > 1000) {
    return `--pairs must be a whole number from 1 to 1000; got ${String(values.pairs)}`;
  }
  const line = textOf(values.line);
  return { kind, deltaL, pairCount, line, place, halftonesAllowed: values.halftones === true };
}
