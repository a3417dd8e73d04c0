/**
 * What every edit does to a list of identified items: add, replace, remove, with nothing invalid let through.
 * An unknown id, a taken id or a value that its schema refuses is the caller's mistake and throws a RangeError: a
 * silent no-op would lose what somebody typed.
 */
import type { z } from "zod";

interface Identified {
  readonly id: string;
}

/** `value` itself, once its schema accepts it. @throws RangeError that names the field. */
export function requireValid<Value>(schema: z.ZodType<Value>, value: Value, what: string): Value {
  const parsed = schema.safeParse(value);
  if (parsed.success) return value;
  const issue = parsed.error.issues[0];
  const field = [what, ...(issue?.path ?? [])].map(String).join(".");
  const code = issue?.code === "custom" ? issue.params?.code : undefined;
  throw new RangeError(`${field} is refused: ${typeof code === "string" ? code : issue?.message}`);
}

/** The item of that id. @throws RangeError where there is none. */
export function requireItem<Item extends Identified>(list: readonly Item[], id: string, what: string): Item {
  const item = list.find((one) => one.id === id);
  if (item === undefined) throw new RangeError(`${what} must exist; got id ${id}`);
  return item;
}

/** @throws RangeError where the list has no such id. */
export function requireId(list: readonly Identified[], id: string, what: string): void {
  requireItem(list, id, what);
}

/** The list with `item` added, at the end unless `index` says where. @throws RangeError where its id is taken. */
export function withItem<Item extends Identified>(
  list: readonly Item[],
  item: Item,
  what: string,
  index = list.length,
): Item[] {
  if (list.some((one) => one.id === item.id)) {
    throw new RangeError(`${what} must have a new id; got ${item.id} again`);
  }
  return list.toSpliced(index, 0, item);
}

/** The list with the item of that id replaced. @throws RangeError where there is none. */
export function withChanged<Item extends Identified>(
  list: readonly Item[],
  id: string,
  what: string,
  change: (item: Item) => Item,
): Item[] {
  const item = requireItem(list, id, what);
  const changed = change(item);
  return list.map((one) => (one === item ? changed : one));
}

/** The list without the item of that id. @throws RangeError where there is none. */
export function withoutItem<Item extends Identified>(
  list: readonly Item[],
  id: string,
  what: string,
): Item[] {
  const item = requireItem(list, id, what);
  return list.filter((one) => one !== item);
}
