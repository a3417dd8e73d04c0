// Loads a TypeScript module of the project in plain Node, for the commands that run outside the browser.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { projectRoot } from "./projectRoot.mjs";

/**
 * A function that a module exports; nothing where it cannot be had, and then one sentence on standard error says why.
 * @param {string} file path from the project's root
 * @param {string} exportName
 * @returns {Promise<((...args: any[]) => unknown) | undefined>}
 */
export async function loadFunction(file, exportName) {
  const path = join(projectRoot, file);
  if (!existsSync(path)) return refuse(`There is no ${file} yet, so this command has nothing to run.`);
  const vite = await import("vite").catch(() => undefined);
  if (vite === undefined) return refuse("The packages are not installed: run `npm ci` or `npm start` once.");
  const { module } = await vite.runnerImport(path, {
    root: projectRoot,
    configFile: false,
    envFile: false,
    logLevel: "error",
  });
  const found = /** @type {Record<string, unknown>} */ (module)[exportName];
  if (typeof found !== "function") return refuse(`${file} exports no function ${exportName}.`);
  return /** @type {(...args: any[]) => unknown} */ (found);
}

/**
 * Runs that function; the process ends with the whole number it gives, else with 0, or with 1 where it cannot be had.
 * @param {string} file
 * @param {string} exportName
 * @param {unknown[]} [args]
 */
export async function runFunction(file, exportName, args = []) {
  const run = await loadFunction(file, exportName);
  if (run === undefined) {
    process.exitCode = 1;
    return;
  }
  const result = await run(...args);
  process.exitCode = typeof result === "number" ? result : 0;
}

/** @param {string} sentence */
function refuse(sentence) {
  console.error(sentence);
  return undefined;
}
