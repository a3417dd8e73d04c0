// `npm run soak`: the long-running trials, which are no part of `npm test`.
import { runFunction } from "./runTypeScript.mjs";

await runFunction("tests/soak/run.ts", "run");
