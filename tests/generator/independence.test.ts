/** The generator judges the predictor, so it may not be made of the predictor's code: only its input types, and colorimetry. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { importsIn } from "../architecture/imports.ts";

const folder = dirname(fileURLToPath(import.meta.url));
const files = readdirSync(folder).filter((name) => name.endsWith(".ts") && !name.endsWith(".test.ts"));
/** Reflectance to Lab and back is not on trial; the seeded random numbers are a test's own. */
const OPEN = [
  /^\.\//,
  /\/src\/core\/(spectrum|tables|colorimetry)\//,
  /^\.\.\/core\/prediction\/seededRandom\.ts$/,
];

describe("the generator", () => {
  it("is found: a check of no files proves nothing", () => {
    expect(files).toContain("trueFilm.ts");
    expect(files.length).toBeGreaterThan(8);
  });

  it("takes values from itself, spectrum, tables and colorimetry only", () => {
    const breaches = files.flatMap((name) =>
      importsIn(readFileSync(join(folder, name), "utf8"))
        .filter(
          ({ specifier, isTypeOnly }) =>
            !isTypeOnly && (specifier === undefined || !OPEN.some((open) => open.test(specifier))),
        )
        .map(({ specifier }) => `${name}: ${specifier}`),
    );
    expect(breaches).toEqual([]);
  });

  it("would be caught: the film's own optics count as a breach", () => {
    expect(OPEN.some((open) => open.test("../../src/core/optics/inkFilm.ts"))).toBe(false);
    expect(OPEN.some((open) => open.test("../../src/core/evidence/learn.ts"))).toBe(false);
  });
});
