/** Reads a number as people type it, and prints one without losing or adding digits. */

export interface NumberRange {
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  /** Whole numbers only; then "7,200" is seven thousand two hundred. */
  readonly whole?: boolean | undefined;
  /** Written behind the limits in the sentences. */
  readonly unit?: string | undefined;
}

export type TypedNumber =
  | { readonly ok: true; readonly value: number | null }
  | { readonly ok: false; readonly sentence: string };

/** Digits that a stored double carries beyond doubt; hides 0.07 * 100 = 7.000000000000001. */
const SHOWN_DIGITS = 12;

/** The shortest text that stands for the value. */
export function printNumber(value: number): string {
  return String(Number(value.toPrecision(SHOWN_DIGITS)));
}

const wrong = (sentence: string): TypedNumber => ({ ok: false, sentence });

/**
 * The number in `text`: null when it is empty. Takes a minus sign of either kind, a decimal comma, blanks as thousands
 * separators, and the field's own unit behind it. A comma that can be read both ways is asked about.
 */
export function readNumber(text: string, range: NumberRange = {}): TypedNumber {
  const unit = range.unit ?? "";
  const bare = text.trim();
  const plain = (unit !== "" && bare.endsWith(unit) ? bare.slice(0, -unit.length) : bare)
    .trim()
    .replace(/[\u2212\u2013]/g, "-")
    .replace(/(?<=\d)[\s\u00a0\u202f'](?=\d{3}(\D|$))/g, "");
  if (plain === "") return { ok: true, value: null };
  let digits = plain;
  if (/^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(plain)) {
    if (!range.whole && !plain.includes(".") && plain.indexOf(",") === plain.lastIndexOf(",")) {
      return wrong(
        `Write ${plain.replace(",", ".")} or ${plain.replace(",", "")}: the comma can be read both ways.`,
      );
    }
    digits = plain.replaceAll(",", "");
  } else if (/^-?\d*,\d+$/.test(plain)) {
    digits = plain.replace(",", ".");
  }
  if (!/^[+-]?(\d+\.?\d*|\.\d+)$/.test(digits)) return wrong(`“${text.trim()}” is not a number.`);
  return checkRange(Number(digits), range);
}

function checkRange(value: number, { min, max, whole, unit }: NumberRange): TypedNumber {
  const withUnit = (limit: number) =>
    `${printNumber(limit)}${unit === undefined || unit === "" ? "" : ` ${unit}`}`;
  if (!Number.isFinite(value)) return wrong("This number is too large.");
  if (whole && !Number.isInteger(value)) return wrong("Only whole numbers here.");
  if (min !== undefined && max !== undefined && (value < min || value > max)) {
    return wrong(`From ${withUnit(min)} to ${withUnit(max)}.`);
  }
  if (min !== undefined && value < min) return wrong(`${withUnit(min)} or more.`);
  if (max !== undefined && value > max) return wrong(`At most ${withUnit(max)}.`);
  return { ok: true, value };
}
