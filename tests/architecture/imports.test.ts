/** The layout of the code holds: who imports whom, a pure core, names that say something, files one can read. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { breachesIn } from "./checkSource.ts";
import { importsIn } from "./imports.ts";
import { mayImport, mayUsePackages } from "./rules.ts";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

function codeFilesIn(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: "utf8" })
    .map((path) => `${folder}/${path.replaceAll("\\", "/")}`)
    .filter((path) => /\.(?:[cm]?[jt]s|[jt]sx)$/.test(path));
}

function read(path: string): string {
  return readFileSync(join(root, path), "utf8");
}

const sourceFiles = codeFilesIn("src");
const otherFiles = [...codeFilesIn("tests"), ...codeFilesIn("scripts")];

describe("the project's own code", () => {
  it("is found: a check of no files proves nothing", () => {
    expect(sourceFiles).toContain("src/core/spectrum/spectrum.ts");
    expect(otherFiles).toContain("tests/architecture/imports.test.ts");
    expect(otherFiles).toContain("scripts/start.mjs");
  });

  it("keeps to the import table, the pure core, the names and the lengths", () => {
    expect([...sourceFiles, ...otherFiles].flatMap((path) => breachesIn(path, read(path)))).toEqual([]);
  });

  it("has no import that the scan overlooks: each line that begins with one is found", () => {
    const counts = sourceFiles.map((path) => ({
      path,
      begunCount: read(path).match(/^import\b(?![.(])/gm)?.length ?? 0,
      foundCount: importsIn(read(path)).length,
    }));
    expect(counts.filter(({ begunCount, foundCount }) => foundCount < begunCount)).toEqual([]);
    expect(counts.some(({ begunCount }) => begunCount > 0)).toBe(true);
  });
});

describe("the import table", () => {
  it("has a row for the packages of each zone, all of them installed for use and not for development", () => {
    const { dependencies } = JSON.parse(read("package.json")) as { dependencies: Record<string, string> };
    const zones = Object.keys(mayImport).map((zone) => zone.split("/")[0] ?? zone);
    expect(zones.filter((zone) => !(zone in mayUsePackages))).toEqual([]);
    const named = Object.values(mayUsePackages).flat();
    expect(named.filter((name) => name !== "node:" && !(name in dependencies))).toEqual([]);
  });

  it("has no circle: no zone reaches itself over others", () => {
    const isOf = (zone: string, opened: string) => zone === opened || zone.startsWith(`${opened}/`);
    const reached = (zone: string): string[] =>
      Object.keys(mayImport).filter((other) =>
        Object.keys(mayImport[zone] ?? {}).some((opened) => isOf(other, opened)),
      );
    const reachesItself = (start: string): boolean => {
      const seen = new Set<string>();
      const open = reached(start);
      for (let zone = open.pop(); zone !== undefined; zone = open.pop()) {
        if (zone === start) return true;
        if (!seen.has(zone)) open.push(...reached(zone));
        seen.add(zone);
      }
      return false;
    };
    expect(Object.keys(mayImport).filter(reachesItself)).toEqual([]);
  });
});
