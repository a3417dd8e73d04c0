// Where the project lies and where its installed tools are, whatever folder a script is called from.
import { readFileSync, realpathSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

export const projectRoot = dirname(dirname(fileURLToPath(import.meta.url)));

/**
 * The file that Node runs for an installed command: started as `node FILE`, it needs no shell on any system.
 * @param {string} packageName
 * @param {string} command
 */
export function toolPath(packageName, command) {
  const folder = join(projectRoot, "node_modules", packageName);
  /** @type {{ bin: Record<string, string> }} */
  const manifest = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = manifest.bin[command];
  if (file === undefined) throw new Error(`${packageName} has no command ${command}`);
  return join(folder, file);
}

/**
 * Whether this module is the one that Node was asked to run (and not one imported by another).
 * @param {string} moduleUrl
 */
export function isStarted(moduleUrl) {
  return process.argv[1] !== undefined && fileURLToPath(moduleUrl) === realpathSync(process.argv[1]);
}
