// `npm run demo`: makes demo-data/ anew from its stated parameters and a seed.
import { runFunction } from "./runTypeScript.mjs";

await runFunction("scripts/demo/generate.ts", "generate");
