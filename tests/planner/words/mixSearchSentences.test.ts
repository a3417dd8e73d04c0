/** Every reason that the core gives for a garment without a mix has its own sentence, and every remedy its words. */
import { describe, expect, it } from "vitest";
import {
  type UnservedFacts,
  type UnservedHelp,
  type UnservedReason,
  unservedReason,
} from "../../../src/core/planning/decisions/unservedReason.ts";
import {
  HELP_WORDS,
  headlineWords,
  nothingWeighedSentence,
  progressWords,
  savedWords,
  unservedSentence,
} from "../../../src/planner/words/mixSearchSentences.ts";
import { exampleDocuments } from "../../job/exampleDocuments.ts";

const DARKER = { deltaL: -4, tolerance: 1.5 };
const print = (deltaL50: number, chanceInBand = 0.1, tinted = true) => ({ deltaL50, chanceInBand, tinted });
const facts = (part: Partial<UnservedFacts>): UnservedFacts => ({
  why: "chance-too-small",
  options: [print(-1)],
  bareL: 60,
  wets: true,
  band: DARKER,
  ...part,
});

/** For each code: facts for which the core gives it, and what its sentence must say. One is missing: no type check. */
const CASES: Readonly<Record<UnservedReason, readonly [UnservedFacts, RegExp]>> = {
  "nothing-predicted": [facts({ why: "nothing-predicted", options: [] }), /nothing can be predicted/i],
  rules: [facts({ why: "rules" }), /the rules shut it out/],
  "not-known-well-enough": [facts({ options: [print(-4, 0.4)] }), /too little is known.*below one half/],
  "white-only-tint": [facts({ bareL: 95 }), /^White cloth.*only tint/],
  "clear-cannot": [facts({ wets: false }), /^Cotton.*clear cannot/],
  "no-headroom": [facts({ bareL: 18 }), /no headroom/],
  "too-strong": [facts({ options: [print(-9)] }), /too far/],
  "too-weak": [facts({}), /strongest.*not.*dark enough/],
  hue: [facts({ options: [print(-4, 0.02)] }), /hue too far/],
};

describe("a garment that no mix serves", () => {
  it.each(Object.entries(CASES))("says why: %s", (code, [given, words]) => {
    const { reason, helps } = unservedReason(given);
    expect(reason).toBe(code);
    expect(unservedSentence(reason, DARKER)).toMatch(words);
    for (const help of helps) expect(HELP_WORDS[help]).toMatch(/\w{4}/);
  });

  it("has a sentence of its own for each reason", () => {
    const sentences = (Object.keys(CASES) as UnservedReason[]).map((code) => unservedSentence(code, DARKER));
    expect(new Set(sentences).size).toBe(9);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });

  it("speaks of light where the print is to lighten", () => {
    expect(unservedSentence("too-weak", { deltaL: 20 })).toMatch(/light enough/);
    expect(unservedSentence("too-strong", { deltaL: 20 })).toMatch(/lightens it too far/);
  });

  it("has words for each remedy", () => {
    const remedies: Readonly<Record<UnservedHelp, RegExp>> = {
      "allow-more": /rules/,
      tint: /tint/,
      "exact-tint": /exact tint/,
      "soft-white": /soft white/,
      "test-print": /test print/,
      "weaker-print": /finer mesh/,
      "wider-band": /wider/,
      "other-garment": /garment/,
    };
    for (const [help, words] of Object.entries(remedies)) {
      expect(HELP_WORDS[help as UnservedHelp]).toMatch(words);
    }
    expect(Object.keys(HELP_WORDS).sort()).toEqual(Object.keys(remedies).sort());
  });
});

describe("the search in words", () => {
  it("counts one as one", () => {
    expect(headlineWords({ mixCount: 1, setUpCount: 1, servedCount: 1, garmentCount: 1 })).toBe(
      "1 mix through 1 set-up serves 1 of 1 garment",
    );
    expect(headlineWords({ mixCount: 0, setUpCount: 0, servedCount: 0, garmentCount: 3 })).toBe(
      "No mix serves any of 3 garments",
    );
  });

  it("says what is missing where nothing was weighed", () => {
    const counts = { mixes: 0, setUps: 0, lines: 3 };
    const { bases, setUps } = exampleDocuments().library.shelf;
    const said = (shelf: Parameters<typeof nothingWeighedSentence>[1]) =>
      nothingWeighedSentence({ counts }, shelf);
    expect(said({ bases: [], setUps: [] })).toMatch(/no base yet/);
    expect(said({ bases, setUps: [] })).toMatch(/no set-up yet/);
    expect(said({ bases, setUps })).toMatch(/rules leave no mix/);
    expect(
      nothingWeighedSentence({ counts: { mixes: 1, setUps: 1, lines: 3 } }, { bases, setUps }),
    ).toBeNull();
  });

  it("never calls a gap nothing that is only small", () => {
    expect(progressWords({ stage: "solving", doneFraction: 0.00001 }, 4)).toContain("under 0.01\u00a0%");
    expect(progressWords({ stage: "solving", doneFraction: 0 }, 4)).toBe("Solving: nearly done.");
    expect(progressWords({ stage: "solving", doneFraction: null }, 4)).toMatch(/first plan/);
  });

  it("writes what costs more with a minus sign", () => {
    expect([savedWords(12), savedWords(-24.67), savedWords(-0.001)]).toEqual(["12", "\u221224.67", "0"]);
  });
});
