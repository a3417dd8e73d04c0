/** Brings the job that the address names onto the bench; without an address, the job to begin with. */
import { useEffect, useRef, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import type { Problem } from "../../job/problem.ts";
import { type Address, goTo, JOBS_ADDRESS, type JobAddress, jobAddress, parseAddress } from "../address.ts";
import { useSession } from "../services.tsx";

interface Opening {
  readonly isOpen: boolean;
  readonly problems: readonly Problem[];
}

const NONE: readonly Problem[] = [];

export function useOpenJob(address: Address | null, documents: Documents | null): Opening {
  const session = useSession();
  const [failed, setFailed] = useState<{ wanted: string; problems: readonly Problem[] } | null>(null);
  const underWay = useRef<string | null>(null);
  const wanted = address === null ? "start" : address.view === "jobs" ? null : (address as JobAddress).jobId;
  const isOpen = documents !== null && wanted === documents.job.id;

  useEffect(() => {
    // Whoever goes elsewhere and comes back tries again.
    if (failed !== null && failed.wanted !== wanted) setFailed(null);
    if (wanted === null || isOpen || underWay.current === wanted || failed?.wanted === wanted) return;
    underWay.current = wanted;
    const work = wanted === "start" ? session.start() : session.open(wanted);
    void work.then((outcome) => {
      if (underWay.current === wanted) underWay.current = null;
      // Who has gone somewhere in the meantime stays there.
      const isWaited = wanted !== "start" || parseAddress(window.location.hash) === null;
      if (outcome !== null && !outcome.ok) setFailed({ wanted, problems: outcome.problems });
      else if (!isWaited) return;
      else if (outcome === null) goTo(JOBS_ADDRESS, "replace");
      else if (wanted === "start") goTo(jobAddress(outcome.jobId, "matrix"), "replace");
    });
  }, [wanted, isOpen, session, failed]);

  return { isOpen, problems: failed !== null && failed.wanted === wanted ? failed.problems : NONE };
}
