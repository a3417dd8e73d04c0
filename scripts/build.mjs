// Builds the planner into dist/; always from scratch, since it takes seconds and a stale page misleads.
import { join } from "node:path";
import { projectRoot, toolPath } from "./projectRoot.mjs";
import { runNode } from "./runProcess.mjs";

export const builtFolder = join(projectRoot, "dist");

/** The exit code of the build. */
export function build() {
  return runNode(toolPath("vite", "vite"), ["build", "--logLevel", "warn"]);
}
