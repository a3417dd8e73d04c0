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
