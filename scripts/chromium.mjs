// Finds the Chromium that the browser tests drive, and on Debian-like machines installs it where there is none.
import { spawnSync } from "node:child_process";
import { accessSync, constants, statSync } from "node:fs";
import { delimiter, join } from "node:path";
import { isStarted } from "./projectRoot.mjs";
import { runProcess } from "./runProcess.mjs";

const names = ["chromium", "chromium-browser", "google-chrome"];
const debianPackages = ["chromium", "fonts-liberation", "fonts-dejavu-core", "poppler-utils"];

/** @param {string} file */
function isProgram(file) {
  try {
    accessSync(file, constants.X_OK);
    return statSync(file).isFile();
  } catch {
    return false;
  }
}

/** @param {string} name */
function onPath(name) {
  const folders = (process.env.PATH ?? "").split(delimiter).filter((folder) => folder !== "");
  return folders.map((folder) => join(folder, name)).find(isProgram);
}

/**
 * Chromium's executable: CHROMIUM_PATH if set (and nothing else then), else the first known name on the path.
 * @returns {string | undefined}
 */
export function findChromium() {
  const given = process.env.CHROMIUM_PATH;
  if (given) return isProgram(given) ? given : undefined;
  for (const name of names) {
    const file = onPath(name);
    if (file !== undefined) return file;
  }
  return undefined;
}

/**
 * Finds Chromium, installing it with apt-get where that is possible.
 * @returns {Promise<string | undefined>} its executable; if none, a sentence has said why.
 */
export async function provideChromium() {
  const found = findChromium();
  if (found !== undefined) return found;
  if (process.env.CHROMIUM_PATH) {
    console.error(`CHROMIUM_PATH names no program: ${process.env.CHROMIUM_PATH}`);
    return undefined;
  }
  const asRoot = rootPrefix();
  if (onPath("apt-get") === undefined || asRoot === undefined) {
    console.error("The browser tests need Chromium: install it, or set CHROMIUM_PATH to its executable.");
    return undefined;
  }
  console.log(`Installing ${debianPackages.join(", ")} with apt-get, for the browser tests.`);
  const update = await aptGet(asRoot, ["update"]);
  const code = await aptGet(asRoot, ["install", "-y", "--no-install-recommends", ...debianPackages]);
  const installed = findChromium();
  if (installed === undefined) {
    console.error(`apt-get did not install Chromium (update ended with ${update}, install with ${code}).`);
  }
  return installed;
}

/** What to put before a command so that root runs it; nothing where we may not. */
function rootPrefix() {
  if (process.getuid?.() === 0) return [];
  return spawnSync("sudo", ["-n", "true"], { stdio: "ignore" }).status === 0 ? ["sudo", "-n"] : undefined;
}

/**
 * @param {string[]} asRoot
 * @param {string[]} args
 */
function aptGet(asRoot, args) {
  const [program, ...rest] = [...asRoot, "env", "DEBIAN_FRONTEND=noninteractive", "apt-get", "-qq", ...args];
  return runProcess(/** @type {string} */ (program), rest, { outputTo: "standardError" });
}

if (isStarted(import.meta.url)) {
  const file = await provideChromium();
  if (file !== undefined) console.log(file);
  process.exitCode = file === undefined ? 1 : 0;
}
