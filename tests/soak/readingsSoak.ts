/** Many thousand spoiled readings files, and the largest ones that are let in, for each reader. */
import fc from "fast-check";
import { LARGEST_FILE_BYTES, LONGEST_XML } from "../../src/exchange/readings/limits.ts";
import { readReadingsFile } from "../../src/exchange/readings/readReadingsFile.ts";
import { largestFiles } from "../exchange/readings/largestFiles.ts";
import { LONGEST_MILLISECONDS, neverInPart, newTally } from "../exchange/readings/neverInPart.ts";
import { FORMATS } from "../exchange/readings/spoiledFiles.ts";

/** Runs both and prints what came out; the number of failures. */
export async function soakReadings(
  count: number,
  seed: number,
  print: (line: string) => void,
): Promise<number> {
  let failures = 0;
  for (const format of FORMATS) {
    const tally = newTally();
    const check = await fc.check(neverInPart(format, tally), { numRuns: count, seed });
    if (check.failed) {
      failures++;
      print(`  ${format}: FAILED: ${fc.defaultReportMessage(check)}`);
      continue;
    }
    print(
      `  ${format}: ${tally.taken} taken whole, ${tally.refused} refused with reasons; the longest took ${tally.longestMilliseconds.toFixed(0)} ms.`,
    );
  }
  print(
    `the largest files let in, made to take long (up to ${LARGEST_FILE_BYTES} bytes, XML ${LONGEST_XML}):`,
  );
  for (const { name, bytes } of largestFiles()) {
    const started = performance.now();
    const { result } = await readReadingsFile(name, bytes);
    const milliseconds = performance.now() - started;
    const outcome = result.ok
      ? `${result.samples.length} samples`
      : (result.problems[0]?.code ?? "no reason");
    const isLate = milliseconds >= LONGEST_MILLISECONDS;
    if (isLate) failures++;
    print(`  ${isLate ? "FAILED: " : ""}${name}: ${outcome}, ${milliseconds.toFixed(0)} ms`);
  }
  return failures;
}
