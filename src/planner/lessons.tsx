/** What the engine has learned of the record book: asked anew whenever the book changes, known to every view. */
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from "react";
import type { Lessons } from "../engine/protocol.ts";
import { type EvidenceInputs, evidenceInputs } from "../job/evidenceInputs.ts";
import { useEngine } from "./services.tsx";
import { useMaybeDocuments } from "./state/usePlanner.ts";

export interface KnownLessons {
  /** Another object after each lesson: what was predicted under an older one is stale. Null until the first. */
  readonly lessons: Lessons | null;
  readonly inputs: EvidenceInputs | null;
  /** The engine could not learn; predictions are as before any test print. */
  readonly failed: boolean;
}

const NONE: KnownLessons = { lessons: null, inputs: null, failed: false };
const LessonsContext = createContext<KnownLessons>(NONE);

export function LessonsProvider({ children }: { readonly children: ReactNode }) {
  const engine = useEngine();
  const library = useMaybeDocuments()?.library ?? null;
  const [known, setKnown] = useState<KnownLessons>(NONE);
  const { testPrints, goodsInChecks, slipAnswers, garmentLots, shelf } = library ?? {};
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of the library that teach; pots and approvals do not
  const inputs = useMemo(
    () => (library === null ? null : evidenceInputs(library)),
    [testPrints, goodsInChecks, slipAnswers, garmentLots, shelf],
  );
  useEffect(() => {
    let isWanted = true;
    if (inputs === null) return;
    engine.learn(inputs).then(
      (lessons) => {
        if (isWanted && lessons !== null) setKnown({ lessons, inputs, failed: false });
      },
      () => {
        if (isWanted) setKnown({ lessons: null, inputs, failed: true });
      },
    );
    return () => {
      isWanted = false;
    };
  }, [engine, inputs]);
  return <LessonsContext value={known}>{children}</LessonsContext>;
}

export const useLessons = (): KnownLessons => useContext(LessonsContext);
