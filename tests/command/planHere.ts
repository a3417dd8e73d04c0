// The command in this process, what it prints caught: starting one of its own for each question takes a second or more.
import { vi } from "vitest";
import { main } from "../../src/command/main.ts";

export interface Outcome {
  readonly status: number;
  readonly stdout: string;
  readonly stderr: string;
}

export async function planHere(...args: string[]): Promise<Outcome> {
  const printed = { stdout: "", stderr: "" };
  const spies = (["stdout", "stderr"] as const).map((name) =>
    vi.spyOn(process[name], "write").mockImplementation((text) => {
      printed[name] += String(text);
      return true;
    }),
  );
  try {
    const status = await main(args);
    return { status, ...printed };
  } finally {
    for (const spy of spies) spy.mockRestore();
  }
}
