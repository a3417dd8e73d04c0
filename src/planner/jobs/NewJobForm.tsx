/** The few things a new job needs before it can be opened. */
import { useState } from "react";
import { newJob } from "../../job/edits/job.ts";
import type { Job } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { newId, nowIso } from "../state/identity.ts";

interface Props {
  readonly onStart: (job: Job) => void;
  readonly onCancel: () => void;
}

const NUMBER_LENGTH = 60;
const CUSTOMER_LENGTH = 120;

export function NewJobForm({ onStart, onCancel }: Props) {
  const [number, setNumber] = useState("");
  const [customer, setCustomer] = useState("");
  const [asked, setAsked] = useState(false);
  const missing = asked && number.trim() === "";
  return (
    <form
      className="jobs__new panel"
      aria-label="New job"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (number.trim() === "") return;
        onStart(
          newJob({
            id: newId(),
            placeId: newId(),
            number: number.trim(),
            customer: customer.trim(),
            createdAt: nowIso(),
          }),
        );
      }}
    >
      <div className="entry">
        <label className="entry__label" htmlFor="new-job-number">
          Job number
        </label>
        <input
          id="new-job-number"
          className="entry__field"
          // biome-ignore lint/a11y/noAutofocus: the form opens where the printer asked for it, to be typed into
          autoFocus
          autoComplete="off"
          maxLength={NUMBER_LENGTH}
          value={number}
          aria-invalid={missing ? true : undefined}
          aria-describedby={missing ? "new-job-problem" : undefined}
          onChange={(event) => setNumber(event.target.value)}
        />
        {missing && (
          <p id="new-job-problem" className="entry__problem" role="alert">
            A job needs a number.
          </p>
        )}
      </div>
      <div className="entry">
        <label className="entry__label" htmlFor="new-job-customer">
          Customer
        </label>
        <input
          id="new-job-customer"
          className="entry__field"
          autoComplete="off"
          maxLength={CUSTOMER_LENGTH}
          value={customer}
          onChange={(event) => setCustomer(event.target.value)}
        />
      </div>
      <div className="jobs__new-actions">
        <ActionButton weight="strong" submit>
          Start
        </ActionButton>
        <ActionButton onClick={onCancel}>Cancel</ActionButton>
      </div>
    </form>
  );
}
