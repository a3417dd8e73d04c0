/** The light and observer that everything is predicted for, with what such a switch cannot know. */

import { changeJob } from "../../job/edits/job.ts";
import type { Job } from "../../job/jobDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { Choice } from "../controls/Choice.tsx";
import { usePlanner } from "../state/usePlanner.ts";
import { ILLUMINANTS, OBSERVERS } from "../words/garmentWords.ts";

interface Props {
  readonly job: Job;
  /** Garments whose spectrum is only reconstructed, and from a reading under another light. */
  readonly indicativeCount: number;
  readonly onClose: () => void;
}

export function LightPanel({ job, indicativeCount, onClose }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { viewing } = job;
  return (
    <section className="matrix__panel panel" aria-label="Light">
      <div className="matrix__fields">
        <Choice
          label="Light"
          value={viewing.illuminant}
          options={ILLUMINANTS}
          onChange={(illuminant) => edit((now) => changeJob(now, { viewing: { ...viewing, illuminant } }))}
        />
        <Choice
          label="Observer"
          value={viewing.observer}
          options={OBSERVERS}
          onChange={(observer) => edit((now) => changeJob(now, { viewing: { ...viewing, observer } }))}
        />
        <ActionButton onClick={onClose}>Close</ActionButton>
      </div>
      <div className="matrix__note">
        <p>
          The figures are for this light. Where only a colour was read, its spectrum is reconstructed, and
          under another light that is only indicative
          {indicativeCount > 0 && `: so it is for ${indicativeCount} of the garments here`}. The swatches
          always stand in daylight, as a screen shows them.
        </p>
        <p>
          A screen that warms or dims itself, as many do at night, falsifies every swatch. Switch that off
          before you judge a colour; only a print on the lot is proof.
        </p>
      </div>
    </section>
  );
}
