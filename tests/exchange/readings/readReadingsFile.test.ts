/** The one entry for readings files: what is inside tells the format, and every encoding in use is understood. */
import { readdir, readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { LARGEST_FILE_BYTES, LONGEST_XML } from "../../../src/exchange/readings/limits.ts";
import { readReadingsFile } from "../../../src/exchange/readings/readReadingsFile.ts";
import { importsIn } from "../../architecture/imports.ts";
import { bytesOf, cgatsFile, cgatsTable, cxf3File, EXAMPLE_SAMPLES, labCsv } from "./exampleFiles.ts";

const SAMPLES = EXAMPLE_SAMPLES.map((sample) => ({ ...sample, name: `Grün ${sample.name}` }));
const TEXTS = {
  cgats: cgatsFile(cgatsTable(SAMPLES)),
  csv: labCsv(SAMPLES, ";", ","),
  cxf3: cxf3File(SAMPLES, { values: "lab" }),
};

function utf16(text: string, order: "le" | "be", mark: boolean): Uint8Array {
  const units = Array.from({ length: text.length }, (_, i) => text.charCodeAt(i));
  return Uint8Array.from(
    (mark ? [0xfeff, ...units] : units).flatMap((unit) =>
      order === "le" ? [unit & 0xff, unit >> 8] : [unit >> 8, unit & 0xff],
    ),
  );
}

const latin1 = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

async function read(bytes: Uint8Array) {
  const { result } = await readReadingsFile("readings.dat", bytes);
  return result.ok
    ? { names: result.samples.map(({ name }) => name), warnings: result.warnings.map(({ code }) => code) }
    : { codes: result.problems.map(({ code }) => code) };
}

describe("a readings file", () => {
  it.each(["cgats", "csv", "cxf3"] as const)(
    "of %s is known by its content, whatever its name",
    async (format) => {
      const { name, result } = await readReadingsFile("wrong.xlsx", bytesOf(TEXTS[format]));
      expect(name).toBe("wrong.xlsx");
      if (!result.ok) throw new Error(JSON.stringify(result.problems));
      expect(result.format).toBe(format);
      expect(result.samples.map(({ name, lab }) => ({ name, ...lab }))).toEqual(SAMPLES);
    },
  );

  it.each(["cgats", "csv", "cxf3"] as const)("of %s reads the same in every encoding", async (format) => {
    const text = TEXTS[format];
    const names = SAMPLES.map(({ name }) => name);
    const plain = { names, warnings: [] };
    expect(await read(bytesOf(text))).toEqual(plain);
    expect(await read(bytesOf(`\uFEFF${text}`))).toEqual(plain);
    expect(await read(bytesOf(text.replaceAll("\n", "\r\n")))).toEqual(plain);
    expect(await read(utf16(text, "le", true))).toEqual(plain);
    expect(await read(utf16(text, "be", true))).toEqual(plain);
    expect(await read(utf16(text, "le", false))).toEqual(plain);
    expect(await read(utf16(text, "be", false))).toEqual(plain);
    expect(await read(latin1(text))).toEqual({ names, warnings: ["readings-as-latin-1"] });
  });

  it.each([
    ["nothing", new Uint8Array(), "readings-empty"],
    ["blanks", bytesOf(" \n\t\n"), "readings-empty"],
    ["a workbook", Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0]), "readings-workbook"],
    [
      "a picture",
      Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]),
      "readings-not-text",
    ],
    ["half a character", Uint8Array.from([0xff, 0xfe, 0x41]), "readings-not-text"],
    ["a letter", bytesOf("Dear printer,\nplease find the readings below."), "readings-no-headings"],
    ["too much", new Uint8Array(LARGEST_FILE_BYTES + 1), "readings-too-large"],
    ["too much XML", bytesOf(`<CxF>${" ".repeat(LONGEST_XML)}</CxF>`), "readings-too-large"],
  ])("that holds %s is refused", async (_name, bytes, code) => {
    expect(await read(bytes)).toEqual({ codes: [code] });
  });
});

describe("the reader of XML", () => {
  it("is reached by one import on demand and no other, so that the first load does not carry it", async () => {
    const folder = new URL("../../../src/", import.meta.url);
    const reaching: string[] = [];
    for (const name of await readdir(folder, { recursive: true })) {
      if (!/\.tsx?$/.test(name)) continue;
      const source = await readFile(new URL(name, folder), "utf8");
      for (const { specifier } of importsIn(source)) {
        if (specifier === "fast-xml-parser" || specifier?.endsWith("/cxf3.ts"))
          reaching.push(`${name} ${specifier}`);
      }
    }
    expect(reaching.sort()).toEqual([
      "exchange/readings/readReadingsFile.ts ./cxf3.ts",
      "exchange/readings/xmlTree.ts fast-xml-parser",
    ]);
    const entry = await readFile(new URL("exchange/readings/readReadingsFile.ts", folder), "utf8");
    expect(entry).toContain('await import("./cxf3.ts")');
  });
});
