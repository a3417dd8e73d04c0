/** CGATS.17 text: what is read, what is asked, what refuses the file. Every example is invented (exampleFiles.ts). */
import { describe, expect, it } from "vitest";
import { labFromTristimulus } from "../../../src/core/colorimetry/cielab.ts";
import { weightsFor } from "../../../src/core/colorimetry/weights.ts";
import { answerAsked } from "../../../src/exchange/readings/answerAsked.ts";
import { readCgats } from "../../../src/exchange/readings/cgats.ts";
import { NOTHING_ANSWERED, type ReadingsResult } from "../../../src/exchange/readings/readSample.ts";
import {
  cgatsFile,
  cgatsTable,
  EXAMPLE_SAMPLES,
  exampleReflectance,
  TEN_NM,
  wavelengths,
} from "./exampleFiles.ts";

const read = (text: string) => readCgats(text, NOTHING_ANSWERED);

function taken(result: ReadingsResult) {
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problems)}`);
  return result;
}

const codes = (result: ReadingsResult): string[] =>
  result.ok ? [] : result.problems.map((problem) => problem.code);

describe("a CGATS.17 text", () => {
  it("gives Lab with the light, observer and geometry of the standard's keywords", () => {
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES))));
    expect(result.toAsk).toEqual([]);
    expect(result.warnings).toEqual([]);
    expect(result.samples.map(({ name, lab }) => ({ name, ...lab }))).toEqual(EXAMPLE_SAMPLES);
    for (const sample of result.samples)
      expect(sample).toMatchObject({ light: "D65", observer: "10deg", geometry: "45:0", spectrum: null });
  });

  it.each([
    ["blanks", " "],
    ["tabs", "\t"],
  ] as const)("reads columns parted by %s alike, quoted names with blanks whole", (_name, separator) => {
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { separator }))));
    expect(result.samples.map((sample) => sample.name)).toEqual(EXAMPLE_SAMPLES.map(({ name }) => name));
  });

  it("reads unquoted names with blanks where tabs part the columns", () => {
    const text = cgatsFile(cgatsTable(EXAMPLE_SAMPLES))
      .replaceAll('"G03', "G03")
      .replace(/( \d)"/g, "$1");
    expect(text).toContain("\tG03 bare 1\t");
    expect(taken(read(text)).samples[0]?.name).toBe("G03 bare 1");
  });

  it.each([
    ["SPECTRAL_NM380", (nm: number) => `SPECTRAL_NM${nm}`],
    ["NM380", (nm: number) => `NM${nm}`],
    ["nm380", (nm: number) => `nm${nm}`],
    ["R_380", (nm: number) => `R_${nm}`],
    ["SPECTRAL_380", (nm: number) => `SPECTRAL_${nm}`],
    ["SPEC_380", (nm: number) => `SPEC_${nm}`],
    ["R_380nm", (nm: number) => `R_${nm}nm`],
    ["380", (nm: number) => String(nm)],
  ])("knows a spectrum's columns written %s", (_name, heading) => {
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { kind: "spectral", heading }))));
    const [first] = result.samples;
    expect(first?.lab).toBeNull();
    expect(first?.spectrum?.assumptions).toEqual([]);
    const expected = wavelengths(TEN_NM).map((nm) => exampleReflectance(EXAMPLE_SAMPLES[0]!, nm));
    for (const [band, value] of expected.entries())
      expect(first?.spectrum?.reflectance[band]).toBeCloseTo(value, 5);
  });

  it("asks for no light where a spectrum is there, but for a geometry that is not stated", () => {
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { kind: "spectral", keywords: [] }))));
    expect(result.toAsk).toEqual(["geometry"]);
  });

  it("tells percents by their size and says so; an answer overrides it", () => {
    const text = cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { kind: "spectral", scale: 100 }));
    const result = taken(read(text));
    expect(result.warnings.map(({ code }) => code)).toEqual(["readings-as-percent"]);
    expect(result.samples[0]?.spectrum?.reflectance[0]).toBeCloseTo(
      exampleReflectance(EXAMPLE_SAMPLES[0]!, 380),
      5,
    );
    expect(result.samples[0]?.spectrum?.assumptions).toEqual(["read-as-percent"]);
    expect(codes(readCgats(text, { scale: "fraction" }))).toContain("readings-spectrum-value");
  });

  it("says what was resampled: 5 nm picked, 20 nm interpolated, short ends repeated", () => {
    const assumptions = (firstNm: number, lastNm: number, stepNm: number) =>
      taken(
        read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { kind: "spectral", band: { firstNm, lastNm, stepNm } }))),
      ).samples[0]?.spectrum?.assumptions;
    expect(assumptions(380, 730, 5)).toEqual(["picked-from-5-nm:380-730"]);
    expect(assumptions(400, 700, 10)).toEqual(["short-end-extended:380-390", "long-end-extended:710-730"]);
    expect(assumptions(400, 700, 20)?.[0]).toBe("interpolated-from-20-nm:400-700");
  });

  it("reads the standard's pairs of wavelength and value, whose unit the name states", () => {
    const nms = wavelengths({ firstNm: 400, lastNm: 700, stepNm: 20 });
    const pairs = (name: string, scale: number) =>
      [
        "CGATS.17",
        "BEGIN_DATA_FORMAT",
        ["SAMPLE_ID", ...nms.flatMap(() => ["SPECTRAL_NM", name])].join(" "),
        "END_DATA_FORMAT",
        "NUMBER_OF_SETS 1",
        "BEGIN_DATA",
        ["1", ...nms.flatMap((nm) => [nm, 0.01 * scale])].join(" "),
        "END_DATA",
      ].join("\n");
    const percent = taken(read(pairs("SPECTRAL_PCT", 100)));
    expect(percent.warnings).toEqual([]);
    expect(percent.samples[0]?.spectrum?.reflectance[10]).toBeCloseTo(0.01, 12);
    // One percent everywhere, and stated: it must not be taken for the factor 1.
    expect(taken(read(pairs("SPECTRAL_DEC", 1))).samples[0]?.spectrum?.reflectance[10]).toBeCloseTo(0.01, 12);
  });

  it("turns XYZ into Lab only once light and observer are known", () => {
    const samples = [{ name: "x", L: 20, a: 21, b: 22 }];
    const text = cgatsFile(cgatsTable(samples, { kind: "xyz", keywords: ['ILLUMINATION_NAME "D50"'] }));
    const result = taken(read(text));
    expect(result.toAsk).toEqual(["observer", "geometry"]);
    expect(result.samples[0]).toMatchObject({
      lab: null,
      tristimulus: { X: 20, Y: 21, Z: 22 },
      light: "D50",
    });
    const [answered] = answerAsked(result.samples, { light: "D65", observer: "2deg", geometry: "45:0" });
    const { white } = weightsFor({ illuminant: "D50", observer: "2deg" });
    expect(answered?.light).toBe("D50");
    expect(answered?.lab).toEqual(labFromTristimulus({ X: 20, Y: 21, Z: 22 }, white));
  });

  it("takes several tables, each with what it says for itself, and passes over one without readings", () => {
    const second = cgatsTable(EXAMPLE_SAMPLES.slice(0, 1), {
      keywords: ["ILLUMINATION_NAME D50", "OBSERVER_ANGLE 2"],
    });
    const device = "BEGIN_DATA_FORMAT\nSAMPLE_ID CMYK_K\nEND_DATA_FORMAT\nBEGIN_DATA\n1 50\nEND_DATA\n";
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES), device, second)));
    expect(result.samples).toHaveLength(5);
    expect(result.samples.at(-1)).toMatchObject({ light: "D50", observer: "2deg", geometry: null });
    expect(result.samples.at(-1)?.where).toBe("tables[2].rows[0]");
    expect(result.toAsk).toEqual(["geometry"]);
    expect(result.warnings).toEqual([
      { code: "readings-table-passed-over", where: "tables[1]", values: { rows: 1 } },
    ]);
  });

  it("asks for light and observer where no keyword states them, and quotes what it did not understand", () => {
    const keywords = ['ILLUMINATION_NAME "our booth"', 'MEASUREMENT_GEOMETRY "d/8"'];
    const result = taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { keywords }))));
    expect(result.toAsk).toEqual(["light", "observer", "geometry"]);
    expect(result.warnings.map(({ values }) => values)).toEqual([
      { what: "light", text: "our booth" },
      { what: "geometry", text: "d/8" },
    ]);
  });

  it("asks for the geometry behind a polarising filter, which no stated angle makes known", () => {
    const keywords = ["ILLUMINATION_NAME D50", "OBSERVER_ANGLE 2", 'MEASUREMENT_GEOMETRY "45/0"'];
    const under = (line: string) =>
      taken(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { keywords: [...keywords, line] })))).toAsk;
    expect(under('MEASUREMENT_SOURCE "MeasurementCondition=M3 Filter=Pol"')).toEqual(["geometry"]);
    expect(under('MEASUREMENT_SOURCE "MeasurementCondition=M1 Filter=No"')).toEqual([]);
  });

  it("refuses Lab under a light there are no weights for, and keywords that contradict each other", () => {
    const under = (...keywords: string[]) =>
      codes(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { keywords }))));
    expect(new Set(under("ILLUMINATION_NAME C", "OBSERVER_ANGLE 2"))).toEqual(
      new Set(["readings-light-not-offered"]),
    );
    expect(new Set(under("ILLUMINATION_NAME D50", 'WEIGHTING_FUNCTION "ILLUMINANT, D65"'))).toEqual(
      new Set(["readings-contradiction"]),
    );
  });
});

describe("a CGATS.17 text with something wrong", () => {
  const good = cgatsFile(cgatsTable(EXAMPLE_SAMPLES));

  it.each([
    [
      "a cell that is no number",
      good.replace("27.44", "27.4x"),
      "readings-not-a-number",
      { line: 14, text: "27.4x" },
    ],
    [
      "an empty cell",
      good.replace("\t27.44\t", "\t\t"),
      "readings-value-missing",
      { line: 14, heading: "LAB_L" },
    ],
    [
      "a cell too few",
      good.replace("\t27.44\t", "\t"),
      "readings-cgats-row-length",
      { line: 14, found: 4, wanted: 5 },
    ],
    ["an impossible lightness", good.replace("27.44", "274.4"), "readings-lab-value", { line: 14, L: 274.4 }],
    [
      "a row less than stated",
      good.replace(/\n2\t.*/, ""),
      "readings-cgats-count-differs",
      { stated: 4, found: 3 },
    ],
    [
      "a field less than stated",
      good.replace("FIELDS 5", "FIELDS 6"),
      "readings-cgats-count-differs",
      { stated: 6 },
    ],
    ["no end", good.replace(/END_DATA\s*$/, ""), "readings-cgats-cut-short", {}],
    [
      "data without a format",
      good.replace(/BEGIN_DATA_FORMAT[\s\S]*END_DATA_FORMAT/, ""),
      "readings-cgats-no-format",
      {},
    ],
    ["a count that is none", good.replace("SETS 4", "SETS four"), "readings-cgats-count", { stated: "four" }],
    ["a column twice", good.replace("SAMPLE_ID", "LAB_L"), "readings-column-twice", { role: "L" }],
  ])("is refused for %s, with the place named", (_name, text, code, values) => {
    const result = read(text);
    expect(codes(result)).toContain(code);
    const problem = result.ok ? undefined : result.problems.find((each) => each.code === code);
    expect(problem?.values).toMatchObject(values);
  });

  it("names every wrong row, up to fifty, and takes none of the others", () => {
    const result = read(good.replace("27.44", "x").replace("30.47", "y"));
    expect(result.ok).toBe(false);
    expect(result.ok ? [] : result.problems.map(({ values }) => values?.line)).toEqual([14, 15]);
  });

  it("refuses XYZ whose scale nobody can tell", () => {
    const samples = [{ name: "x", L: 0.2, a: 0.21, b: 0.22 }];
    expect(codes(read(cgatsFile(cgatsTable(samples, { kind: "xyz" }))))).toEqual([
      "readings-tristimulus-scale",
    ]);
  });

  it("refuses a spectrum that misses part of 400-700 nm", () => {
    const band = { firstNm: 420, lastNm: 700, stepNm: 10 };
    expect(codes(read(cgatsFile(cgatsTable(EXAMPLE_SAMPLES, { kind: "spectral", band }))))).toContain(
      "readings-spectrum-range",
    );
  });
});
