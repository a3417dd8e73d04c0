// `npm test`: every check of the project in one run, from a bare clone; a failed step does not hide the later ones.
// Its last line, `N passed, N failed` over all tests and steps, is the one that CI reads.
import { build } from "./build.mjs";
import { reportBundleSize } from "./bundleSize.mjs";
import { provideChromium } from "./chromium.mjs";
import { forgetCoverage, reportCoverage } from "./coverage.mjs";
import { install } from "./install.mjs";
import { toolPath } from "./projectRoot.mjs";
import { runNode } from "./runProcess.mjs";
import { Tally } from "./tally.mjs";
import { reportVitest, runVitest } from "./vitestRun.mjs";

const tally = new Tally();
const unitProjects = ["node", "planner"];

/** @param {string} title */
function announce(title) {
  console.log(`\n== ${title} (${Math.round(performance.now() / 1000)} s)`);
}

/**
 * @param {string} name
 * @param {() => boolean | Promise<boolean>} run
 */
async function step(name, run) {
  announce(name);
  const hasPassed = await attempt(run);
  tally.check(name, hasPassed);
  return hasPassed;
}

/** @param {() => boolean | Promise<boolean>} run */
async function attempt(run) {
  try {
    return await run();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return false;
  }
}

/**
 * @param {string} packageName
 * @param {string} command
 * @param {string[]} args
 */
async function passes(packageName, command, args) {
  return (await runNode(toolPath(packageName, command), args)) === 0;
}

async function unitTests() {
  announce("unit tests");
  forgetCoverage();
  const run = await runVitest(unitProjects, ["--coverage"]);
  const isCovered = reportCoverage();
  tally.check("coverage of src/core", isCovered);
  reportVitest(tally, unitProjects, run, { isExitExplained: !isCovered });
}

async function browserTests() {
  announce("browser tests");
  reportVitest(tally, ["browser"], await runVitest(["browser"]));
}

async function runAll() {
  if (!(await step("install packages", install))) return;
  const hasChromium = await step("find Chromium", async () => (await provideChromium()) !== undefined);
  await step("typecheck", () => passes("typescript", "tsc", ["--noEmit"]));
  await step("typecheck of core without the DOM", () =>
    passes("typescript", "tsc", ["--noEmit", "-p", "src/core"]),
  );
  const lintArgs = ["check", "--colors=off", "--error-on-warnings"];
  await step("lint and format", () => passes("@biomejs/biome", "biome", lintArgs));
  await unitTests();
  const isBuilt = await step("build", async () => (await build()) === 0);
  if (isBuilt) await step("size of the first load", () => reportBundleSize());
  else tally.check("size of the first load: not measured without a build", false);
  if (isBuilt && hasChromium) await browserTests();
  else tally.check("browser tests: not run without a build and Chromium", false);
}

await runAll();
announce("all steps");
for (const failure of tally.failures) console.log(`FAILED: ${failure}`);
console.log(tally.closingLine());
process.exitCode = tally.exitCode();
