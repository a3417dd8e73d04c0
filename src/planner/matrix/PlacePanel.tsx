/** A print place: its size and cover, its halftone, the garments it is on; adding and removing places. */
import type { Documents } from "../../job/documents.ts";
import { addPlace, changePlace, newPlace, removePlace } from "../../job/edits/places.ts";
import type { Line, Place } from "../../job/jobDocument.ts";
import { lineName } from "../../job/lineName.ts";
import { isPrintedAt, lotOfLine } from "../../job/lookup.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { PercentEntry } from "../controls/PercentEntry.tsx";
import { Tick } from "../controls/Tick.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { PlaceFields } from "./PlaceFields.tsx";

interface Props {
  readonly documents: Documents;
  readonly place: Place;
  readonly onPlace: (placeId: string | null) => void;
  readonly onClose: () => void;
}

/** Names in the order in which a shop prints; the first that is free is offered. */
const USUAL_NAMES = ["Front", "Back", "Left chest", "Right sleeve", "Left sleeve"];

export function PlacePanel({ documents, place, onPlace, onClose }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { job, library } = documents;
  const change = (part: Parameters<typeof changePlace>[2]) => edit((now) => changePlace(now, place.id, part));
  const add = () => {
    const id = newId();
    const name =
      USUAL_NAMES.find((usual) => job.places.every((one) => one.name !== usual)) ??
      `Place ${job.places.length + 1}`;
    edit((now) => addPlace(now, newPlace(id, name)));
    onPlace(id);
  };
  const remove = () => {
    edit((now) => removePlace(now, place.id));
    onPlace(null);
    onClose();
  };
  const setPrinted = (lineId: string, isPrinted: boolean) => {
    const now = job.lines.map(({ id }) => id).filter((id) => isPrintedAt(place, id));
    const next = isPrinted ? [...now, lineId] : now.filter((id) => id !== lineId);
    change({ lineIds: job.lines.every(({ id }) => next.includes(id)) ? null : next });
  };
  const nameOf = (line: Line) => {
    const lot = lotOfLine(documents, line);
    return lot === null ? "Unknown garment" : lineName(lot);
  };
  return (
    <section className="matrix__panel panel" aria-label={`Print place, ${place.name}`}>
      <div className="matrix__fields">
        <PlaceFields place={place} units={library.shelf.defaults.units} onChange={change} />
        <PercentEntry
          label="Halftone area"
          hint="100 % is a solid."
          fraction={place.halftoneFraction}
          onCommit={(halftoneFraction) => change({ halftoneFraction })}
        />
        <Tick
          label="Smoothed after printing"
          checked={place.smoothed}
          onChange={(smoothed) => change({ smoothed })}
        />
      </div>
      <fieldset className="matrix__lines">
        <legend className="entry__label">Printed on</legend>
        {job.lines.map((line) => (
          <Tick
            key={line.id}
            label={nameOf(line)}
            checked={isPrintedAt(place, line.id)}
            onChange={(isPrinted) => setPrinted(line.id, isPrinted)}
          />
        ))}
      </fieldset>
      <div className="matrix__next-actions">
        <ActionButton onClick={add}>Add a print place</ActionButton>
        <ActionButton onClick={remove}>Remove {place.name}</ActionButton>
        <ActionButton onClick={onClose}>Close</ActionButton>
      </div>
    </section>
  );
}
