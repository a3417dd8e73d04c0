/** The sentences for what goes wrong when a job is opened, imported, saved or removed. */
import type { Problem } from "../../job/problem.ts";
import { sentenceForProblem } from "./problemSentences.ts";

const SENTENCES: Readonly<Record<string, (detail: string) => string>> = {
  "storage-refused": (detail) => `The browser refused to read or write: ${detail}`,
  "job-missing": () =>
    "No job with this address is stored on this device. It may be on another one: import its file.",
  "library-missing": () => "The shop's library is not stored on this device.",
  "not-saved": () => "The open job could not be saved, so nothing else was opened. Export it first.",
  "demo-missing": (detail) => `The demo job could not be read: ${detail}`,
};

export function jobSentence(problem: Problem): string {
  const sentence = SENTENCES[problem.code];
  return sentence === undefined ? sentenceForProblem(problem) : sentence(String(problem.detail ?? ""));
}
