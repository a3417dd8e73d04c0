/**
 * Tells scripts/test.mjs how many tests each project ran: Vitest's own closing line is not the one that CI reads.
 * Written to the file that TONEBENCH_COUNTS_FILE names; without it the reporter does nothing.
 */
import { writeFileSync } from "node:fs";
import type { Reporter, SerializedError, TestModule } from "vitest/node";

export interface ProjectCounts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

/** Counts by project name; a file or suite that failed outside its tests (on import, in a hook) counts as one failed. */
export function countByProject(modules: readonly TestModule[]): Record<string, ProjectCounts> {
  const counts: Record<string, ProjectCounts> = {};
  for (const module of modules) {
    const before = counts[module.project.name] ?? { passed: 0, failed: 0, skipped: 0 };
    const states = [...module.children.allTests()].map((test) => test.result().state);
    const outside = [module, ...module.children.allSuites()].filter(
      (suite) => suite.errors().length > 0,
    ).length;
    const passed = states.filter((state) => state === "passed").length;
    const skipped = states.filter((state) => state === "skipped").length;
    counts[module.project.name] = {
      passed: before.passed + passed,
      // "pending" is left over where the run broke off: not passed, so failed.
      failed: before.failed + (states.length - passed - skipped) + outside,
      skipped: before.skipped + skipped,
    };
  }
  return counts;
}

export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandledErrors: readonly SerializedError[]): void {
    const file = process.env.TONEBENCH_COUNTS_FILE;
    if (file === undefined) return;
    const counts = { projects: countByProject(modules), unhandledErrorCount: unhandledErrors.length };
    writeFileSync(file, JSON.stringify(counts));
  }
}
