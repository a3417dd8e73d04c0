/** What `npm test` adds up: failures are never lost, a suite without tests fails, the first load counts all it must. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { firstLoad, LARGEST_FIRST_LOAD_BYTES, reportBundleSize } from "../../scripts/bundleSize.mjs";
import { Tally } from "../../scripts/tally.mjs";
import { reportVitest } from "../../scripts/vitestRun.mjs";

const good = { passed: 3, failed: 0, skipped: 0 };

beforeEach(() => {
  vi.spyOn(console, "log").mockImplementation(() => {});
});
afterEach(() => {
  vi.restoreAllMocks();
});

describe("the tally of npm test", () => {
  it("adds up tests and steps, and says what was skipped", () => {
    const tally = new Tally();
    tally.check("lint", true);
    tally.suite("node tests", { ...good, skipped: 2 });
    expect(tally.closingLine()).toBe("4 passed, 0 failed, 2 skipped");
    expect(tally.exitCode()).toBe(0);
  });

  it("fails where nothing was run at all", () => {
    expect(new Tally().exitCode()).toBe(1);
  });

  const runs: [claim: string, run: Parameters<typeof reportVitest>[2], line: string][] = [
    ["all well", { exitCode: 0, counts: { node: good }, unhandledErrorCount: 0 }, "3 passed, 0 failed"],
    ["a runner that broke down", { exitCode: 1, counts: {}, unhandledErrorCount: 0 }, "0 passed, 2 failed"],
    ["a project without tests", { exitCode: 0, counts: {}, unhandledErrorCount: 0 }, "0 passed, 1 failed"],
    [
      "only skipped tests",
      { exitCode: 0, counts: { node: { passed: 0, failed: 0, skipped: 3 } }, unhandledErrorCount: 0 },
      "0 passed, 1 failed",
    ],
    [
      "a failed test",
      { exitCode: 1, counts: { node: { passed: 2, failed: 1, skipped: 0 } }, unhandledErrorCount: 0 },
      "2 passed, 1 failed",
    ],
    [
      "a bad end over good tests",
      { exitCode: 1, counts: { node: good }, unhandledErrorCount: 0 },
      "3 passed, 1 failed",
    ],
    [
      "an error outside the tests",
      { exitCode: 1, counts: { node: good }, unhandledErrorCount: 1 },
      "3 passed, 1 failed",
    ],
  ];
  it.each(runs)("counts %s", (_claim, run, line) => {
    const tally = new Tally();
    reportVitest(tally, ["node"], run);
    expect(tally.closingLine()).toBe(line);
    expect(tally.exitCode()).toBe(line.endsWith(" 0 failed") ? 0 : 1);
  });
});

describe("the tally over a run whose coverage is too low", () => {
  it("counts the bad end once: under the name of the coverage", () => {
    const tally = new Tally();
    tally.check("coverage", false);
    const run = { exitCode: 1, counts: { node: good }, unhandledErrorCount: 0 };
    reportVitest(tally, ["node"], run, { isExitExplained: true });
    expect(tally.closingLine()).toBe("3 passed, 1 failed");
  });
});

describe("the first load", () => {
  let folder: string;
  const write = (file: string, text: string) => writeFileSync(join(folder, file), text);

  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "tonebench-size-"));
    mkdirSync(join(folder, "assets"));
    write(
      "index.html",
      `<link rel="icon" href="./icon.svg"><script type="module" crossorigin src="./assets/main.js"></script>
       <link rel="modulepreload" crossorigin href="./assets/react.js"><link rel="stylesheet" href="./assets/main.css">`,
    );
    write("assets/main.css", "p{}");
    write("assets/react.js", "");
    write(
      "assets/main.js",
      `import{a as b}from"./chunk.js";import"./react.js";const c=()=>import("./later.js");
       new Worker(new URL(\`predict.js\`,""+import.meta.url),{type:"module"})`,
    );
    write("assets/chunk.js", `export*from"./deep.js"`);
    for (const file of ["deep", "later", "predict"]) write(`assets/${file}.js`, "");
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it("is the page, its styles, its scripts with their static imports, and the workers they start", () => {
    const files = firstLoad(folder).map(({ file }) => file.replaceAll("\\", "/"));
    expect(files.sort()).toEqual([
      "assets/chunk.js",
      "assets/deep.js",
      "assets/main.css",
      "assets/main.js",
      "assets/predict.js",
      "assets/react.js",
      "index.html",
    ]);
  });

  it("is within the limit here, and is over it with one large file imported deep down", () => {
    expect(reportBundleSize(folder)).toBe(true);
    // Digits of a linear congruence, so that gzip finds nothing to shorten but the bits a digit wastes.
    let state = 1;
    const digits = Array.from({ length: 3 * LARGEST_FIRST_LOAD_BYTES }, () => {
      state = (state * 48271) % 2147483647;
      return state % 10;
    });
    write("assets/deep.js", digits.join(""));
    expect(reportBundleSize(folder)).toBe(false);
  });

  it("is refused where a named file is missing, or the page has no script", () => {
    rmSync(join(folder, "assets", "deep.js"));
    expect(() => firstLoad(folder)).toThrow("deep.js");
    write("index.html", "<p>no script</p>");
    expect(() => firstLoad(folder)).toThrow("names no script");
  });
});
