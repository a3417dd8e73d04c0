/** What every migration does to a document that no schema has seen: change what is there, leave what is not understood. */

export type Json = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Json =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/** `change` where `value` is an object; anything else is left for the schema to refuse. */
export function objectWith(value: unknown, change: (object: Json) => Json): unknown {
  return isObject(value) ? change(value) : value;
}

/** `change` of each object in a list; anything else is left as it is. */
export function eachWith(value: unknown, change: (object: Json) => Json): unknown {
  return Array.isArray(value) ? value.map((item) => objectWith(item, change)) : value;
}

/** The object with `field` changed, where it has one. */
export function fieldWith(object: Json, field: string, change: (value: unknown) => unknown): Json {
  return field in object ? { ...object, [field]: change(object[field]) } : object;
}
