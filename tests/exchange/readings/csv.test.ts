/** Plain tables: columns guessed, matched by hand and remembered. Every example is invented (exampleFiles.ts). */
import { describe, expect, it } from "vitest";
import { readCsv } from "../../../src/exchange/readings/csv.ts";
import {
  applyMatching,
  type ColumnMatching,
  guessColumns,
} from "../../../src/exchange/readings/csvColumns.ts";
import { NOTHING_ANSWERED, type ReadingsResult } from "../../../src/exchange/readings/readSample.ts";
import { EXAMPLE_SAMPLES, exampleReflectance, labCsv, spectralCsv } from "./exampleFiles.ts";

const read = (text: string, matching: ColumnMatching | null = null) =>
  readCsv(text, matching, NOTHING_ANSWERED);

function taken(result: ReadingsResult) {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problems)}`);
  return result;
}

const labs = (result: ReadingsResult) => taken(result).samples.map(({ name, lab }) => ({ name, ...lab }));
const codes = (result: ReadingsResult) => (result.ok ? [] : result.problems.map(({ code }) => code));

describe("the guess at columns", () => {
  it.each([
    [
      ["Name", "L*", "a*", "b*"],
      ["name", "L", "a", "b"],
    ],
    [
      ["ID", "Sample Name", "LAB_L", "LAB_A", "LAB_B"],
      ["left-out", "name", "L", "a", "b"],
    ],
    [
      ["Nr", "L*(D65/10°)", "a*(D65/10°)", "b*(D65/10°)"],
      ["name", "L", "a", "b"],
    ],
    [
      ["CIE L*", "CIE a*", "CIE b*", "Illuminant", "Observer"],
      ["L", "a", "b", "light", "observer"],
    ],
    [
      ["X", "Y", "Z"],
      ["X", "Y", "Z"],
    ],
    [
      ["X", "Y", "Z", "L", "a", "b"],
      ["left-out", "left-out", "left-out", "L", "a", "b"],
    ],
    [
      ["400 nm", "R 410", "420", "430.0"],
      ["nm:400", "nm:410", "nm:420", "nm:430"],
    ],
    [
      ["SPECTRAL_NM_400", "R[410]", "Refl 420 nm (%)", "nm430"],
      ["nm:400", "nm:410", "nm:420", "nm:430"],
    ],
  ])("takes %j as %j", (headings, roles) => {
    expect(guessColumns(headings)?.columns.map(({ role }) => role)).toEqual(roles);
  });

  it.each([
    [["Lot", "Amount", "Batch"]],
    [["L*", "a*"]],
    [["Order", "400", "Size"]],
    [["Length", "Area", "Breadth"]],
  ])("finds no readings in %j", (headings) => {
    expect(guessColumns(headings)).toBeNull();
  });

  it("takes the first of several lights and says what it left out", () => {
    const text = "L*(D65/10),a*(D65/10),b*(D65/10),L*(A/10),a*(A/10),b*(A/10)\n50,1,2,51,3,4";
    const result = taken(read(text));
    expect(result.samples[0]).toMatchObject({ lab: { L: 50, a: 1, b: 2 }, light: "D65", observer: "10deg" });
    expect(result.warnings.map(({ code }) => code)).toEqual(["readings-columns-left-out"]);
  });
});

describe("a plain table", () => {
  it.each([
    ["commas", ",", "."],
    ["semicolons and decimal commas", ";", ","],
    ["tabs and decimal commas", "\t", ","],
    ["tabs and decimal points", "\t", "."],
    ["semicolons and decimal points", ";", "."],
  ])("parted by %s gives the same readings", (_name, separator, decimal) => {
    expect(labs(read(labCsv(EXAMPLE_SAMPLES, separator, decimal)))).toEqual(EXAMPLE_SAMPLES);
  });

  it("reads quoted decimal commas in a file parted by commas", () => {
    expect(labs(read('Name,L*,a*,b*\n"Navy, deep","21,5","1,5","-14,0"'))).toEqual([
      { name: "Navy, deep", L: 21.5, a: 1.5, b: -14 },
    ]);
  });

  it("refuses unquoted decimal commas in a file parted by commas, and mixed decimal signs", () => {
    expect(codes(read("Name,L*,a*,b*\nx,21,5,1,5,-14,0"))).toEqual(["readings-row-too-long"]);
    expect(codes(read("Name;L*;a*;b*\nx;21,5;1.5;-14"))).toEqual(["readings-not-a-number"]);
  });

  it("asks for light, observer and geometry that no column states", () => {
    expect(taken(read(labCsv(EXAMPLE_SAMPLES))).toAsk).toEqual(["light", "observer", "geometry"]);
    const stated = "L*,a*,b*,Illuminant,Observer,Geometry\n50,1,2,D50,2°,SCI\n50,1,2,D65,10°,45/0";
    const result = taken(read(stated));
    expect(result.toAsk).toEqual([]);
    expect(result.samples.map(({ light, observer, geometry }) => [light, observer, geometry])).toEqual([
      ["D50", "2deg", "specular-included"],
      ["D65", "10deg", "45:0"],
    ]);
  });

  it("reads light, observer and gloss from headings and from one column, and says nothing of what is not there", () => {
    const conditions = (text: string) => {
      const result = taken(read(text));
      const { light, observer, geometry } = result.samples[0]!;
      return { said: [light, observer, geometry], warnings: result.warnings.map(({ code }) => code) };
    };
    expect(conditions("L*(10°),a*(10°),b*(10°)\n50,1,2")).toEqual({
      said: [null, "10deg", null],
      warnings: [],
    });
    expect(conditions("L*(SCI),a*(SCI),b*(SCI),L*(SCE),a*(SCE),b*(SCE)\n50,1,2,48,1,2")).toEqual({
      said: [null, null, "specular-included"],
      warnings: ["readings-columns-left-out"],
    });
    expect(conditions("L*,a*,b*,Illuminant/Observer\n50,1,2,D65/10°")).toEqual({
      said: ["D65", "10deg", null],
      warnings: [],
    });
  });

  it("passes over lines above the headings, empty lines and rows without a reading, and says so", () => {
    const text = `Invented export\n;;;\n\n${labCsv(EXAMPLE_SAMPLES, ";")}\n;;;\nNotes;;;\n`;
    const result = taken(read(text));
    expect(result.samples).toHaveLength(4);
    expect(result.samples[0]).toMatchObject({ line: 5, where: "rows[0]" });
    expect(result.warnings).toEqual([
      { code: "readings-lines-before-headings", where: "", values: { count: 3 } },
      { code: "readings-row-without-readings", where: "rows[5]", values: { line: 10, name: "Notes" } },
    ]);
  });

  it("reads spectra as fractions or as percents, told by the largest value, by % or by an answer", () => {
    const expected = exampleReflectance(EXAMPLE_SAMPLES[0]!, 550);
    const at550 = (result: ReadingsResult) => taken(result).samples[0]?.spectrum?.reflectance[17];
    expect(at550(read(spectralCsv(EXAMPLE_SAMPLES, 1)))).toBeCloseTo(expected, 4);
    const percents = read(spectralCsv(EXAMPLE_SAMPLES, 100));
    expect(at550(percents)).toBeCloseTo(expected, 4);
    expect(taken(percents).warnings.map(({ code }) => code)).toEqual(["readings-as-percent"]);

    // A cloth so dark that its percents look like fractions: the size alone misleads, the sign or an answer does not.
    const dark = spectralCsv(EXAMPLE_SAMPLES, 1);
    expect(at550(readCsv(dark, null, { scale: "percent" }))).toBeCloseTo(expected / 100, 6);
    expect(at550(read(dark.replaceAll(" nm", " nm (%)")))).toBeCloseTo(expected / 100, 6);
    const signed = dark.replace(/,(\d\.\d+)/g, ",$1%");
    expect(at550(read(signed))).toBeCloseTo(expected / 100, 6);
  });

  it("warns where a row's Lab and spectrum do not belong together", () => {
    const lines = spectralCsv(EXAMPLE_SAMPLES.slice(0, 1), 1).split("\n");
    const text = `${lines[0]},L*(D65/10),a*(D65/10),b*(D65/10)\n${lines[1]},80,0,0`;
    expect(taken(read(text)).warnings.map(({ code }) => code)).toEqual(["readings-lab-unlike-spectrum"]);
  });

  it.each([
    ["a missing value", "Name,L*,a*,b*\nx,50,1", "readings-value-missing"],
    ["a word for a number", "Name,L*,a*,b*\nx,50,1,two", "readings-not-a-number"],
    ["an open quotation mark", 'Name,L*,a*,b*\nx,50,1,2\n"y,50,1,2\nz,1,2,3', "readings-csv-quotes"],
    ["no readings below the headings", "Name,L*,a*,b*\n", "readings-none"],
    ["no headings", "50,1,2\n51,1,2", "readings-no-headings"],
    ["the same column twice", "L*,a*,b*,a*\n50,1,2,3", "readings-column-twice"],
  ])("is refused for %s", (_name, text, code) => {
    expect(codes(read(text))).toEqual([code]);
  });
});

describe("a remembered matching", () => {
  const text = "Patch;Helligkeit;Rot-Grün;Gelb-Blau;L*;a*;b*\nx;50;1;2;60;3;4";
  const matching: ColumnMatching = {
    columns: [
      { heading: "Patch", role: "name" },
      { heading: "Helligkeit", role: "L" },
      { heading: "Rot-Grün", role: "a" },
      { heading: "Gelb-Blau", role: "b" },
    ],
    scale: null,
  };

  it("is applied before any guess, survives being stored, and finds its columns wherever they stand", () => {
    const stored = JSON.parse(JSON.stringify(matching)) as ColumnMatching;
    expect(labs(read(text, stored))).toEqual([{ name: "x", L: 50, a: 1, b: 2 }]);
    const moved = "gelb-blau;ROT-GRÜN ;Helligkeit;patch\n2;1;50;x";
    expect(labs(read(moved, stored))).toEqual([{ name: "x", L: 50, a: 1, b: 2 }]);
  });

  it("refuses a file that lacks one of its columns, naming it", () => {
    const result = read(text.replace("Rot-Grün", "other"), matching);
    expect(result.ok ? [] : result.problems).toEqual([
      { code: "readings-matching-misses", where: "", values: { headings: "Rot-Grün", line: 1 } },
    ]);
  });

  it("matches a repeated heading in order", () => {
    const headings = ["a", "a", "b"];
    const columns = [
      { heading: "a", role: "L" },
      { heading: "a", role: "a" },
    ] as const;
    expect(applyMatching({ columns, scale: null }, headings).roles).toEqual(["L", "a", "left-out"]);
  });
});
