// Writes dist/offline.js, the service worker that keeps the planner's files: offlineWorker.js with the list of what
// was built and a version that is the hash of all of it.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

export const OFFLINE_FILE = "offline.js";
const source = new URL("offlineWorker.js", import.meta.url);

/** The picture of the README lies in public/ but is no part of the page. */
const NOT_OF_THE_PAGE = new Set([OFFLINE_FILE, "matrix.png"]);

/**
 * The page's files in a built folder, by the address that the page asks for them.
 * @param {string} folder
 * @returns {string[]}
 */
export function keptFiles(folder) {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !NOT_OF_THE_PAGE.has(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(folder.length + 1))
    .map((file) => file.replaceAll("\\", "/"))
    .sort();
}

/** @param {string} folder a built folder */
export function writeOfflineWorker(folder) {
  const files = keptFiles(folder);
  const hash = createHash("sha256");
  for (const file of files)
    hash
      .update(file)
      .update("\0")
      .update(readFileSync(join(folder, file)));
  const version = hash.digest("hex").slice(0, 16);
  const list = `globalThis.OFFLINE = ${JSON.stringify({ version, files })};\n`;
  writeFileSync(join(folder, OFFLINE_FILE), list + readFileSync(source, "utf8"));
}

/** @returns {import("vite").Plugin} */
export function offlineWorker() {
  let folder = "";
  return {
    name: "offline-worker",
    apply: "build",
    configResolved(config) {
      folder = resolve(config.root, config.build.outDir);
    },
    closeBundle: {
      order: "post",
      handler(error) {
        if (error === undefined) writeOfflineWorker(folder);
      },
    },
  };
}
