/** Spoiled archives: what the tests try a few hundred of, and the soak many thousand. */
import fc from "fast-check";
import { archiveText, readJobArchive } from "../../src/exchange/jobArchive.ts";
import { ARCHIVE_VERSION } from "../../src/job/archiveDocument.ts";
import { arbitraryDocuments } from "./arbitraryDocuments.ts";

/** Drops or replaces one value somewhere in a JSON tree. */
const mutation = fc
  .record({
    steps: fc.array(fc.nat(1000), { minLength: 1, maxLength: 8 }),
    drop: fc.boolean(),
    value: fc.oneof(fc.jsonValue(), fc.constantFrom(null, -1, 1e308, "", [], {}, true)),
  })
  .map(({ steps, drop, value }) => (root: Record<string, unknown>) => {
    let parent: Record<string, unknown> = root;
    for (const [depth, step] of steps.entries()) {
      const keys = Object.keys(parent);
      const key = keys[step % Math.max(1, keys.length)];
      if (key === undefined) return;
      const child = parent[key];
      if (depth < steps.length - 1 && typeof child === "object" && child !== null) {
        parent = child as Record<string, unknown>;
        continue;
      }
      if (!drop) parent[key] = value;
      else if (Array.isArray(parent)) parent.splice(Number(key), 1);
      else delete parent[key];
      return;
    }
  });

/**
 * Holds if a spoiled archive is either taken whole (writing it gives back all that was in the file) or refused with
 * reasons; a throw fails it too.
 */
export const neverInPart = fc.property(
  arbitraryDocuments,
  fc.array(mutation, { minLength: 1, maxLength: 3 }),
  (documents, mutations) => {
    const archive = JSON.parse(archiveText(documents));
    for (const mutate of mutations) mutate(archive);
    const text = JSON.stringify(archive) ?? "";
    const reading = readJobArchive(text);
    if (!reading.ok) {
      return (
        reading.problems.length > 0 &&
        reading.problems.every(({ code, where }) => /^[a-z-]+$/.test(code) && typeof where === "string")
      );
    }
    // Where only the version was altered to an older one, today's fields stay as they are and today's version is written.
    const read = { ...JSON.parse(text), version: ARCHIVE_VERSION };
    return sameJson(JSON.parse(archiveText(reading.documents)), read);
  },
);

/** Equality of two JSON trees, whatever the order of the keys. */
function sameJson(one: unknown, other: unknown): boolean {
  if (typeof one !== "object" || one === null || typeof other !== "object" || other === null) {
    return Object.is(one, other);
  }
  const left = Object.entries(one);
  return (
    Array.isArray(one) === Array.isArray(other) &&
    left.length === Object.keys(other).length &&
    left.every(([key, value]) => key in other && sameJson(value, (other as Record<string, unknown>)[key]))
  );
}
