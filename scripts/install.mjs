// Installs the packages that package-lock.json names, and only when they are missing or older than it.
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";
import { isStarted, projectRoot } from "./projectRoot.mjs";
import { runProcess } from "./runProcess.mjs";

const OLDEST_NODE_MAJOR = 20;
const stampFile = join(projectRoot, "node_modules", ".tonebench-lock");

/** What is installed, as one line: the lock file's hash, and the system that native packages were chosen for. */
function wantedStamp() {
  const lock = readFileSync(join(projectRoot, "package-lock.json"));
  return `${createHash("sha256").update(lock).digest("hex")} ${process.platform} ${process.arch}\n`;
}

/** Whether node_modules holds what package-lock.json names. */
export function isInstalled() {
  return existsSync(stampFile) && readFileSync(stampFile, "utf8") === wantedStamp();
}

/**
 * Installs where needed.
 * @returns {Promise<boolean>} whether the packages are there now; if not, a sentence has said why.
 */
export async function install() {
  if (Number(process.versions.node.split(".")[0]) < OLDEST_NODE_MAJOR) {
    console.error(
      `Tonebench needs Node ${OLDEST_NODE_MAJOR} or newer; this is Node ${process.versions.node}.`,
    );
    return false;
  }
  if (isInstalled()) return true;
  const reason = existsSync(join(projectRoot, "node_modules"))
    ? "node_modules does not match package-lock.json"
    : "node_modules is missing";
  console.log(`Installing packages with npm ci: ${reason}. This takes about half a minute.`);
  const code = await runNpm(["ci", "--include=dev", "--no-audit", "--no-fund", "--loglevel=error"]);
  if (code !== 0) {
    console.error(`npm ci failed (exit code ${code}): the packages are not installed.`);
    return false;
  }
  writeFileSync(stampFile, wantedStamp());
  return true;
}

/**
 * The npm that started us if one did, else the one on the path.
 * @param {string[]} args
 */
function runNpm(args) {
  const ownNpm = process.env.npm_execpath;
  if (ownNpm !== undefined && basename(ownNpm) === "npm-cli.js") {
    return runProcess(process.execPath, [ownNpm, ...args], { outputTo: "standardError" });
  }
  return runProcess("npm", args, { outputTo: "standardError", shell: process.platform === "win32" });
}

if (isStarted(import.meta.url)) process.exitCode = (await install()) ? 0 : 1;
