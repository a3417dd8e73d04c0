/** The target band of a print place: how much darker or lighter, give or take, and how far the hue may turn. */
import { setBand } from "../../job/edits/places.ts";
import type { Band, Place } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { NumberEntry } from "../controls/NumberEntry.tsx";
import { usePlanner } from "../state/usePlanner.ts";

const DIRECTIONS = [
  { value: "darker", label: "darker" },
  { value: "lighter", label: "lighter" },
] as const;

export function TargetPanel({ place, onClose }: { readonly place: Place; readonly onClose: () => void }) {
  const edit = usePlanner((state) => state.edit);
  const { band } = place;
  const change = (part: Partial<Band>) => edit((now) => setBand(now, place.id, { ...band, ...part }));
  const sign = band.deltaL > 0 ? 1 : -1;
  return (
    <section className="matrix__panel panel" aria-label={`Target band, ${place.name}`}>
      <div className="matrix__fields">
        <NumberEntry
          label="The print is to be"
          value={Math.abs(band.deltaL)}
          min={0}
          max={100}
          onCommit={(amount) => change({ deltaL: amount === 0 ? 0 : sign * amount })}
        />
        <Choice
          label="in this direction"
          value={sign < 0 ? "darker" : "lighter"}
          options={DIRECTIONS}
          onChange={(direction) =>
            change({ deltaL: (direction === "darker" ? -1 : 1) * Math.abs(band.deltaL) })
          }
        />
        <NumberEntry
          label="give or take"
          value={band.tolerance}
          min={0}
          max={50}
          onCommit={(tolerance) => change({ tolerance })}
        />
        <NumberEntry
          label="hue may turn by"
          value={band.hueLimit}
          min={0}
          max={50}
          onCommit={(hueLimit) => change({ hueLimit })}
        />
        <ActionButton onClick={onClose}>Close</ActionButton>
      </div>
      <p className="matrix__note">
        In steps of L*, against the bare cloth. The hue counts in ΔH*, beyond what the clear alone does: a
        tint that turns it further is out of band.
      </p>
    </section>
  );
}
