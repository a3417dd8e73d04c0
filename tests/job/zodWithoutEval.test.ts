/** No schema is made before zod was told to do without `new Function`, whichever file is reached first. */
import { readdirSync } from "node:fs";
import { afterEach, beforeEach, expect, it, vi } from "vitest";

const files = readdirSync("src/job").filter((file) => file.endsWith("Document.ts"));

beforeEach(async () => {
  vi.resetModules();
  const { config } = await import("zod");
  config({ jitless: false });
});
afterEach(() => vi.doUnmock("zod"));

it("finds the schema files", () => expect(files.length).toBeGreaterThan(6));

it.each(files)("%s makes no object schema while zod may compile", async (file) => {
  const zod = await import("zod");
  const early: unknown[] = [];
  const strictObject: typeof zod.z.strictObject = (shape, params) => {
    if (zod.config().jitless !== true) early.push(shape);
    return zod.z.strictObject(shape, params);
  };
  vi.doMock("zod", () => ({ ...zod, z: { ...zod.z, strictObject } }));
  await import(`../../src/job/${file.replace(/\.ts$/, "")}.ts`);
  expect(zod.config().jitless).toBe(true);
  expect(early).toEqual([]);
});
