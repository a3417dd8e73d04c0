// The decision engine's workers from the planner's side: answers, failures, cancelling, and that nothing is left running.
import { expose } from "comlink";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { createDecisionEngine } from "../../../src/engine/decisions/decisionEngine.ts";
import { demoDocuments } from "./demoJob.ts";

const documents = demoDocuments();
const placeId = documents.job.places[0]!.id;
const TODAY = "2026-02-01";
const FOUND = { ok: false, faults: [], impossible: true } as const;

/** Never settles, like a worker that is still at work. */
const unending = () => new Promise<never>(() => {});

/** What stands in for the work of each worker that is started. */
let services: { decision: () => object; solver: () => object };

/** A worker whose service runs here, over a channel as between threads. */
class LocalWorker {
  static readonly started: LocalWorker[] = [];
  onerror: ((event: { readonly message: string }) => void) | null = null;
  isRunning = true;
  readonly isSolver: boolean;
  private readonly channel = new MessageChannel();

  constructor(url: URL) {
    this.isSolver = url.href.includes("mixSolverWorker");
    expose(this.isSolver ? services.solver() : services.decision(), this.channel.port2);
    LocalWorker.started.push(this);
  }
  postMessage(message: unknown, transfer: Transferable[]): void {
    this.channel.port1.postMessage(message, transfer);
  }
  addEventListener(type: "message", listener: (event: MessageEvent) => void): void {
    this.channel.port1.addEventListener(type, listener);
    this.channel.port1.start();
  }
  removeEventListener(type: "message", listener: (event: MessageEvent) => void): void {
    this.channel.port1.removeEventListener(type, listener);
  }
  terminate(): void {
    this.isRunning = false;
    this.channel.port1.close();
    this.channel.port2.close();
  }
}

const running = () => LocalWorker.started.filter(({ isRunning }) => isRunning);
/** Of `kind`, or of both. */
const runningCount = (kind?: "solver") =>
  running().filter(({ isSolver }) => kind === undefined || isSolver).length;

beforeEach(() => {
  LocalWorker.started.length = 0;
  vi.stubGlobal("Worker", LocalWorker);
});
afterEach(() => {
  for (const worker of running()) worker.terminate();
  vi.unstubAllGlobals();
});

describe("questions", () => {
  it("are answered by a worker for plans and one for recovery, both kept", async () => {
    services = {
      decision: () => ({ tests: (_: unknown, today: string) => ({ today }), recover: () => FOUND }),
      solver: unending,
    };
    const engine = createDecisionEngine();
    expect(await engine.planTests({ documents, today: TODAY })).toEqual({ today: TODAY });
    const ask = { lineId: "line", placeId, halftonesAllowed: false };
    expect(await engine.recover(documents, ask)).toEqual(FOUND);
    await engine.planTests({ documents, today: TODAY });
    await engine.recover(documents, ask);
    expect(LocalWorker.started).toHaveLength(2);
    engine.dispose();
    expect(runningCount()).toBe(0);
  });

  it("reject with what the worker threw", async () => {
    const thrown = () => {
      throw new RangeError("sd must be >= 0; got -1");
    };
    services = { decision: () => ({ tests: thrown }), solver: unending };
    const engine = createDecisionEngine();
    await expect(engine.planTests({ documents, today: TODAY })).rejects.toThrow("sd must be >= 0; got -1");
  });

  it("reject where the worker cannot be started, and the next starts another", async () => {
    services = { decision: () => ({ tests: unending }), solver: unending };
    const engine = createDecisionEngine();
    const lost = engine.planTests({ documents, today: TODAY });
    LocalWorker.started[0]!.onerror?.({ message: "no such file" });
    await expect(lost).rejects.toThrow("no such file");
    expect(runningCount()).toBe(0);
    services = { ...services, decision: () => ({ tests: () => "planned" }) };
    expect(await engine.planTests({ documents, today: TODAY })).toBe("planned");
  });
});

describe("a mix search", () => {
  const program = { values: new Float64Array(1), indices: new Int32Array(1) };
  const stating = () => ({ stateSearch: () => ({ program }), finishSearch: () => FOUND });

  it("is stated, solved and finished, and leaves no solver behind", async () => {
    services = { decision: stating, solver: () => ({ solve: () => ({ status: "infeasible" }) }) };
    const told: string[] = [];
    const engine = createDecisionEngine();
    const search = engine.findMixes(documents, placeId, ({ stage }) => told.push(stage));
    expect(await search.answer).toEqual(FOUND);
    expect(told).toEqual(["solving"]);
    expect(runningCount("solver")).toBe(0);
    // Its worker is kept: cancelling what is over must not end it.
    search.cancel();
    expect(runningCount()).toBe(1);
  });

  it("answers null once cancelled while it predicts, and the next one starts a worker anew", async () => {
    services = { decision: () => ({ stateSearch: unending }), solver: unending };
    const engine = createDecisionEngine();
    const search = engine.findMixes(documents, placeId, () => {});
    search.cancel();
    expect(await search.answer).toBeNull();
    expect(runningCount()).toBe(0);
    services = { ...services, decision: () => ({ stateSearch: () => ({ answer: FOUND }) }) };
    expect(await engine.findMixes(documents, placeId, () => {}).answer).toEqual(FOUND);
  });

  it("gives way to a later one, whose answer is its own", async () => {
    services = { decision: () => ({ stateSearch: unending }), solver: unending };
    const engine = createDecisionEngine();
    const first = engine.findMixes(documents, placeId, () => {});
    services = { ...services, decision: () => ({ stateSearch: () => ({ answer: FOUND }) }) };
    const second = engine.findMixes(documents, placeId, () => {});
    expect(await first.answer).toBeNull();
    expect(await second.answer).toEqual(FOUND);
  });

  it("ends with the engine, solver and all", async () => {
    services = { decision: stating, solver: () => ({ solve: unending }) };
    const engine = createDecisionEngine();
    const { answer } = engine.findMixes(documents, placeId, () => {});
    await vi.waitFor(() => expect(runningCount()).toBe(2));
    engine.dispose();
    expect(await answer).toBeNull();
    expect(runningCount()).toBe(0);
  });
});
