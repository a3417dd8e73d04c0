/** `npm run kernel`: writes the machine code of the band kernel anew from its text. */
import { readFile, writeFile } from "node:fs/promises";
import { assembledKernel, CODE_FILE, kernelModule, TEXT_FILE } from "./assembledKernel.mjs";

await writeFile(CODE_FILE, kernelModule(await assembledKernel(await readFile(TEXT_FILE, "utf8"))));
