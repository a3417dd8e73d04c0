/** The jobs on this device: open, start, import, export, delete. */
import { useCallback, useEffect, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import type { Job } from "../../job/jobDocument.ts";
import type { Problem } from "../../job/problem.ts";
import { jobAddress, useAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Notice } from "../controls/Notice.tsx";
import { withFirstMixes } from "../matrix/firstMixes.ts";
import { useSession } from "../services.tsx";
import { newId } from "../state/identity.ts";
import { useMaybeDocuments } from "../state/usePlanner.ts";
import type { JobSummary } from "../storagePort.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { DeleteJobDialog } from "./DeleteJobDialog.tsx";
import { ImportConflictDialog } from "./ImportConflictDialog.tsx";
import { JobDetails } from "./JobDetails.tsx";
import { JobTable } from "./JobTable.tsx";
import { type Outcome, problemOfError } from "./jobSession.ts";
import { NewJobForm } from "./NewJobForm.tsx";
import "./jobs.css";

interface Message {
  readonly kind: "note" | "caution" | "problem";
  readonly title: string;
  readonly problems: readonly Problem[];
}

export function JobsView() {
  const session = useSession();
  const { go } = useAddress();
  const [jobs, setJobs] = useState<readonly JobSummary[] | null>(null);
  const [message, setMessage] = useState<Message | null>(null);
  const [isNew, setIsNew] = useState(false);
  const [leaving, setLeaving] = useState<JobSummary | null>(null);
  const [conflict, setConflict] = useState<{ documents: Documents; stored: Job } | null>(null);

  const refresh = useCallback(async () => {
    try {
      setJobs(await session.list());
    } catch (error) {
      setJobs([]);
      setMessage({
        kind: "problem",
        title: "The jobs could not be listed.",
        problems: [problemOfError(error)],
      });
    }
  }, [session]);
  useEffect(() => void refresh(), [refresh]);

  // What storage has of the open job may be a moment old.
  const open = useMaybeDocuments()?.job;
  const shown = jobs?.map((job) =>
    job.id === open?.id ? { ...job, number: open.number, customer: open.customer } : job,
  );

  const fail = (title: string, problems: readonly Problem[]) =>
    setMessage({ kind: "problem", title, problems });

  function enter(outcome: Outcome, refusal: string): void {
    if (!outcome.ok) {
      fail(refusal, outcome.problems);
      return;
    }
    if (outcome.kept.length > 0) {
      setMessage({
        kind: "caution",
        title: "Imported. Some entries of your shop differ:",
        problems: outcome.kept,
      });
      void refresh();
      return;
    }
    go(jobAddress(outcome.jobId, "garments"));
  }

  async function importFile(): Promise<void> {
    setMessage(null);
    const imported = await session.importFile();
    if (imported.ok === "closed") return;
    if (imported.ok === "already-here") setConflict(imported);
    else enter(imported, "This file was not imported. Nothing was changed.");
  }

  async function exportJob(job: JobSummary): Promise<void> {
    setMessage(null);
    const exported = await session.exportJob(job.id);
    if (!exported.ok) fail(`${job.number} was not exported.`, exported.problems);
    else if (exported.written)
      setMessage({ kind: "note", title: `${job.number} was exported.`, problems: [] });
  }

  async function remove(job: JobSummary): Promise<void> {
    setLeaving(null);
    const removed = await session.remove(job.id);
    if (removed.ok) setMessage({ kind: "note", title: `${job.number} was deleted.`, problems: [] });
    else fail(`${job.number} was not deleted.`, removed.problems);
    await refresh();
  }

  return (
    <div className="view jobs">
      <div className="view__head">
        <h2>Jobs on this device</h2>
        <div className="view__actions">
          <ActionButton onClick={() => setIsNew(true)} aria-expanded={isNew}>
            Start a job
          </ActionButton>
          <ActionButton onClick={() => void importFile()}>Import a job file</ActionButton>
        </div>
      </div>
      {message !== null && (
        <Notice kind={message.kind} announce key={message.title}>
          <p>{message.title}</p>
          <ProblemList problems={message.problems} />
        </Notice>
      )}
      {isNew && (
        <NewJobForm
          onCancel={() => setIsNew(false)}
          onStart={async (job, withFirstMix) => {
            const placeId = job.places[0]?.id;
            const outcome = await session.create(job, (documents) =>
              withFirstMix && placeId !== undefined
                ? withFirstMixes(documents, placeId, [0], newId)
                : documents,
            );
            if (outcome.ok) setIsNew(false);
            enter(outcome, "The job was not started.");
          }}
        />
      )}
      {jobs === null && <p role="status">Reading the jobs…</p>}
      {jobs?.length === 0 && (
        <div className="jobs__empty">
          <p>No job is stored on this device. Start one, import a job file, or look at the demo.</p>
          <ActionButton onClick={async () => enter(await session.openDemo(), "The demo job was not opened.")}>
            Open the demo job
          </ActionButton>
        </div>
      )}
      {shown !== undefined && shown.length > 0 && (
        <JobTable jobs={shown} onExport={(job) => void exportJob(job)} onDelete={setLeaving} />
      )}
      <JobDetails />
      {leaving !== null && (
        <DeleteJobDialog
          job={leaving}
          onClose={() => setLeaving(null)}
          onDelete={() => void remove(leaving)}
        />
      )}
      {conflict !== null && (
        <ImportConflictDialog
          number={conflict.documents.job.number}
          storedNumber={conflict.stored.number}
          onClose={() => setConflict(null)}
          onAccept={async (how) => {
            setConflict(null);
            enter(
              await session.accept(conflict.documents, how),
              "This file was not imported. Nothing was changed.",
            );
          }}
        />
      )}
    </div>
  );
}
