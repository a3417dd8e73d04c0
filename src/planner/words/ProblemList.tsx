/** Problems as sentences, one below the other. */
import type { Problem } from "../../job/problem.ts";
import { jobSentence } from "./jobSentences.ts";

/** More than this many would not be read. Invented default. */
const SHOWN_COUNT = 8;

export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  const shown = [...new Set(problems.slice(0, SHOWN_COUNT).map(jobSentence))];
  const more = problems.length - SHOWN_COUNT;
  return (
    <ul className="problems">
      {shown.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
      {more > 0 && <li>And {more} more of the same file.</li>}
    </ul>
  );
}
