/** Number and customer of the job that is open. */
import { changeJob } from "../../job/edits/job.ts";
import { TextEntry } from "../controls/TextEntry.tsx";
import { useMaybeDocuments, usePlanner } from "../state/usePlanner.ts";

export function JobDetails() {
  const documents = useMaybeDocuments();
  const edit = usePlanner((state) => state.edit);
  if (documents === null) return null;
  const { number, customer } = documents.job;
  return (
    <section className="jobs__details panel" aria-label="The open job">
      <TextEntry
        label="Number of the open job"
        value={number}
        maxLength={60}
        required="A job needs a number."
        onCommit={(text) => edit((now) => changeJob(now, { number: text }))}
      />
      <TextEntry
        label="Its customer"
        value={customer}
        maxLength={120}
        onCommit={(text) => edit((now) => changeJob(now, { customer: text }))}
      />
    </section>
  );
}
