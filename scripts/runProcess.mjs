// Runs another program to its end, with its output on ours, and stops it if it hangs.
import { spawn } from "node:child_process";
import { projectRoot } from "./projectRoot.mjs";

const LONGEST_RUN_MS = 15 * 60 * 1000;

/**
 * The exit code of the program; 127 where it could not be started, 124 where it was stopped for taking too long.
 * @param {string} program
 * @param {string[]} args
 * @param {{ env?: Record<string, string>, outputTo?: "ours" | "standardError", shell?: boolean }} [options]
 * @returns {Promise<number>}
 */
export function runProcess(program, args, { env = {}, outputTo = "ours", shell = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(program, args, {
      cwd: projectRoot,
      env: { ...plainInLogs(), ...env },
      shell,
      stdio: ["ignore", outputTo === "ours" ? "inherit" : process.stderr, "inherit"],
    });
    let isLate = false;
    const timer = setTimeout(() => {
      isLate = true;
      child.kill("SIGKILL");
    }, LONGEST_RUN_MS);
    child.on("error", (error) => {
      clearTimeout(timer);
      console.error(`Could not start ${program}: ${error.message}`);
      resolve(127);
    });
    child.on("close", (code) => {
      clearTimeout(timer);
      if (isLate)
        console.error(`Stopped ${program}: it ran for more than ${LONGEST_RUN_MS / 60000} minutes.`);
      resolve(isLate ? 124 : (code ?? 1));
    });
  });
}

/** Our environment; where our output is no terminal, it asks for no colours (which CI=true would switch on). */
function plainInLogs() {
  if (process.stdout.isTTY) return process.env;
  const { FORCE_COLOR: _, ...rest } = process.env;
  return { ...rest, NO_COLOR: "1" };
}

/**
 * As runProcess, for a script that Node runs.
 * @param {string} file
 * @param {string[]} args
 * @param {{ env?: Record<string, string> }} [options]
 */
export function runNode(file, args, options) {
  return runProcess(process.execPath, [file, ...args], options);
}
