// `npm run bench`: how fast the predictions are, beside a yardstick measured in the same run on built code.
import { runBuilt } from "./runBuilt.mjs";

await runBuilt("tests/bench/run.ts");
