/** Whether two plain JSON values say the same; parts shared between them cost nothing to compare. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  const first = one as Readonly<Record<string, unknown>>;
  const second = other as Readonly<Record<string, unknown>>;
  return keys.every((key) => Object.hasOwn(second, key) && sameValue(first[key], second[key]));
}
