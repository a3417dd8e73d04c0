// What the mix search does not look at closely: every print that is in band as often as not must be among what it does.
import { describe, expect, it } from "vitest";
import {
  expectedOf,
  outlookOf,
  preparedColumn,
  preparedLine,
} from "../../../src/engine/decisions/outlook.ts";
import { readyLines, readyPrint, usableSetUps } from "../../../src/engine/decisions/placePrints.ts";
import { learnedFrom } from "../../../src/engine/decisions/posteriorOf.ts";
import { MEDIAN_WITHIN } from "../../../src/engine/decisions/statedLine.ts";
import { mixCandidates } from "../../../src/job/decisions/mixCandidates.ts";
import type { Documents } from "../../../src/job/documents.ts";
import type { Place } from "../../../src/job/jobDocument.ts";
import { demoDocuments } from "./demoJob.ts";
import { largeJob } from "./largeJob.ts";

const demo = demoDocuments();
const posterior = learnedFrom(demo.library);

/** Every line of a place on every candidate: how far the median is from what is expected, and what screening would miss. */
function screened(documents: Documents, place: Place, known: typeof posterior) {
  const { viewing } = documents.job;
  const columns = mixCandidates(documents, place).flatMap((mix) =>
    usableSetUps(documents).map((setUp) => preparedColumn(readyPrint(documents, place, mix, setUp).column)),
  );
  let farthest = 0;
  let missed = 0;
  let count = 0;
  for (const ready of readyLines(documents, place).lines) {
    const line = preparedLine(ready, viewing);
    const { band } = ready;
    for (const column of columns) {
      const expected = expectedOf(line, column, viewing, known);
      const { deltaL50, chanceInBand } = outlookOf(line, column, viewing, known);
      farthest = Math.max(farthest, Math.abs(expected - deltaL50));
      const isLookedAt = Math.abs(expected - band.deltaL) <= band.tolerance + MEDIAN_WITHIN;
      if (!isLookedAt && chanceInBand >= 0.5) missed++;
      count++;
    }
  }
  return { farthest, missed, count };
}

describe("the screening of the mix search", () => {
  const [front, back] = demo.job.places as [Place, Place];
  const large = largeJob(demo, 24, 7);
  it.each([
    ["the demo's front", demo, front, posterior],
    ["the demo's front before any test print", demo, front, null],
    ["the demo's back", demo, back, posterior],
    ["a large job", large, large.job.places[0]!, posterior],
  ] as const)("leaves out no print that is in band as often as not: %s", (_name, documents, place, known) => {
    const { farthest, missed, count } = screened(documents, place, known);
    expect(count).toBeGreaterThan(200);
    expect(missed).toBe(0);
    // The promise that the argument rests on: the median lies this near to what is expected.
    expect(farthest).toBeLessThan(MEDIAN_WITHIN);
  });
});
