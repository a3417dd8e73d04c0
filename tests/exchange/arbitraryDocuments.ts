/** Draws a whole job with its library for property tests. */
import fc from "fast-check";
import type { Documents } from "../../src/job/documents.ts";
import type { Job } from "../../src/job/jobDocument.ts";
import { arbitraryLibrary, recipe } from "./arbitraryLibrary.ts";
import { checklistEntry, mixRules, pressEntry } from "./arbitraryPress.ts";
import {
  chosen,
  day,
  fraction,
  money,
  name,
  pairOfParts,
  text,
  time,
  uuid,
  viewing,
} from "./arbitraryValues.ts";

export { arbitraryColour } from "./arbitraryValues.ts";

/** A job and its library. */
export const arbitraryDocuments: fc.Arbitrary<Documents> = fc
  .record({
    library: arbitraryLibrary,
    ids: fc.uniqueArray(uuid, { minLength: 14, maxLength: 14 }),
    number: name,
    customer: text,
    createdAt: time,
    viewing,
    counts: fc.array(fc.nat(5000), { maxLength: 5 }),
    piecePrice: fc.option(money),
    parts: pairOfParts,
    pick: fc.nat(100),
    cover: fraction,
    clothCover: fc.option(fraction),
    allLines: fc.boolean(),
    note: text,
    spareCount: fc.option(fc.nat(1_000_000)),
    mixRules,
    signed: fc.array(checklistEntry, { maxLength: 2 }),
    runStartsOn: fc.option(day),
    printed: fc.array(pressEntry, { maxLength: 2 }),
  })
  .map((drawn) => {
    const { library, ids, pick } = drawn;
    const id = (index: number) => chosen(ids, index);
    const job: Job = {
      id: id(0),
      number: drawn.number,
      customer: drawn.customer,
      createdAt: drawn.createdAt,
      forChildren: drawn.allLines,
      lines: [1, 2].map((index) => ({
        id: id(index),
        garmentLotId: chosen(library.garmentLots, pick + index).id,
        quantities: drawn.counts.map((count, size) => ({ size: `size ${size}`, count })),
        suppliedBy: index === 1 ? "shop" : "customer",
        piecePrice: drawn.piecePrice,
        substitutedForLotId: index === 1 ? null : chosen(library.garmentLots, pick).id,
        sparePieceCount: drawn.spareCount,
        note: drawn.note,
      })),
      mixes: [3, 4].map((index) => ({
        id: id(index),
        name: drawn.note,
        recipe: recipe(library.shelf, pick + index, drawn.parts),
        clothCoverFraction: drawn.clothCover,
      })),
      places: [
        {
          id: id(5),
          name: "Front",
          widthMm: 280,
          heightMm: 330,
          coverFraction: drawn.cover,
          halftoneFraction: drawn.cover,
          smoothed: drawn.allLines,
          band: { deltaL: -4, tolerance: 1.5, hueLimit: 2 },
          candidates: [6, 7].map((index) => ({
            id: id(index),
            mixId: id(index - 3),
            setUpId: chosen(library.shelf.setUps, pick + index).id,
          })),
          mixRules: drawn.mixRules,
          lineIds: drawn.allLines ? null : [id(1)],
        },
      ],
      choices: [{ lineId: id(1), placeId: id(5), candidateId: id(6) }],
      viewing: drawn.viewing,
      checklist: drawn.signed.map((entry, index) => ({
        ...entry,
        id: id(8 + index),
        lineId: id(1 + (index % 2)),
        placeId: id(5),
      })),
      runStartsOn: drawn.runStartsOn,
      pressLog: drawn.printed.map((entry, index) => ({
        ...entry,
        id: id(10 + index),
        lineId: id(1),
        placeId: id(5),
        testPrintId: entry.kind === "first-off" ? chosen(library.testPrints, pick + index).id : null,
        supersedesId: index === 0 ? null : id(10),
      })),
    };
    // The first pot is this job's, the others are another's.
    const pots = library.pots.map((pot, index) => (index === 0 ? { ...pot, jobId: job.id } : pot));
    return { job, library: { ...library, pots } };
  });
