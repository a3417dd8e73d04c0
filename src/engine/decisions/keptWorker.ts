/** A decision worker that is started on first use, kept with what it has learned, and ended to interrupt it. */
import { type Remote, releaseProxy, wrap } from "comlink";
import type { DecisionService } from "./decisionWorker.ts";

export interface KeptWorker {
  /** What `call` answers. Rejects where the worker fails or is ended before; the next question starts another. */
  ask<Answer>(call: (service: Remote<DecisionService>) => Promise<Answer>): Promise<Answer>;
  end(): void;
}

interface Started {
  readonly worker: Worker;
  readonly service: Remote<DecisionService>;
  /** Of the questions without an answer yet. */
  readonly rejects: Set<(reason: Error) => void>;
}

export function keptWorker(): KeptWorker {
  let started: Started | null = null;

  function end(ending: Started, reason: Error): void {
    if (started === ending) started = null;
    for (const reject of ending.rejects) reject(reason);
    ending.rejects.clear();
    ending.service[releaseProxy]();
    ending.worker.terminate();
  }

  function start(): Started {
    const worker = new Worker(new URL("./decisionWorker.ts", import.meta.url), { type: "module" });
    const made = {
      worker,
      service: wrap<DecisionService>(worker),
      rejects: new Set<(reason: Error) => void>(),
    };
    worker.onerror = (event) => {
      if (started === made) end(made, new Error(event.message || "the decision worker could not be started"));
    };
    return made;
  }

  return {
    ask: (call) =>
      new Promise((resolve, reject) => {
        started ??= start();
        const { service, rejects } = started;
        rejects.add(reject);
        call(service)
          .then(resolve, reject)
          .finally(() => rejects.delete(reject));
      }),
    end: () => {
      if (started !== null) end(started, new Error("the decision worker was ended"));
    },
  };
}
