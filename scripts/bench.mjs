// `npm run bench`: how fast the predictions are, beside a yardstick measured in the same run.
import { runFunction } from "./runTypeScript.mjs";

await runFunction("tests/bench/run.ts", "run");
