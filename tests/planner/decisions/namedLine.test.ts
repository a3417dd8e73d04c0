/** Names short enough for a sentence: the shortest that no other garment of the job bears. */
import { describe, expect, it } from "vitest";
import type { Documents } from "../../../src/job/documents.ts";
import { namedLine } from "../../../src/planner/decisions/namedLine.ts";
import { exampleDocuments, ids } from "../../job/exampleDocuments.ts";

type Names = {
  readonly style: string;
  readonly colourway: string;
  readonly mill: string;
  readonly lot: string;
};

/** The example job with its first line as often as there are names, each on a lot of that name. */
function jobOf(...names: readonly Names[]): Documents {
  const documents = exampleDocuments();
  const [line] = documents.job.lines;
  const [lot] = documents.library.garmentLots;
  if (line === undefined || lot === undefined) throw new Error("the example has no line");
  const lotId = (index: number) => `lot-${index}`;
  return {
    job: {
      ...documents.job,
      lines: names.map((_, index) => ({ ...line, id: `line-${index}`, garmentLotId: lotId(index) })),
    },
    library: {
      ...documents.library,
      garmentLots: names.map((name, index) => ({ ...lot, ...name, id: lotId(index) })),
    },
  };
}

const namesOf = (documents: Documents) =>
  documents.job.lines.map(({ id }) => namedLine(documents, { lineId: id, placeId: ids.place })?.name);

const TEE = { style: "Crew tee", colourway: "Navy", mill: "Mill A", lot: "1" };

describe("the name of a line", () => {
  it("is colour and mill where no other garment has them", () => {
    expect(namesOf(jobOf(TEE, { ...TEE, colourway: "Moss" }))).toEqual(["Navy (Mill A)", "Moss (Mill A)"]);
  });

  it("has the style where two styles share colour and mill", () => {
    const hood = { ...TEE, style: "Hooded top" };
    expect(namesOf(jobOf(TEE, hood))).toEqual(["Crew tee, Navy (Mill A)", "Hooded top, Navy (Mill A)"]);
  });

  it("has the lot where two lots share all else", () => {
    expect(namesOf(jobOf(TEE, { ...TEE, lot: "2" }))).toEqual([
      "Crew tee, Navy (Mill A), lot 1",
      "Crew tee, Navy (Mill A), lot 2",
    ]);
  });
});
