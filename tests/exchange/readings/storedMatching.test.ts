/** A column matching is kept among the shop's defaults and comes back the same. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ColumnRole } from "../../../src/exchange/readings/columnNames.ts";
import { applyMatching, type ColumnMatching } from "../../../src/exchange/readings/csvColumns.ts";
import { matchingFrom, storedMatching } from "../../../src/exchange/readings/storedMatching.ts";
import { columnMatchingSchema } from "../../../src/job/shopDefaultsDocument.ts";

const role = fc.constantFrom<ColumnRole>("L", "a", "b", "X", "nm:400", "nm:410", "name", "light", "left-out");
const heading = fc.constantFrom(
  "L*",
  "a*",
  "b*",
  "Patch no",
  "400 nm",
  "__proto__",
  "constructor",
  "x".repeat(200),
  "1",
);

describe("a stored matching", () => {
  it("is what the document takes, and gives every column the same role again", () => {
    fc.assert(
      fc.property(
        fc.array(fc.record({ heading, role }), { minLength: 1 }),
        fc.constantFrom(null, "fraction" as const, "percent" as const),
        (columns, scale) => {
          const matching: ColumnMatching = { columns, scale };
          const stored = storedMatching("our meter", matching);
          expect(columnMatchingSchema.safeParse(stored).success).toBe(true);
          const back = matchingFrom(columnMatchingSchema.parse(JSON.parse(JSON.stringify(stored))));
          const headings = columns.map((column) => column.heading);
          // Nothing is kept where every column is left out.
          if (back === null) return columns.every((column) => column.role === "left-out");
          expect(back.scale).toBe(scale);
          expect(applyMatching(back, headings)).toEqual({
            roles: columns.map((column) => column.role),
            missing: [],
          });
          return true;
        },
      ),
    );
  });

  it("is refused where a matched column has no heading, and where its words are not ours", () => {
    expect(storedMatching("x", { columns: [{ heading: " ", role: "L" }], scale: null })).toBeNull();
    expect(matchingFrom({ name: "x", columns: { "=l*": "hue" } })).toBeNull();
    expect(matchingFrom({ name: "x", columns: { "l*": "L" } })).toBeNull();
    expect(matchingFrom({ name: "x", columns: {} })).toBeNull();
  });
});
