// Adds up what passed and failed over all steps of `npm test`, and prints the closing line that CI reads.

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

export class Tally {
  /** @type {Counts} */
  total = { passed: 0, failed: 0, skipped: 0 };
  /** @type {string[]} */
  failures = [];

  /**
   * One check by its name.
   * @param {string} name
   * @param {boolean} hasPassed
   */
  check(name, hasPassed) {
    console.log(`${hasPassed ? "ok" : "FAILED"}: ${name}`);
    this.total[hasPassed ? "passed" : "failed"] += 1;
    if (!hasPassed) this.failures.push(name);
  }

  /**
   * The tests of one suite. A suite that ran none has failed, however content its runner is.
   * @param {string} name
   * @param {Counts | undefined} counts
   */
  suite(name, counts) {
    if (counts === undefined || counts.passed + counts.failed === 0) {
      this.check(`${name}: no test was run`, false);
      return;
    }
    for (const key of /** @type {const} */ (["passed", "failed", "skipped"])) this.total[key] += counts[key];
    const sentence = `${name}: ${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`;
    console.log(`${counts.failed === 0 ? "ok" : "FAILED"}: ${sentence}`);
    if (counts.failed > 0) this.failures.push(sentence);
  }

  /** `N passed, N failed`, and what was skipped if anything was. */
  closingLine() {
    const { passed, failed, skipped } = this.total;
    return `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`;
  }

  /** 0 only where something passed and nothing failed. */
  exitCode() {
    return this.total.failed === 0 && this.total.passed > 0 ? 0 : 1;
  }
}
