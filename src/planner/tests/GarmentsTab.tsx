/** Each garment of the job: what was expected before any print, what is now, and the readings it rests on. */
import { useMemo, useState } from "react";
import type { Documents } from "../../job/documents.ts";
import type { Place } from "../../job/jobDocument.ts";
import { chosenCandidate } from "../../job/lookup.ts";
import { useJobAddress } from "../address.ts";
import { Choice } from "../controls/Choice.tsx";
import {
  type MatrixCandidate,
  type MatrixLine,
  matrixCandidates,
  matrixLines,
} from "../matrix/matrixInputs.ts";
import { garmentTitle } from "../matrix/RowHead.tsx";
import { mixHeading } from "../words/mixWords.ts";
import { GarmentEvidence } from "./GarmentEvidence.tsx";

interface Props {
  readonly documents: Documents;
  readonly onOpen: (recordId: string) => void;
}

export function GarmentsTab({ documents, onOpen }: Props) {
  const { address, change } = useJobAddress();
  const { job } = documents;
  const place = job.places.find(({ id }) => id === address.place) ?? job.places[0];
  if (place === undefined || job.lines.length === 0)
    return <p>The job has no garment or no print place yet, so there is nothing to predict.</p>;
  return (
    <>
      {job.places.length > 1 && (
        <div className="tests__place" data-print="hide">
          <Choice
            label="Print place"
            value={place.id}
            options={job.places.map(({ id, name }) => ({ value: id, label: name }))}
            onChange={(id) => change({ place: id })}
          />
        </div>
      )}
      <GarmentsAt key={place.id} documents={documents} place={place} onOpen={onOpen} />
    </>
  );
}

const title = (line: MatrixLine) =>
  `${garmentTitle(line.lot)}${line.lot === null || line.lot.mill === "" ? "" : `, ${line.lot.mill}`}`;

function GarmentsAt({ documents, place, onOpen }: Props & { readonly place: Place }) {
  const { address, change } = useJobAddress();
  const { job, library } = documents;
  const lines = useMemo(() => matrixLines(documents, place), [documents, place]);
  const candidates = useMemo(() => matrixCandidates(documents, place), [documents, place]);
  const [candidateId, setCandidateId] = useState<string | null>(null);
  const line = lines.find((one) => one.line.id === address.line) ?? lines[0];
  const chosen = line === undefined ? null : chosenCandidate(job, line.line.id, place.id);
  const wanted = candidateId ?? chosen?.id ?? null;
  const column = candidates.find(({ candidate }) => candidate.id === wanted) ?? candidates[0];
  if (line === undefined || column === undefined)
    return <p>Nothing is printed here, or no mix is in the matrix yet.</p>;
  const label = ({ mix, setUp }: MatrixCandidate) => {
    const heading = mix === null ? null : mixHeading(mix, library.shelf);
    return `${heading?.title ?? "mix missing"}, ${heading?.recipe ?? ""}${setUp === null ? "" : `, ${setUp.name}`}`;
  };
  const countOf = (one: MatrixLine) =>
    library.testPrints.filter(({ garmentLotId }) => garmentLotId === one.lot?.id).length;
  return (
    <div className="tests__garments">
      <nav className="tests__lots" aria-label="Garments" data-print="hide">
        <ul>
          {lines.map((one) => (
            <li key={one.line.id}>
              <button
                type="button"
                className="tests__lot"
                aria-current={one === line ? "true" : undefined}
                onClick={() => change({ line: one.line.id })}
              >
                {title(one)}
                <span className="quiet tests__second">
                  {one.lot?.lot !== undefined && one.lot.lot !== "" && `lot ${one.lot.lot}, `}
                  {countOf(one) === 0
                    ? "no print on this lot"
                    : countOf(one) === 1
                      ? "1 reading"
                      : `${countOf(one)} readings`}
                </span>
              </button>
            </li>
          ))}
        </ul>
      </nav>
      <section className="tests__garment" aria-label={title(line)}>
        <h3>
          {title(line)}
          {line.lot !== null && line.lot.lot !== "" && `, lot ${line.lot.lot}`}
        </h3>
        <Choice
          label="Base and set-up"
          value={column.candidate.id}
          options={candidates.map((one) => ({ value: one.candidate.id, label: label(one) }))}
          onChange={setCandidateId}
        />
        <GarmentEvidence documents={documents} line={line} column={column} onOpen={onOpen} />
      </section>
    </div>
  );
}
