/** Whether two plain JSON values say the same; the order of an object's keys does not count. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const keys = Object.keys(one);
  if (keys.length !== Object.keys(other).length) return false;
  return keys.every(
    (key) =>
      Object.hasOwn(other, key) &&
      sameValue((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key]),
  );
}
