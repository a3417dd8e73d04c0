/** Number and customer of the job that is open, and the day its run starts. */
import { changeJob, setRunStartsOn } from "../../job/edits/job.ts";
import { DayEntry } from "../controls/DayEntry.tsx";
import { TextEntry } from "../controls/TextEntry.tsx";
import { useMaybeDocuments, usePlanner } from "../state/usePlanner.ts";

export function JobDetails() {
  const documents = useMaybeDocuments();
  const edit = usePlanner((state) => state.edit);
  if (documents === null) return null;
  const { number, customer, runStartsOn } = documents.job;
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
      <DayEntry
        label="Its run starts on"
        day={runStartsOn}
        hint="Test prints have to be read before."
        onCommit={(day) => edit((now) => setRunStartsOn(now, day))}
      />
    </section>
  );
}
