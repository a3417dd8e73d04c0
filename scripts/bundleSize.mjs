// What a browser must fetch before the planner is up, gzipped: the page, its styles, its scripts and their static
// imports, and the workers that those start. What is imported on demand does not count.
import { existsSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { gzipSync } from "node:zlib";
import { builtFolder } from "./build.mjs";
import { isStarted } from "./projectRoot.mjs";

/** Design limit (issue "The main job, end to end", done when): 250 kB of 1000 bytes. */
export const LARGEST_FIRST_LOAD_BYTES = 250_000;

const pageTag = /<(script|link)\b[^>]*>/g;
const staticImport = /\b(?:from|import)\s*(["'])(\.{1,2}\/[^"']+\.js)\1/g;
const startedWorker = /\bnew Worker\(\s*new URL\(\s*(["'`])([^"'`]+\.js)\1/g;

/**
 * The files of the first load with their gzipped sizes, largest first.
 * @param {string} folder a built folder with its index.html
 * @returns {{ file: string, gzipBytes: number }[]}
 * @throws Error where a named file is not there, or the page names no script
 */
export function firstLoad(folder) {
  const page = join(folder, "index.html");
  const found = new Set([page]);
  for (const file of namedInPage(readFileSync(page, "utf8"))) addWithImports(join(folder, file), found);
  if (![...found].some((file) => file.endsWith(".js"))) throw new Error("index.html names no script");
  return [...found]
    .map((file) => ({ file: relative(folder, file), gzipBytes: gzipSync(readFileSync(file)).length }))
    .sort((a, b) => b.gzipBytes - a.gzipBytes);
}

/** @param {string} html */
function namedInPage(html) {
  const files = [];
  for (const [tag, name] of html.matchAll(pageTag)) {
    const isLoaded = name === "script" || /\brel="(?:stylesheet|modulepreload|preload)"/.test(tag);
    const address = /\b(?:src|href)="([^"]+)"/.exec(tag)?.[1];
    if (isLoaded && address !== undefined) files.push(address);
  }
  return files;
}

/**
 * @param {string} file
 * @param {Set<string>} found
 */
function addWithImports(file, found) {
  if (found.has(file)) return;
  if (!existsSync(file)) throw new Error(`the first load names a file that is not built: ${file}`);
  found.add(file);
  if (!file.endsWith(".js")) return;
  const code = readFileSync(file, "utf8");
  for (const pattern of [staticImport, startedWorker]) {
    for (const match of code.matchAll(pattern)) addWithImports(join(dirname(file), match[2] ?? ""), found);
  }
}

/**
 * Prints the figure.
 * @returns {boolean} whether it is within the limit
 */
export function reportBundleSize(folder = builtFolder) {
  const files = firstLoad(folder);
  const totalBytes = files.reduce((sum, { gzipBytes }) => sum + gzipBytes, 0);
  for (const { file, gzipBytes } of files) console.log(`  ${inKb(gzipBytes).padStart(6)} kB  ${file}`);
  console.log(`First load, gzipped: ${inKb(totalBytes)} kB of at most ${inKb(LARGEST_FIRST_LOAD_BYTES)} kB.`);
  return totalBytes <= LARGEST_FIRST_LOAD_BYTES;
}

/** @param {number} bytes */
function inKb(bytes) {
  return (bytes / 1000).toFixed(1);
}

if (isStarted(import.meta.url)) process.exitCode = reportBundleSize() ? 0 : 1;
