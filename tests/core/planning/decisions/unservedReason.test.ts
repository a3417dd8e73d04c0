// Why no mix serves a garment: each reason from the plainest case of it, and that only one is given.
import { describe, expect, it } from "vitest";
import {
  type UnservedFacts,
  unservedReason,
} from "../../../../src/core/planning/decisions/unservedReason.ts";

const BAND = { deltaL: -4, tolerance: 1.5 };
const option = (deltaL50: number, chanceInBand = 0.3, tinted = false) => ({ deltaL50, chanceInBand, tinted });
const facts = (change: Partial<UnservedFacts>): UnservedFacts => ({
  why: "chance-too-small",
  options: [option(-1), option(-2)],
  bareL: 45,
  wets: true,
  band: BAND,
  ...change,
});

describe("unservedReason", () => {
  it.each([
    ["nothing-predicted", facts({ why: "nothing-predicted", options: [] })],
    ["rules", facts({ why: "rules" })],
    ["white-only-tint", facts({ bareL: 94 })],
    ["no-headroom", facts({ bareL: 15 })],
    ["clear-cannot", facts({ wets: false })],
    ["too-weak", facts({})],
    ["too-strong", facts({ options: [option(-7), option(-9)] })],
    ["not-known-well-enough", facts({ options: [option(-3.8, 0.45), option(-8)] })],
    ["hue", facts({ options: [option(-4, 0.02, true), option(-1)] })],
  ] as const)("says %s", (reason, given) => {
    expect(unservedReason(given).reason).toBe(reason);
  });

  it("proposes a test print where the print is expected in band and not known well enough", () => {
    expect(unservedReason(facts({ options: [option(-4, 0.45)] })).helps[0]).toBe("test-print");
  });

  it("proposes no soft white on white cloth, and no test where the rules alone stand in the way", () => {
    expect(unservedReason(facts({ bareL: 94 })).helps).not.toContain("soft-white");
    expect(unservedReason(facts({ why: "rules" })).helps).toEqual(["allow-more"]);
  });

  it("finds a tint between two steps that fall on both sides of the band, for want of a step", () => {
    const { reason, helps } = unservedReason(facts({ options: [option(-2), option(-6)] }));
    expect(reason).toBe("too-strong");
    expect(helps[0]).toBe("exact-tint");
  });

  it("tells for a print that lightens whether it is too weak or too strong", () => {
    const band = { deltaL: 20, tolerance: 5 };
    expect(unservedReason(facts({ band, options: [option(8)] })).reason).toBe("too-weak");
    expect(unservedReason(facts({ band, options: [option(40)] })).reason).toBe("too-strong");
  });
});
