/** Where the planner stands, as the part of the address after `#`: it survives a reload and the browser's back. */
import { useCallback, useSyncExternalStore } from "react";

export const VIEW_NAMES = ["garments", "matrix", "tests", "before-the-run", "ink", "press", "shelf"] as const;
export type ViewName = (typeof VIEW_NAMES)[number];

export interface JobAddress {
  readonly view: ViewName;
  readonly jobId: string;
  readonly line: string | null;
  readonly mix: string | null;
  readonly place: string | null;
  /** Which part of a view that shows one at a time, as the lists of the shelf. */
  readonly tab: string | null;
}

export type Address = { readonly view: "jobs" } | JobAddress;

export const JOBS_ADDRESS: Address = { view: "jobs" };

export function jobAddress(
  jobId: string,
  view: ViewName,
  at: { line?: string | null; mix?: string | null; place?: string | null; tab?: string | null } = {},
): JobAddress {
  return {
    view,
    jobId,
    line: at.line ?? null,
    mix: at.mix ?? null,
    place: at.place ?? null,
    tab: at.tab ?? null,
  };
}

function isViewName(text: string): text is ViewName {
  return (VIEW_NAMES as readonly string[]).includes(text);
}

/** The address a hash stands for; null where it stands for none. */
export function parseAddress(hash: string): Address | null {
  const [path = "", query = ""] = hash.replace(/^#/, "").split("?", 2);
  const [first, jobId, view] = path.split("/").filter((part) => part !== "");
  if (first === "jobs") return JOBS_ADDRESS;
  if (first !== "job" || jobId === undefined) return null;
  const parameters = new URLSearchParams(query);
  return jobAddress(jobId, view !== undefined && isViewName(view) ? view : "garments", {
    line: parameters.get("line"),
    mix: parameters.get("mix"),
    place: parameters.get("place"),
    tab: parameters.get("tab"),
  });
}

export function printAddress(address: Address): string {
  if (address.view === "jobs") return "#/jobs";
  const { jobId, view } = address as JobAddress;
  const parameters = new URLSearchParams();
  for (const key of ["line", "mix", "place", "tab"] as const) {
    const value = (address as JobAddress)[key];
    if (value !== null) parameters.set(key, value);
  }
  const query = parameters.toString();
  return `#/job/${jobId}/${view}${query === "" ? "" : `?${query}`}`;
}

/** Goes to an address; `replace` leaves no step for the browser's back, as for moving a selection. */
export function goTo(address: Address, how: "push" | "replace" = "push"): void {
  const hash = printAddress(address);
  if (hash === window.location.hash) return;
  if (how === "push") {
    window.location.hash = hash;
    return;
  }
  window.history.replaceState(window.history.state, "", hash);
  window.dispatchEvent(new HashChangeEvent("hashchange"));
}

function listen(onChange: () => void): () => void {
  window.addEventListener("hashchange", onChange);
  return () => window.removeEventListener("hashchange", onChange);
}

const readHash = () => window.location.hash;

export interface AddressInUse {
  /** Null where the hash stands for no address, as on the very first visit. */
  readonly address: Address | null;
  readonly go: typeof goTo;
}

export function useAddress(): AddressInUse {
  const hash = useSyncExternalStore(listen, readHash, readHash);
  return { address: parseAddress(hash), go: goTo };
}

/** The job's address with some of its parts changed, for a view that is shown only when a job is open. */
export function useJobAddress(): {
  readonly address: JobAddress;
  readonly change: (change: Partial<Omit<JobAddress, "jobId">>, how?: "push" | "replace") => void;
} {
  const { address } = useAddress();
  if (address === null || address.view === "jobs") throw new Error("no job is open at this address");
  const current = address as JobAddress;
  const change = useCallback(
    (parts: Partial<Omit<JobAddress, "jobId">>, how: "push" | "replace" = "replace") => {
      const now = parseAddress(window.location.hash);
      if (now === null || now.view === "jobs") return;
      goTo({ ...(now as JobAddress), ...parts }, how);
    },
    [],
  );
  return { address: current, change };
}
