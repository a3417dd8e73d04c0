/** What a record says, asked of the engine: the latest question only, and the last answer until the next is there. */
import { useEffect, useMemo, useState } from "react";
import type { RecordFinding, RecordRequest } from "../../engine/recordFinding.ts";
import type { Documents } from "../../job/documents.ts";
import type { Problem } from "../../job/problem.ts";
import { anyBandOfPrint } from "../../job/recordBook/bandOfPrint.ts";
import { askedRecord } from "../../job/recordBook/recordQuestion.ts";
import type { TestPrint } from "../../job/recordDocument.ts";
import { useLessons } from "../lessons.tsx";
import { useEngine } from "../services.tsx";

export type FindingState =
  | { readonly kind: "none" | "asking" | "failed" }
  | { readonly kind: "refused"; readonly problems: readonly Problem[] }
  | { readonly kind: "found"; readonly finding: RecordFinding };

const NONE: FindingState = { kind: "none" };

/** The question about a print; problems where the model cannot take it. */
function questionOf(
  documents: Documents,
  print: TestPrint,
): RecordRequest | { problems: readonly Problem[] } {
  const asked = askedRecord(documents.library, print);
  if (!asked.ok) return { problems: asked.problems };
  const band = anyBandOfPrint(documents, print.garmentLotId, print.recipe);
  return { record: asked.record, correctsId: print.supersedesId, band };
}

export function useFinding(documents: Documents, print: TestPrint | null): FindingState {
  const engine = useEngine();
  const { lessons, inputs } = useLessons();
  const [state, setState] = useState<FindingState>(NONE);
  const { shelf, garmentLots } = documents.library;
  // biome-ignore lint/correctness/useExhaustiveDependencies: what a question is made of; a signature asks nothing anew
  const question = useMemo(
    () => (print === null ? null : questionOf(documents, print)),
    [print, shelf, garmentLots, documents.job.places, documents.job.lines],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: asked anew after each lesson
  useEffect(() => {
    if (question === null || "problems" in question) return;
    let isWanted = true;
    engine.book.finding(question).then(
      (finding) => {
        if (isWanted) setState({ kind: "found", finding });
      },
      () => {
        if (isWanted) setState({ kind: "failed" });
      },
    );
    return () => {
      isWanted = false;
    };
  }, [engine, question, lessons, inputs]);
  if (question === null) return NONE;
  if ("problems" in question) return { kind: "refused", problems: question.problems };
  return state.kind === "none" ? { kind: "asking" } : state;
}
