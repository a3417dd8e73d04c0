/** Ids of the demo: the same name gives the same UUID on every run. */
import { createHash } from "node:crypto";

/** A version 8 UUID (RFC 9562: bits of the maker's choice) from a hash of the name. */
export function demoId(name: string): string {
  const hex = createHash("sha256").update(`tonebench demo: ${name}`).digest("hex");
  const variant = "89ab"[Number.parseInt(hex.charAt(16), 16) % 4];
  return [
    hex.slice(0, 8),
    hex.slice(8, 12),
    `8${hex.slice(13, 16)}`,
    `${variant}${hex.slice(17, 20)}`,
    hex.slice(20, 32),
  ].join("-");
}
