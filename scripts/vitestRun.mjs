// Runs projects of the test runner and reads back how many tests each of them ran.
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { projectRoot, toolPath } from "./projectRoot.mjs";
import { runNode } from "./runProcess.mjs";

/** @typedef {import("./tally.mjs").Counts} Counts */

/**
 * @param {string[]} projects
 * @param {string[]} [extraArgs]
 * @returns {Promise<{ exitCode: number, counts: Record<string, Counts>, unhandledErrorCount: number }>}
 * counts are empty where the runner broke down before its end
 */
export async function runVitest(projects, extraArgs = []) {
  const folder = mkdtempSync(join(tmpdir(), "tonebench-"));
  const countsFile = join(folder, "counts.json");
  try {
    const args = ["run", ...projects.flatMap((name) => ["--project", name]), ...extraArgs];
    const reporters = ["--reporter=default", `--reporter=${join(projectRoot, "tests", "reporter.ts")}`];
    const exitCode = await runNode(toolPath("vitest", "vitest"), [...args, ...reporters], {
      env: { TONEBENCH_COUNTS_FILE: countsFile },
    });
    if (!existsSync(countsFile)) return { exitCode, counts: {}, unhandledErrorCount: 0 };
    const { projects: counts, unhandledErrorCount } = JSON.parse(readFileSync(countsFile, "utf8"));
    return { exitCode, counts, unhandledErrorCount };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * Reports a run: each project's tests, and one check more for what no test shows (an error outside all tests, or
 * the runner ending badly although its tests passed).
 * @param {import("./tally.mjs").Tally} tally
 * @param {string[]} projects
 * @param {Awaited<ReturnType<typeof runVitest>>} run
 * @param {{ isExitExplained?: boolean }} [options] whether a failed check of another name tells of the bad end
 */
export function reportVitest(tally, projects, run, { isExitExplained = false } = {}) {
  const { exitCode, counts, unhandledErrorCount } = run;
  for (const name of projects) tally.suite(`${name} tests`, counts[name]);
  const hasFailedTests = Object.values(counts).some(({ failed }) => failed > 0);
  if (unhandledErrorCount > 0) tally.check(`${unhandledErrorCount} errors outside the tests`, false);
  else if (exitCode !== 0 && !hasFailedTests && !isExitExplained)
    tally.check(`test runner ended with exit code ${exitCode}`, false);
}
