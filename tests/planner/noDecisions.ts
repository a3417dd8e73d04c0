// A decision engine that is asked and never answers: for views that are tried without their proposals.
import type { DecisionEngine } from "../../src/engine/decisions/decisionEngine.ts";

const never = <Answer>() => new Promise<Answer>(() => {});

export const noDecisions: DecisionEngine = {
  findMixes: () => ({ answer: never(), cancel: () => undefined }),
  planTests: () => never(),
  recover: () => never(),
  dispose: () => undefined,
};
