// Runs a TypeScript module of the project after building it: what is measured must be the code that ships. Loaded
// through vite's runner instead, every import is a getter and the same code is several times slower.
import { existsSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { projectRoot } from "./projectRoot.mjs";

const builtFolder = join(projectRoot, "node_modules", ".cache", "tonebench-built");

/**
 * Builds `file` with everything it imports, packages too but for the solver, which looks for its WebAssembly beside itself,
 * into one module and runs its export `run`. The process ends
 * with the whole number it gives, else with 0, or with 1 where it cannot be had.
 * @param {string} file path from the project's root
 * @param {unknown[]} [args] what `run` is given
 */
export async function runBuilt(file, args = []) {
  if (!existsSync(join(projectRoot, file))) {
    return refuse(`There is no ${file} yet, so this command has nothing to run.`);
  }
  const vite = await import("vite").catch(() => undefined);
  if (vite === undefined) return refuse("The packages are not installed: run `npm ci` or `npm start` once.");
  const name = `${basename(join(file, ".."))}-${basename(file, ".ts")}`;
  await vite.build({
    root: projectRoot,
    configFile: false,
    envFile: false,
    logLevel: "error",
    ssr: { noExternal: true, external: ["highs"] },
    build: {
      ssr: join(projectRoot, file),
      outDir: join(builtFolder, name),
      emptyOutDir: true,
      minify: false,
      target: "es2022",
      rollupOptions: { output: { entryFileNames: "built.mjs" } },
    },
  });
  const module = await import(pathToFileURL(join(builtFolder, name, "built.mjs")).href);
  if (typeof module.run !== "function") return refuse(`${file} exports no function run.`);
  const result = await module.run(...args);
  process.exitCode = typeof result === "number" ? result : 0;
}

/** @param {string} sentence */
function refuse(sentence) {
  console.error(sentence);
  process.exitCode = 1;
}
