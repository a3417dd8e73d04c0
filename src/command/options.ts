/** Reads the command line of `npm run plan`. */

export interface Options {
  readonly file: string;
  readonly format: "json" | "csv";
}

export const USAGE = "npm run plan -- FILE [--csv]";

/** The options, or one sentence that says what is wrong with them. */
export function readOptions(args: readonly string[]): Options | string {
  const files: string[] = [];
  let format: Options["format"] = "json";
  for (const arg of args) {
    if (arg === "--csv") format = "csv";
    else if (arg.startsWith("-")) return `unknown option ${arg}; usage: ${USAGE}`;
    else files.push(arg);
  }
  const [file, second] = files;
  if (file === undefined) return `no file given; usage: ${USAGE}`;
  if (second !== undefined) return `more than one file given (${second}); usage: ${USAGE}`;
  return { file, format };
}
