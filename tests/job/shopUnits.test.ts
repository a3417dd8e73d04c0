/** Units are how numbers are shown: another unit changes no stored value, and no figure that follows from them. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { demoDocuments } from "../../scripts/demo/demoDocuments.ts";
import type { Documents } from "../../src/job/documents.ts";
import { chooseCandidate } from "../../src/job/edits/choices.ts";
import { changeDefaults } from "../../src/job/edits/shelf.ts";
import { inkRoomOf } from "../../src/job/inkRoom/inkRoomOf.ts";
import type { ShopDefaults } from "../../src/job/shelfDocument.ts";
import { shopUnits } from "../../src/units/shopUnits.ts";
import { exampleDocuments } from "./exampleDocuments.ts";
import { arbitraryDraw, withDraw } from "./randomEdits.ts";

const units: fc.Arbitrary<ShopDefaults["units"]> = fc.record({
  temperature: fc.constantFrom("celsius" as const, "fahrenheit" as const),
  length: fc.constantFrom("mm" as const, "inch" as const),
  threadCount: fc.constantFrom("per-cm" as const, "per-inch" as const),
  mass: fc.constantFrom("gram" as const, "ounce" as const),
});

/** The documents with the units left out, as text: a number that changed in its last digit is another text. */
function withoutUnits({ job, library }: Documents): string {
  const { units: _, ...defaults } = library.shelf.defaults;
  return JSON.stringify({ job, library: { ...library, shelf: { ...library.shelf, defaults } } });
}

const switching = (documents: Documents, steps: readonly ShopDefaults["units"][]) =>
  steps.reduce((next, step) => changeDefaults(next, { units: step }), documents);

describe("switching units", () => {
  it("changes the units and nothing else that is stored, whatever was edited before, back and forth", () => {
    fc.assert(
      fc.property(
        fc.array(arbitraryDraw, { maxLength: 20 }),
        fc.array(units, { minLength: 1, maxLength: 6 }),
        (draws, steps) => {
          const before = draws.reduce(withDraw, exampleDocuments());
          const after = switching(before, steps);
          expect(withoutUnits(after)).toBe(withoutUnits(before));
          expect(after.library.shelf.defaults.units).toEqual(steps.at(-1));
        },
      ),
    );
  });

  it("weighs the same: batches, sheets and pots of the demo stay to the last digit", () => {
    const demo = demoDocuments();
    const [place] = demo.job.places;
    const chosen = demo.job.lines.reduce(
      (documents, { id }, index) =>
        chooseCandidate(documents, {
          lineId: id,
          placeId: place!.id,
          candidateId: place!.candidates[index % place!.candidates.length]!.id,
        }),
      demo,
    );
    const roomOf = (documents: Documents) => JSON.stringify(inkRoomOf(documents, { today: "2026-02-20" }));
    const expected = roomOf(chosen);
    expect(JSON.parse(expected).batches.length).toBeGreaterThan(4);
    fc.assert(
      fc.property(fc.array(units, { minLength: 1, maxLength: 4 }), (steps) => {
        expect(roomOf(switching(chosen, steps))).toBe(expected);
      }),
      { numRuns: 20 },
    );
  });

  it("does show other units: the property above is not about a switch that does nothing", () => {
    const shown = (system: ShopDefaults["units"]) => JSON.stringify(shopUnits(system));
    const metric = { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" } as const;
    const us = { temperature: "fahrenheit", length: "inch", threadCount: "per-inch", mass: "ounce" } as const;
    expect(shown(us)).not.toBe(shown(metric));
  });
});
