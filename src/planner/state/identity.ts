/** Where the planner's ids and times come from; nothing else in it makes any. */

/** A new UUID. */
export function newId(): string {
  return crypto.randomUUID();
}

/** The time now, as the documents store it. */
export function nowIso(): string {
  return new Date().toISOString();
}
