/** Where the planner's ids and times come from; nothing else in it makes any. */

/** A new UUID. */
export function newId(): string {
  return crypto.randomUUID();
}

/** The time now, as the documents store it. */
export function nowIso(): string {
  return new Date().toISOString();
}

/** The calendar day where the planner stands, YYYY-MM-DD. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A stored time as a `datetime-local` field shows it, to the minute, where the planner stands. */
export function localFromIso(iso: string): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return "";
  const two = (part: number) => String(part).padStart(2, "0");
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** The time that such a field's text stands for, as documents store it; null where it stands for none. */
export function isoFromLocal(local: string): string | null {
  const at = new Date(local);
  return local === "" || Number.isNaN(at.getTime()) ? null : at.toISOString();
}
