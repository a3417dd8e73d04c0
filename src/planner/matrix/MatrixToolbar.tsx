/** Above the grid: the print place, the target band, the light, and what can be added. */
import type { Job, Place } from "../../job/jobDocument.ts";
import type { UnitChoice } from "../../units/shopUnits.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { viewingWords } from "../words/garmentWords.ts";
import { sizeWords } from "../words/placeWords.ts";
import { bandWords } from "../words/predictionSentences.ts";

export type OpenPanel = "place" | "target" | "light" | "mixes" | null;

interface Props {
  readonly job: Job;
  readonly units: UnitChoice;
  readonly place: Place;
  readonly open: OpenPanel;
  readonly onOpen: (panel: OpenPanel) => void;
  readonly onPlace: (placeId: string) => void;
  readonly onAddMix: () => void;
  readonly onDetails: (() => void) | null;
}

export function MatrixToolbar({ job, place, units, open, onOpen, onPlace, onAddMix, onDetails }: Props) {
  const toggle = (panel: Exclude<OpenPanel, null>, words: string, value: string) => (
    <button
      type="button"
      className="toolbar__setting"
      aria-expanded={open === panel}
      onClick={() => onOpen(open === panel ? null : panel)}
    >
      {words} <strong>{value}</strong>
    </button>
  );
  return (
    <div className="toolbar">
      {job.places.length > 1 && (
        <fieldset className="toolbar__places">
          <legend className="unseen">Print place</legend>
          {job.places.map((one) => (
            <button
              key={one.id}
              type="button"
              className="toolbar__place"
              aria-pressed={one.id === place.id}
              onClick={() => onPlace(one.id)}
            >
              {one.name}
            </button>
          ))}
        </fieldset>
      )}
      {toggle("place", job.places.length > 1 ? "print" : `${place.name},`, sizeWords(place, units))}
      {toggle("target", "target", bandWords(place.band))}
      {toggle("light", "light", viewingWords(job.viewing))}
      <div className="view__actions">
        {onDetails !== null && <ActionButton onClick={onDetails}>Show details</ActionButton>}
        <ActionButton
          aria-expanded={open === "mixes"}
          onClick={() => onOpen(open === "mixes" ? null : "mixes")}
        >
          Find mixes
        </ActionButton>
        <ActionButton onClick={onAddMix}>Add mix</ActionButton>
      </div>
    </div>
  );
}
