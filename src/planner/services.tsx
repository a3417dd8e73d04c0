/** What the views reach beyond the documents: predictions, opening and exporting jobs, the theme. Joined in main.tsx. */
import { createContext, type ReactNode, useContext } from "react";
import type { DecisionEngine } from "../engine/decisions/decisionEngine.ts";
import type { PredictionEngine } from "../engine/predictionEngine.ts";
import type { JobSession } from "./jobs/jobSession.ts";
import type { ThemePort } from "./look/theme.ts";
import type { SaveTrouble } from "./saveTrouble.ts";

/** Where a record that is being typed outlives its page, as text, per job. */
export interface BenchDraftPort {
  read(jobId: string): string | null;
  keep(jobId: string, text: string | null): void;
}

export interface PlannerServices {
  readonly session: JobSession;
  readonly engine: PredictionEngine;
  /** What is proposed: mixes, test prints, ways to recover. */
  readonly decisions: DecisionEngine;
  readonly theme: ThemePort;
  readonly saveTrouble: SaveTrouble;
  readonly benchDrafts: BenchDraftPort;
}

const Services = createContext<PlannerServices | null>(null);

export function ServicesProvider(props: {
  readonly services: PlannerServices;
  readonly children: ReactNode;
}) {
  return <Services value={props.services}>{props.children}</Services>;
}

export function useServices(): PlannerServices {
  const services = useContext(Services);
  if (services === null) throw new Error("the planner's services are not provided here");
  return services;
}

export const useEngine = (): PredictionEngine => useServices().engine;
export const useDecisions = (): DecisionEngine => useServices().decisions;
export const useSession = (): JobSession => useServices().session;
