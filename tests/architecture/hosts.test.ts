/** What is committed runs anywhere: it names no package registry and no folder of the machine it was written on. */
import { execFileSync } from "node:child_process";
import { lstatSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";

const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

// Put together from parts, so that this file is not itself a finding.
const folders = ["home", "root", "work", "tmp", "usr/share"].map((name) => ["", name, ""].join("/"));
const hosts = [
  ["npmjs", "org"],
  ["deb", "debian", "org"],
].map((parts) => parts.join("."));

/** The machine's own registry as npm passes it on: it may be one that no list foresees. */
function ownRegistryHosts(): string[] {
  const address = process.env.npm_config_registry;
  return address === undefined || address === "" ? [] : [new URL(address).host];
}

function escaped(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

const patterns = [
  new RegExp(["https?:", "", "registry\\."].join("/"), "i"),
  ...[...hosts, ...ownRegistryHosts()].map((host) => new RegExp(escaped(host), "i")),
  // Not where it goes on from a word: that is part of an address or of a relative path.
  ...folders.map((folder) => new RegExp(`(?<![\\w.~-])${escaped(folder)}`)),
];

function findingsIn(path: string, text: string): string[] {
  return text.split("\n").flatMap((line, index) => {
    const pattern = patterns.find((each) => each.test(line));
    return pattern === undefined ? [] : [`${path}:${index + 1} matches ${pattern}`];
  });
}

function committedTexts(): [path: string, text: string][] {
  const listed = execFileSync("git", ["ls-files", "-z"], { cwd: root, encoding: "utf8" });
  return listed
    .split("\0")
    .filter((path) => path !== "" && lstatSync(join(root, path), { throwIfNoEntry: false })?.isFile())
    .map((path): [string, Buffer] => [path, readFileSync(join(root, path))])
    .filter(([, bytes]) => !bytes.subarray(0, 8000).includes(0))
    .map(([path, bytes]) => [path, bytes.toString("utf8")]);
}

describe("committed text", () => {
  it("is found: a search of no files proves nothing", () => {
    expect(committedTexts().map(([path]) => path)).toEqual(
      expect.arrayContaining(["package.json", "package-lock.json"]),
    );
  });

  it("names no registry and no folder of a machine", () => {
    expect(committedTexts().flatMap(([path, text]) => findingsIn(path, text))).toEqual([]);
  });

  it.each([
    ["a registry", ["https:", "", "registry.example.org", "x.tgz"].join("/")],
    ["a known package host in capitals", (hosts[0] ?? "").toUpperCase()],
    ["a home folder", ["", "home", "someone"].join("/")],
    ["a folder in a quoted string", `"${["", "tmp", "x"].join("/")}"`],
  ])("would be caught naming %s", (_what, text) => {
    expect(findingsIn("planted", text)).toHaveLength(1);
  });

  it.each([["..", "work", "x"].join("/"), "https://example.org/home/x", "src/tmp/x"])(
    "may say %s",
    (text) => {
      expect(findingsIn("planted", text)).toEqual([]);
    },
  );
});
