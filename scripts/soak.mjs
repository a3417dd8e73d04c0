// `npm run soak [-- PART ...]`: the large counts, which are no part of `npm test`, on built code; all parts unless named.
import { runBuilt } from "./runBuilt.mjs";

await runBuilt("tests/soak/run.ts", [process.argv.slice(2)]);
