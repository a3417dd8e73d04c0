/** From the text of the band kernel (WebAssembly) to the module that holds its machine code. */
import { fileURLToPath } from "node:url";
import wabt from "wabt";

const FOLDER = new URL("../src/core/prediction/kernel/", import.meta.url);
export const TEXT_FILE = fileURLToPath(new URL("bandKernel.wat", FOLDER));
export const CODE_FILE = fileURLToPath(new URL("bandKernelCode.ts", FOLDER));

/**
 * The machine code of `text`, base64.
 * @param {string} text
 */
export async function assembledKernel(text) {
  const assembler = await wabt();
  const module = assembler.parseWat("bandKernel.wat", text, { simd: true });
  try {
    module.validate();
    return Buffer.from(module.toBinary({}).buffer).toString("base64");
  } finally {
    module.destroy();
  }
}

/**
 * The TypeScript module for `code`.
 * @param {string} code base64
 */
export function kernelModule(code) {
  const lines = code.match(/.{1,100}/g) ?? [];
  return [
    "/** Machine code of bandKernel.wat, base64; written by `npm run kernel`, a test holds it equal to the text. */",
    "export const BAND_KERNEL_CODE = [",
    ...lines.map((line) => `  "${line}",`),
    '].join("");',
    "",
  ].join("\n");
}
