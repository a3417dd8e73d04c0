/** Judges one file by rules.ts: every breach as a sentence. A function of text, so that tests can plant breaches. */
import { posix } from "node:path";
import { type FoundImport, importsIn } from "./imports.ts";
import {
  drawerName,
  impure,
  LONGEST_FILE_LINES,
  mayImport,
  mayUsePackages,
  outsideSource,
  pureZones,
  START_UP,
} from "./rules.ts";
import { codeOnly } from "./sourceText.ts";

/** The zone of a path from the project's root, by its folder; undefined outside the known ones. */
export function zoneOf(path: string): string | undefined {
  if (path === `src/${START_UP}`) return START_UP;
  const [top, folder = "", ...rest] = path.split("/");
  if (top !== "src" || rest.length === 0) return undefined;
  const zone = folder === "core" && rest.length > 1 ? `core/${rest[0]}` : folder;
  return zone in mayImport ? zone : undefined;
}

/** Breaches of a file in src, or of its name and length alone for a file elsewhere. */
export function breachesIn(path: string, source: string): string[] {
  const breaches = [...nameBreaches(path), ...lengthBreaches(path, source)];
  if (!path.startsWith("src/")) return breaches;
  const zone = zoneOf(path);
  if (zone === undefined) return [...breaches, `${path}: lies in no folder of the layout`];
  for (const found of importsIn(source)) {
    const reason = importBreach(path, zone, found);
    if (reason !== undefined) breaches.push(`${path}: ${reason}`);
  }
  return [...breaches, ...purityBreaches(path, zone, source)];
}

function importBreach(path: string, zone: string, found: FoundImport): string | undefined {
  const { specifier } = found;
  if (specifier === undefined) return "imports what cannot be read from the text";
  if (!/^[./]/.test(specifier)) return packageBreach(zone, specifier);
  if (specifier.startsWith("/")) return `imports ${specifier} by an absolute path`;
  const target = posix.normalize(posix.join(posix.dirname(path), specifier));
  if (zone === START_UP) {
    const isOpen = target.startsWith("src/") || outsideSource.some((folder) => target.startsWith(folder));
    return isOpen ? undefined : `imports ${target}, outside src`;
  }
  const targetZone = zoneOf(target);
  if (targetZone === undefined) return `imports ${target}, which lies in no folder of the layout`;
  if (targetZone === zone) return undefined;
  const open = mayImport[zone] ?? {};
  const opening = open[targetZone] ?? open[topOf(targetZone)];
  if (opening === undefined) return `${zone} may not import ${targetZone} (${specifier})`;
  if (opening === "all" || found.isTypeOnly) return undefined;
  if (opening === "types") return `${zone} may import types alone from ${targetZone} (${specifier})`;
  const areConstants = found.names?.every((name) => /^[A-Z][A-Z0-9_]*$/.test(name)) ?? false;
  return areConstants
    ? undefined
    : `${zone} may import types and constants alone from ${targetZone} (${specifier})`;
}

function packageBreach(zone: string, specifier: string): string | undefined {
  const allowed = mayUsePackages[topOf(zone)] ?? [];
  const name = specifier
    .split("/")
    .slice(0, specifier.startsWith("@") ? 2 : 1)
    .join("/");
  const isAllowed = allowed.includes(name) || (specifier.startsWith("node:") && allowed.includes("node:"));
  return isAllowed ? undefined : `${zone} may not use the package ${specifier}`;
}

function topOf(zone: string): string {
  return zone.split("/")[0] ?? zone;
}

function purityBreaches(path: string, zone: string, source: string): string[] {
  if (!pureZones.includes(topOf(zone))) return [];
  const code = codeOnly(source, { strings: true });
  return impure
    .filter(({ pattern }) => pattern.test(code))
    .map(({ name }) => `${path}: uses ${name}; ids and times are arguments`);
}

function nameBreaches(path: string): string[] {
  const drawer = path.split("/").find((part) => drawerName.test(part));
  return drawer === undefined ? [] : [`${path}: ${drawer} says nothing about what is in it`];
}

function lengthBreaches(path: string, source: string): string[] {
  if (path.startsWith("src/core/tables/")) return [];
  const lineCount = source.replace(/\n$/, "").split("\n").length;
  return lineCount > LONGEST_FILE_LINES
    ? [`${path}: ${lineCount} lines, more than ${LONGEST_FILE_LINES}`]
    : [];
}
