/** Finds every statement in a source file that reaches another module, whatever its form. */
import { codeOnly } from "./sourceText.ts";

export interface FoundImport {
  /** As written, without a `?query`; undefined where it is computed, so that nobody can tell what is reached. */
  readonly specifier: string | undefined;
  /** `import type` and `export type`: gone at run time. Inline `{ type A }` is not, under verbatimModuleSyntax. */
  readonly isTypeOnly: boolean;
  /** The names imported, where the statement lists names and nothing else. */
  readonly names: readonly string[] | undefined;
}

const fromStatement =
  /\b(?:import|export)\b(\s+type\b(?!\s*(?:,|from\b)))?([^"'`;()=]*?)\bfrom\s*(["'])([^"'\n]+)\3/g;
const sideEffect = /\bimport\s*(["'])([^"'\n]+)\1/g;
const dynamic = /\bimport\s*\(\s*(?:(["'`])([^"'`$\n]+)\1\s*[,)])?/g;
const workerOrAsset = /\bnew\s+URL\s*\(\s*(?:(["'`])([^"'`$\n]+)\1|[^()"'`]*?)\s*,\s*import\.meta\.url/g;
const unreadable = /\bimport\.meta\.glob\b|\brequire\s*\(|\bimportScripts\s*\(/g;

/** All imports of a file, in no particular order. */
export function importsIn(source: string): FoundImport[] {
  const code = codeOnly(source, { strings: false });
  const found: FoundImport[] = [];
  for (const [, type, clause, , specifier] of code.matchAll(fromStatement)) {
    found.push({
      specifier: withoutQuery(specifier),
      isTypeOnly: type !== undefined,
      names: namesIn(clause ?? ""),
    });
  }
  for (const pattern of [sideEffect, dynamic, workerOrAsset]) {
    for (const match of code.matchAll(pattern)) {
      found.push({ specifier: withoutQuery(match[2]), isTypeOnly: false, names: undefined });
    }
  }
  for (const _ of code.matchAll(unreadable)) {
    found.push({ specifier: undefined, isTypeOnly: false, names: undefined });
  }
  return found;
}

function withoutQuery(specifier: string | undefined): string | undefined {
  return specifier?.replace(/\?.*$/, "");
}

/** `{ A, type B, C as D }` gives A, C: the values among listed names. Default and `*` imports list none. */
function namesIn(clause: string): string[] | undefined {
  const list = /^\s*\{([^}]*)\}\s*$/.exec(clause)?.[1];
  if (list === undefined) return undefined;
  return list
    .split(",")
    .map((part) => part.trim())
    .filter((part) => part !== "" && !part.startsWith("type "))
    .map((part) => part.replace(/\s+as\s+.*$/s, ""));
}
