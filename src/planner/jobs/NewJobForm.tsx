/** The few things a new job needs before it can be opened. */
import { useState } from "react";
import { newJob } from "../../job/edits/job.ts";
import { newPlace } from "../../job/edits/places.ts";
import type { Job } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Tick } from "../controls/Tick.tsx";
import { firstInks } from "../matrix/firstMixes.ts";
import { PlaceFields, type PlaceSize } from "../matrix/PlaceFields.tsx";
import { newId, nowIso } from "../state/identity.ts";
import { useMaybeDocuments } from "../state/usePlanner.ts";

interface Props {
  /** `withFirstMix`: its place begins with the shop's reference clear, where the shelf has one. */
  readonly onStart: (job: Job, withFirstMix: boolean) => void;
  readonly onCancel: () => void;
}

const NUMBER_LENGTH = 60;
const CUSTOMER_LENGTH = 120;
const METRIC = { temperature: "celsius", length: "mm", threadCount: "per-cm", mass: "gram" } as const;

export function NewJobForm({ onStart, onCancel }: Props) {
  const [number, setNumber] = useState("");
  const [customer, setCustomer] = useState("");
  const shelf = useMaybeDocuments()?.library.shelf;
  const units = shelf?.defaults.units ?? METRIC;
  const [place, setPlace] = useState<PlaceSize>(() => newPlace(newId(), "Front"));
  const [withFirstMix, setWithFirstMix] = useState(true);
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
        const job = newJob({
          id: newId(),
          number: number.trim(),
          customer: customer.trim(),
          createdAt: nowIso(),
        });
        const { name, widthMm, heightMm, coverFraction } = place;
        const first = { ...newPlace(newId(), name), widthMm, heightMm, coverFraction };
        onStart({ ...job, places: [first] }, withFirstMix);
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
      <PlaceFields
        place={place}
        units={units}
        onChange={(change) => setPlace((before) => ({ ...before, ...change }))}
      />
      {(shelf === undefined || firstInks(shelf) !== null) && (
        <Tick
          label={`Try the shop's reference clear on ${place.name}`}
          checked={withFirstMix}
          onChange={setWithFirstMix}
        />
      )}
      <div className="jobs__new-actions">
        <ActionButton weight="strong" submit>
          Start
        </ActionButton>
        <ActionButton onClick={onCancel}>Cancel</ActionButton>
      </div>
    </form>
  );
}
