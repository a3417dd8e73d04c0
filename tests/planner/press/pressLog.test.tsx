/** The press log: whom an entry names, and as what. */
import { screen } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { checklistSubject } from "../../../src/job/checklistSubject.ts";
import { appendPressEntry } from "../../../src/job/edits/press.ts";
import { appendTestPrint } from "../../../src/job/edits/records.ts";
import { exampleTestPrint, ids } from "../../job/exampleDocuments.ts";
import { examplePressEntry } from "../../job/exampleRecords.ts";
import { chosenJob, openPress } from "./pressBench.tsx";

/** A first-off that A. Operator read and M. Second put a name to, for each of these verdicts in this order. */
async function openWith(...actions: ("run" | "stop")[]) {
  const print = exampleTestPrint(7, { operator: "A. Operator" });
  let documents = appendTestPrint(chosenJob(), print);
  for (const [index, action] of actions.entries()) {
    documents = appendPressEntry(
      documents,
      examplePressEntry(index + 1, {
        kind: "first-off",
        subject: checklistSubject(documents, ids.line, ids.place),
        testPrintId: print.id,
        by: "M. Second",
        said: {
          action,
          mean: -4,
          standardUncertainty: 0.2,
          conformanceProbability: 0.5,
          modelVersion: "2",
        },
      }),
    );
  }
  await openPress(documents, { tab: "first-off" });
  return [...screen.getByRole("table", { name: "First-offs" }).querySelectorAll("tbody tr")].map(
    ({ textContent }) => textContent,
  );
}

describe("an entry of the press log", () => {
  it("was passed by nobody where it was stopped; the latest stands first", async () => {
    const [latest, earlier] = await openWith("stop", "run");
    expect(latest).toContain("passed by M. Second, read by A. Operator");
    expect(earlier).toContain("second person M. Second, read by A. Operator");
  });
});
