// `npm run plan -- FILE [--csv]`: the command-line twin. Only the result goes to standard output, so this prints
// nothing and installs nothing.
import { runFunction } from "./runTypeScript.mjs";

// Whoever reads our output may stop early (`| head`); that is no error.
process.stdout.on("error", (error) => {
  if (/** @type {NodeJS.ErrnoException} */ (error).code !== "EPIPE") throw error;
  process.exit();
});

await runFunction("src/command/main.ts", "main", [process.argv.slice(2)]);
