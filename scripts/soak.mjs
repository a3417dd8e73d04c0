// `npm run soak`: the large counts, which are no part of `npm test`, on built code.
import { runBuilt } from "./runBuilt.mjs";

await runBuilt("tests/soak/run.ts");
