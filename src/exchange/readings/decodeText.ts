/** Turns a file's bytes into text: byte order marks, UTF-8, UTF-16, and Latin-1 where it is neither. */
import type { Problem } from "../../job/problem.ts";
import { LARGEST_FILE_BYTES } from "./limits.ts";

export type DecodedText =
  | { readonly ok: true; readonly text: string; readonly warnings: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const refuse = (code: string, values: Problem["values"] = {}): DecodedText => ({
  ok: false,
  problems: [{ code, where: "", values }],
});

/** First bytes of a ZIP container: a workbook, most often. From the published ZIP application note. */
const ZIP = [0x50, 0x4b, 0x03, 0x04];
/** Share of control characters above which bytes are no text (invented). */
const LARGEST_CONTROL_SHARE = 0.01;

const startsWith = (bytes: Uint8Array, marks: readonly number[]): boolean =>
  marks.every((mark, i) => bytes[i] === mark);

/** The encoding that the bytes show: a mark, or zeros in every other byte of the beginning, as Latin text in UTF-16. */
function shownEncoding(bytes: Uint8Array): "utf-8" | "utf-16le" | "utf-16be" {
  if (startsWith(bytes, [0xff, 0xfe])) return "utf-16le";
  if (startsWith(bytes, [0xfe, 0xff])) return "utf-16be";
  const beginning = bytes.subarray(0, 200);
  let even = 0;
  let odd = 0;
  for (const [i, byte] of beginning.entries()) {
    if (byte !== 0) continue;
    if (i % 2 === 0) even++;
    else odd++;
  }
  const half = beginning.length / 2;
  if (odd > 0.7 * half && even === 0) return "utf-16le";
  if (even > 0.7 * half && odd === 0) return "utf-16be";
  return "utf-8";
}

function controlCount(text: string): number {
  let count = 0;
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 && code !== 9 && code !== 10 && code !== 13 && code !== 12) count++;
  }
  return count;
}

/** `bytes` as text without its byte order mark; refused where they are too many, none, a workbook or no text. */
export function decodeText(bytes: Uint8Array): DecodedText {
  if (bytes.length === 0) return refuse("readings-empty");
  if (bytes.length > LARGEST_FILE_BYTES)
    return refuse("readings-too-large", { bytes: bytes.length, largestBytes: LARGEST_FILE_BYTES });
  if (startsWith(bytes, ZIP)) return refuse("readings-workbook");
  const encoding = shownEncoding(bytes);
  const warnings: Problem[] = [];
  let text: string;
  try {
    text = new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    if (encoding !== "utf-8") return refuse("readings-not-text");
    // Every byte is a character of Latin-1 (of its superset windows-1252, which is what is in use).
    text = new TextDecoder("windows-1252").decode(bytes);
    warnings.push({ code: "readings-as-latin-1", where: "" });
  }
  if (text.trim() === "") return refuse("readings-empty");
  if (text.includes("\0") || controlCount(text) > LARGEST_CONTROL_SHARE * text.length)
    return refuse("readings-not-text");
  return { ok: true, text, warnings };
}
