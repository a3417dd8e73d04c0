// Judges what the tests of one run covered of src/core: the test runner alone passes a run that measured nothing.
import { existsSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./projectRoot.mjs";

/** Design limit (issue "The main job, end to end", done when); vite.config.ts takes it from here. */
export const LEAST_PERCENT = 95;
const summaryFile = join(projectRoot, "coverage", "coverage-summary.json");

/** Removes the last run's figures, so that they cannot stand in for this run's. */
export function forgetCoverage() {
  rmSync(summaryFile, { force: true });
}

/** Prints the figures; whether lines and branches were measured and both reach the limit. */
export function reportCoverage() {
  if (!existsSync(summaryFile)) {
    console.log("No coverage was measured (it is not where tests fail).");
    return false;
  }
  /** @type {{ total: Record<"lines" | "branches", { total: number, covered: number }> }} */
  const { total } = JSON.parse(readFileSync(summaryFile, "utf8"));
  const { lines, branches } = total;
  console.log(
    `Core: ${share(lines)} of lines, ${share(branches)} of branches; each must reach ${LEAST_PERCENT} %.`,
  );
  return [lines, branches].every(
    (part) => part.total > 0 && part.covered * 100 >= part.total * LEAST_PERCENT,
  );
}

/** @param {{ total: number, covered: number }} part */
function share({ total, covered }) {
  return `${covered} of ${total} (${((100 * covered) / Math.max(total, 1)).toFixed(1)} %)`;
}
