/** A pasted spectrum is read whole, with what was assumed, or refused with what is wrong. */
import { describe, expect, it } from "vitest";
import { type PastedRange, readPastedSpectrum } from "../../src/job/pastedSpectrum.ts";
import { spectrumProblemSentence } from "../../src/planner/words/spectrumSentences.ts";

const ramp = (count: number, start = 0.1, step = 0.01) =>
  Array.from({ length: count }, (_, i) => (start + i * step).toFixed(3));

function read(text: string, range: PastedRange | null = null) {
  const result = readPastedSpectrum(text, range);
  if (!result.ok) throw new Error(`refused: ${JSON.stringify(result.problems)}`);
  return result;
}

function sentence(text: string, range: PastedRange | null = null): string {
  const result = readPastedSpectrum(text, range);
  if (result.ok) throw new Error("was taken");
  return result.problems.map(spectrumProblemSentence).join(" ");
}

describe("readPastedSpectrum", () => {
  it("takes 36 values as 380-730 nm and says that it did", () => {
    const { reflectance, assumptions } = read(ramp(36).join(" "));
    expect(reflectance.map((value) => value.toFixed(3))).toEqual(ramp(36));
    expect(assumptions).toEqual(["range-from-count:380-730"]);
  });

  it.each([
    ["tabs", "\t"],
    ["commas", ","],
    ["commas and blanks", ", "],
    ["semicolons", ";"],
    ["line ends", "\r\n"],
  ])("reads values parted by %s", (_name, sign) => {
    expect(read(ramp(36).join(sign)).reflectance[35]).toBeCloseTo(0.45, 12);
  });

  it.each([" ", "\t", ";", "; ", ", "])("reads decimal commas parted by %j", (sign) => {
    const text = ramp(36)
      .map((value) => value.replace(".", ","))
      .join(sign);
    expect(read(text).reflectance[35]).toBeCloseTo(0.45, 12);
  });

  it("reads two columns of wavelength and value, so that nothing is assumed of the range", () => {
    const text = ramp(36)
      .map((value, i) => `${380 + 10 * i}\t${value}`)
      .join("\n");
    expect(read(text).assumptions).toEqual([]);
  });

  it("tells columns of whole percents from decimal commas", () => {
    const text = Array.from({ length: 36 }, (_, i) => `${380 + 10 * i},${10 + i}`).join("\n");
    const { reflectance, assumptions } = read(text);
    expect(reflectance[0]).toBeCloseTo(0.1, 12);
    expect(assumptions).toEqual(["read-as-percent"]);
  });

  it("reads percents as such and says so", () => {
    const { reflectance, assumptions } = read(ramp(36, 10, 1).join(" "));
    expect(reflectance[0]).toBeCloseTo(0.1, 12);
    expect(assumptions).toContain("read-as-percent");
  });

  it("keeps a brightened white above 1 as a factor", () => {
    expect(read(ramp(36, 1.0, 0.001).join(" ")).reflectance[20]).toBeCloseTo(1.02, 12);
  });

  it("repeats the ends of 400-700 nm data and says which", () => {
    const { reflectance, assumptions } = read(ramp(31).join(" "));
    expect(reflectance).toHaveLength(36);
    expect(reflectance.slice(0, 3)).toEqual([0.1, 0.1, 0.1]);
    expect(assumptions).toEqual([
      "range-from-count:400-700",
      "short-end-extended:380-390",
      "long-end-extended:710-730",
    ]);
  });

  it("uses a typed range before the one that the count suggests", () => {
    const { stepNm, assumptions } = read(ramp(36).join(" "), { firstNm: 380, lastNm: 730 });
    expect(stepNm).toBe(10);
    expect(assumptions).toEqual([]);
  });

  it("says which word is no number, and which value it is", () => {
    expect(sentence(`0.1 0.2 O.3 ${ramp(33).join(" ")}`)).toBe("Value 3 is not a number: “O.3”.");
  });

  it("says that too few values are too few", () => {
    expect(sentence("0.1 0.2 0.3")).toBe("3 values are too few: 400 to 700 nm takes at least 16.");
  });

  it("asks for the wavelengths where the count does not tell them", () => {
    expect(sentence(ramp(37).join(" "))).toBe(
      "37 values do not tell their wavelengths: type the first and the last wavelength.",
    );
  });

  it("refuses a step that it cannot read", () => {
    expect(sentence(ramp(36).join(" "), { firstNm: 400, lastNm: 700 })).toMatch(/8\.57 nm apart/);
  });

  it("refuses columns with a wavelength left out", () => {
    const text = ramp(36)
      .map((value, i) => `${380 + 10 * i + (i > 5 ? 10 : 0)}\t${value}`)
      .join("\n");
    expect(sentence(text)).toBe("After 430 nm the wavelengths do not go on in steps of 10 nm.");
  });

  it("refuses a range that leaves out part of 400-700 nm", () => {
    expect(sentence(ramp(31).join(" "), { firstNm: 410, lastNm: 710 })).toMatch(/400 to 700 nm is needed/);
  });

  it("refuses a negative value with its wavelength", () => {
    expect(sentence(["-0.2", ...ramp(35)].join(" "))).toMatch(/^-0\.2 at 380 nm is no reflectance/);
  });

  it("refuses empty text", () => {
    expect(sentence("  \n")).toBe("Paste the values first.");
  });
});
