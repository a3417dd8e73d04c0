/**
 * Blanks what is no code in TypeScript text, so that a plain search finds code only. Line breaks stay.
 * A scan by hand, not a parser: one that fails to read a file reports nothing and looks like success.
 */

export interface BlankOptions {
  /** Also blank what stands between quotes (not the code inside `${...}`). */
  readonly strings: boolean;
}

const regexpMayFollow = /(?:^|[(,=:[!&|?{};+\-*%<>~^]|\b(?:return|typeof|case|in|of))\s*$/;

/** `source` with comments (and strings and regular expressions, if asked) replaced by spaces. */
export function codeOnly(source: string, { strings }: BlankOptions): string {
  let out = "";
  let at = 0;
  /** For each `${` we are inside of: how many braces are open in it. */
  const templateDepths: number[] = [];

  const blankTo = (end: number, isBlanked: boolean) => {
    const text = source.slice(at, end);
    out += isBlanked ? text.replace(/[^\n]/g, " ") : text;
    at = end;
  };

  while (at < source.length) {
    const char = source.charAt(at);
    const pair = source.slice(at, at + 2);
    if (pair === "//") blankTo(lineEnd(source, at), true);
    else if (pair === "/*") blankTo(endAfter(source, "*/", at + 2), true);
    else if (char === '"' || char === "'") blankTo(quoteEnd(source, at), strings);
    else if (char === "/" && regexpMayFollow.test(out.slice(-80))) blankTo(regexpEnd(source, at), strings);
    else if (char === "`" || (char === "}" && templateDepths.at(-1) === 0)) {
      if (char === "}") templateDepths.pop();
      const end = templateEnd(source, at + 1);
      blankTo(end, strings);
      if (source.slice(end - 2, end) === "${") templateDepths.push(0);
    } else {
      const depth = templateDepths.length - 1;
      if (depth >= 0 && char === "{") templateDepths[depth] = (templateDepths[depth] ?? 0) + 1;
      if (depth >= 0 && char === "}") templateDepths[depth] = (templateDepths[depth] ?? 0) - 1;
      blankTo(at + 1, false);
    }
  }
  return out;
}

function endAfter(source: string, mark: string, from: number): number {
  const found = source.indexOf(mark, from);
  return found < 0 ? source.length : found + mark.length;
}

function lineEnd(source: string, from: number): number {
  const found = source.indexOf("\n", from);
  return found < 0 ? source.length : found;
}

/** Quoted strings end with their line at the latest: an apostrophe in JSX text opens none that swallows the file. */
function quoteEnd(source: string, from: number): number {
  const quote = source.charAt(from);
  for (let i = from + 1; i < source.length; i++) {
    const char = source.charAt(i);
    if (char === "\n") return i;
    if (char === quote) return i + 1;
    if (char === "\\") i++;
  }
  return source.length;
}

/** Up to and with the closing backtick, or the `${` that opens code. */
function templateEnd(source: string, from: number): number {
  for (let i = from; i < source.length; i++) {
    const char = source.charAt(i);
    if (char === "`") return i + 1;
    if (char === "$" && source.charAt(i + 1) === "{") return i + 2;
    if (char === "\\") i++;
  }
  return source.length;
}

function regexpEnd(source: string, from: number): number {
  let isInClass = false;
  for (let i = from + 1; i < source.length; i++) {
    const char = source.charAt(i);
    if (char === "\n") return from + 1;
    if (char === "\\") i++;
    else if (char === "[") isInClass = true;
    else if (char === "]") isInClass = false;
    else if (char === "/" && !isInClass) return i + 1;
  }
  return from + 1;
}
