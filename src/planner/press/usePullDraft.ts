/** A pull being typed, kept where a sleeping tablet does not lose it. */
import { useState } from "react";
import { type PullForm, pullFromStored, storedPull } from "../../job/press/pullForm.ts";
import { useServices } from "../services.tsx";
import { usePlannerStore } from "../state/usePlanner.ts";

/** @param of which line at which place; the caller keys its component by it. */
export function usePullDraft(
  of: string,
  begin: () => PullForm,
): readonly [PullForm, (form: PullForm) => void] {
  const { benchDrafts } = useServices();
  const jobId = usePlannerStore().getState().documents?.job.id ?? "";
  const key = `${jobId} ${of}`;
  const [form, setForm] = useState(() => pullFromStored(benchDrafts.read(key)) ?? begin());
  const put = (next: PullForm) => {
    setForm(next);
    benchDrafts.keep(key, storedPull(next));
  };
  return [form, put];
}
