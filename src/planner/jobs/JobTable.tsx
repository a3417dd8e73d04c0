/** The list of jobs, one row each; a job that cannot be read is listed with what is wrong. */
import { jobAddress, printAddress } from "../address.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import type { JobSummary } from "../storagePort.ts";
import { ProblemList } from "../words/ProblemList.tsx";
import { groupedCount } from "../words/pieceWords.ts";

interface Props {
  readonly jobs: readonly JobSummary[];
  readonly onExport: (job: JobSummary) => void;
  readonly onDelete: (job: JobSummary) => void;
}

/** An ISO time in the reader's own order of day and month. */
function dayOf(iso: string): string {
  const at = Date.parse(iso);
  return Number.isNaN(at) ? "" : new Intl.DateTimeFormat(undefined, { dateStyle: "medium" }).format(at);
}

/** The same with the time, since a job is often changed more than once a day. */
function dayAndTimeOf(iso: string): string {
  const at = Date.parse(iso);
  const style = { dateStyle: "medium", timeStyle: "short" } as const;
  return Number.isNaN(at) ? "" : new Intl.DateTimeFormat(undefined, style).format(at);
}

/** The job changed last comes first; one of which that is not known by the day it was started. */
function latestFirst(one: JobSummary, other: JobSummary): number {
  const [first, second] = [one, other].map((job) => job.changedAt ?? job.createdAt);
  return (second ?? "").localeCompare(first ?? "");
}

export function JobTable({ jobs, onExport, onDelete }: Props) {
  return (
    <table className="jobs__table">
      <caption className="unseen">Jobs on this device</caption>
      <thead>
        <tr>
          <th scope="col">Job</th>
          <th scope="col">Customer</th>
          <th scope="col" className="jobs__count">
            Garments
          </th>
          <th scope="col" className="jobs__count">
            Pieces
          </th>
          <th scope="col">Started</th>
          <th scope="col">Changed</th>
          <th scope="col">
            <span className="unseen">Actions</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {jobs.toSorted(latestFirst).map((job) => {
          const readable = job.problems.length === 0;
          return (
            <tr key={job.id}>
              <th scope="row">
                {readable ? (
                  <a href={printAddress(jobAddress(job.id, "garments"))}>{job.number}</a>
                ) : (
                  <>
                    {job.number === "" ? "A job that cannot be read" : job.number}
                    <ProblemList problems={job.problems} />
                  </>
                )}
              </th>
              <td data-label="Customer">{job.customer}</td>
              <td data-label="Garments" className="jobs__count">
                {readable && groupedCount(job.lineCount)}
              </td>
              <td data-label="Pieces" className="jobs__count">
                {readable && groupedCount(job.pieceCount)}
              </td>
              <td data-label="Started">{dayOf(job.createdAt)}</td>
              <td data-label="Changed">
                {job.changedAt === null ? "not known" : dayAndTimeOf(job.changedAt)}
              </td>
              <td className="jobs__actions">
                {readable && (
                  <ActionButton
                    weight="plain"
                    aria-label={`Export ${job.number}`}
                    onClick={() => onExport(job)}
                  >
                    Export
                  </ActionButton>
                )}
                <ActionButton
                  weight="plain"
                  aria-label={`Delete ${job.number}`}
                  onClick={() => onDelete(job)}
                >
                  Delete
                </ActionButton>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
