// Notes on a print: hand, mottle, dye migration, and the limits cited for a children's product.
import { describe, expect, it } from "vitest";
import { childrensLines } from "../../../../src/core/planning/ink/childrensLimits.ts";
import { dyeMigrationRisk, riskyColourOf } from "../../../../src/core/planning/ink/dyeMigration.ts";
import { printQualityNotes } from "../../../../src/core/planning/ink/printQualityNotes.ts";
import { depositUm } from "../../../../src/core/screen/mesh.ts";

describe("print quality notes", () => {
  it("call the hand softer through finer mesh (common practice): 43 heavy, 61 and 77 medium, 90 and 120 soft", () => {
    const hands = [43, 61, 77, 90, 120].map((threadsPerCm) => {
      const [note] = printQualityNotes({ threadsPerCm, depositUm: 20, thirsty: false });
      return note?.code === "hand" ? note.hand : null;
    });
    expect(hands).toEqual(["heavy", "medium", "medium", "soft", "soft"]);
  });

  it("warn of mottle through 305 mesh on a thirsty knit (common practice), not on a close one, and on any below 8 um", () => {
    const fine = depositUm({ threadsPerCm: 120, threadDiameterUm: 34 });
    const codes = (um: number, thirsty: boolean) =>
      printQualityNotes({ threadsPerCm: 120, depositUm: um, thirsty }).map((note) => note.code);
    expect(codes(fine, true)).toEqual(["hand", "mottle"]);
    expect(codes(fine, false)).toEqual(["hand"]);
    expect(codes(7, false)).toEqual(["hand", "mottle"]);
    const note = printQualityNotes({ threadsPerCm: 120, depositUm: 7, thirsty: false })[1];
    expect(note).toEqual({ code: "mottle", thirsty: false, figures: { depositUm: 7, mottleBelowUm: 8 } });
    expect(() => codes(0, true)).toThrow("depositUm must be above 0 and finite; got 0");
  });
});

describe("dye migration into white", () => {
  const lab = (L: number, a: number, b: number) => ({ L, a, b });
  it("is high on polyester reds, maroons, navies and forests (a printer's published list)", () => {
    const cases = [
      [lab(42, 55, 28), "red"],
      [lab(24, 26, 6), "maroon"],
      [lab(24, 24, -4), "maroon"],
      [lab(19, 2, -14), "navy"],
      [lab(30.5, -15, 6.5), "forest"],
    ] as const;
    for (const [bare, colour] of cases) {
      const risk = dyeMigrationRisk({ bare, dyedPolyesterFraction: 0.5, whiteFraction: 0.5, bleeds: false });
      expect(risk).toMatchObject({ level: "high", colour });
    }
  });

  it("is there but not high on other dyed polyester, unless the cloth is known to bleed", () => {
    expect(riskyColourOf(lab(30, 12, -45))).toBe("royal");
    expect(riskyColourOf(lab(62, 45, 65))).toBe("orange");
    expect(riskyColourOf(lab(14.5, 0.2, -0.8))).toBe("black");
    expect(riskyColourOf(lab(60, 1, -2))).toBeNull();
    const facts = { bare: lab(60, 1, -2), dyedPolyesterFraction: 0.5, whiteFraction: 0.05, bleeds: false };
    expect(dyeMigrationRisk(facts)).toMatchObject({ level: "some", colour: null });
    const bleeder = dyeMigrationRisk({ ...facts, bleeds: true })!;
    expect(bleeder.level).toBe("high");
    expect(bleeder.figures).toMatchObject({ dyedPolyesterFraction: 0.5, whiteFraction: 0.05, L: 60 });
    expect(bleeder.figures.hueDegrees).toBeCloseTo(296.565, 3);
    expect(bleeder.figures.chroma).toBeCloseTo(Math.sqrt(5), 12);
    expect(dyeMigrationRisk({ ...facts, bare: lab(30, 12, -45) })).toMatchObject({
      level: "some",
      colour: "royal",
    });
  });

  it("is nothing to speak of without white in the mix or without dyed polyester", () => {
    const facts = { bare: lab(42, 55, 28), dyedPolyesterFraction: 0.5, whiteFraction: 0.5, bleeds: true };
    expect(dyeMigrationRisk({ ...facts, whiteFraction: 0 })).toBeNull();
    expect(dyeMigrationRisk({ ...facts, dyedPolyesterFraction: 0.05 })).toBeNull();
  });
});

describe("the lines for a children's product", () => {
  const line = (code: string) => childrensLines(true).find((one) => one.code === code)!;

  it("cite 16 CFR 1307.3: each of eight phthalates, 0.1 %", () => {
    const us = line("us-phthalates");
    expect(us.source).toContain("16 CFR 1307.3");
    expect(us).toMatchObject({ limitMassFraction: 0.001, counted: "each" });
    expect([...us.substances].sort()).toEqual([
      "BBP",
      "DBP",
      "DCHP",
      "DEHP",
      "DHEXP",
      "DIBP",
      "DINP",
      "DPENP",
    ]);
  });

  it("cite REACH Annex XVII entry 51, Reg. (EU) 2018/2005: four phthalates together, 0.1 %, and entry 52", () => {
    expect(line("eu-phthalates-in-plasticised-material")).toMatchObject({
      limitMassFraction: 0.001,
      counted: "together",
      substances: ["DEHP", "DBP", "BBP", "DIBP"],
    });
    expect(line("eu-phthalates-in-plasticised-material").source).toContain("entry 51");
    expect(line("eu-phthalates-in-toys").source).toContain("entry 52");
    expect(line("eu-phthalates-in-toys").substances).toEqual(["DINP", "DIDP", "DNOP"]);
  });

  it("say of lead, 90 and 100 ppm, that it is from memory, and close with no legal advice", () => {
    expect(line("us-lead-in-coating")).toMatchObject({ limitMassFraction: 90e-6, status: "from memory" });
    expect(line("us-lead-in-substrate")).toMatchObject({ limitMassFraction: 100e-6, status: "from memory" });
    expect(childrensLines(true).at(-1)!.code).toBe("not-legal-advice");
    expect(childrensLines(false)).toEqual([]);
  });
});
