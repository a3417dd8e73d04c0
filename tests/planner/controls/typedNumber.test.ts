/** Numbers are read as people type them, and asked about where they can be read two ways. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { printNumber, readNumber } from "../../../src/planner/controls/typedNumber.ts";

describe("readNumber", () => {
  it.each([
    ["4", 4],
    [" 0.25 ", 0.25],
    ["0,25", 0.25],
    [".5", 0.5],
    ["\u22123.5", -3.5],
    ["-3.5", -3.5],
    ["1 234.5", 1234.5],
    ["12,345,678", 12_345_678],
    ["1,234.5", 1234.5],
  ])("reads %j as %d", (text, value) => {
    expect(readNumber(text)).toEqual({ ok: true, value });
  });

  it("takes the field's own unit behind the number, and no other", () => {
    expect(readNumber("12 %", { unit: "%" })).toEqual({ ok: true, value: 12 });
    expect(readNumber("12 kg", { unit: "%" }).ok).toBe(false);
  });

  it("reads a grouping comma in a count", () => {
    expect(readNumber("7,200", { whole: true })).toEqual({ ok: true, value: 7200 });
  });

  it("asks where a comma can be a decimal sign or a grouping sign", () => {
    expect(readNumber("7,200")).toEqual({
      ok: false,
      sentence: "Write 7.200 or 7200: the comma can be read both ways.",
    });
  });

  it("reads empty text as nothing entered", () => {
    expect(readNumber("  ")).toEqual({ ok: true, value: null });
  });

  it.each(["abc", "1.2.3", "--1", "1e5x", "0x10", "1,2,3"])("refuses %j", (text) => {
    expect(readNumber(text).ok).toBe(false);
  });

  it("names the range with its unit", () => {
    const sentence = (text: string, range: Parameters<typeof readNumber>[1]) => {
      const typed = readNumber(text, range);
      return typed.ok ? null : typed.sentence;
    };
    expect(sentence("120", { min: 0, max: 100, unit: "%" })).toBe("From 0 % to 100 %.");
    expect(sentence("-1", { min: 0 })).toBe("0 or more.");
    expect(sentence("9", { max: 6 })).toBe("At most 6.");
    expect(sentence("1.5", { whole: true })).toBe("Only whole numbers here.");
  });
});

describe("printNumber", () => {
  it("hides what multiplying a fraction by 100 adds", () => {
    expect(printNumber(0.07 * 100)).toBe("7");
  });

  it("is read back as the same number for anything a shop types", () => {
    fc.assert(
      fc.property(fc.integer({ min: -1_000_000, max: 1_000_000 }), (thousandths) => {
        const value = thousandths / 1000;
        expect(readNumber(printNumber(value))).toEqual({ ok: true, value });
      }),
    );
  });
});
