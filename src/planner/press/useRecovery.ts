/** The ranked changes for a line, asked of the decision engine: the latest question only, and the last answer until then. */
import { useEffect, useState } from "react";
import type { RecoverAnswer, RecoverAsk } from "../../engine/decisions/decisionProtocol.ts";
import type { Documents } from "../../job/documents.ts";
import { useDecisions } from "../services.tsx";

export type RecoveryState =
  | { readonly kind: "none" | "failed" | "asking" }
  | { readonly kind: "found"; readonly answer: RecoverAnswer };

interface Question {
  readonly documents: Documents;
  readonly lineId: string;
  readonly placeId: string;
  readonly halftonesAllowed: boolean;
}

interface Answered {
  readonly question: Question;
  /** Null where the engine failed. */
  readonly answer: RecoverAnswer | null;
}

function isSame(one: Question, other: Question): boolean {
  return (
    one.documents === other.documents &&
    one.lineId === other.lineId &&
    one.placeId === other.placeId &&
    one.halftonesAllowed === other.halftonesAllowed
  );
}

/** @param isAsked false where nothing is asked yet. An answer holds for the documents that it was asked of alone. */
export function useRecovery(
  documents: Documents,
  { lineId, placeId, halftonesAllowed }: RecoverAsk,
  isAsked: boolean,
): RecoveryState {
  const decisions = useDecisions();
  const [answered, setAnswered] = useState<Answered | null>(null);
  useEffect(() => {
    if (!isAsked) return;
    let isWanted = true;
    const question = { documents, lineId, placeId, halftonesAllowed };
    const take = (answer: RecoverAnswer | null) => {
      if (isWanted) setAnswered({ question, answer });
    };
    decisions.recover(documents, { lineId, placeId, halftonesAllowed }).then(take, () => take(null));
    return () => {
      isWanted = false;
    };
  }, [decisions, documents, lineId, placeId, halftonesAllowed, isAsked]);
  if (!isAsked) return { kind: "none" };
  const isCurrent =
    answered !== null && isSame(answered.question, { documents, lineId, placeId, halftonesAllowed });
  if (!isCurrent) return { kind: "asking" };
  return answered.answer === null ? { kind: "failed" } : { kind: "found", answer: answered.answer };
}
