/** A pot on record: its sheet as written, what was poured, what that comes to, and its label. */

import { useState } from "react";
import type { InkBatch, RecordedPot } from "../../job/inkRoom/inkBatch.ts";
import { isSameRecipe } from "../../job/recipeParts.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { timeWords } from "../words/checklistSentences.ts";
import { PotLabel } from "./PotLabel.tsx";
import { PotOutcome } from "./PotOutcome.tsx";
import { PourLines } from "./PourLines.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly recorded: RecordedPot;
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
}

export function PotCard({ recorded, batch, ink }: Props) {
  const { pot, poured } = recorded;
  const [isLabelShown, setLabelShown] = useState(false);
  const mix = ink.documents.job.mixes.find(({ id }) => id === pot.mixId);
  const isEarlier = mix !== undefined && !isSameRecipe(mix.recipe, pot.recipe);
  return (
    <>
      <p className="quiet">
        Sheet written by {pot.by}, {timeWords(pot.at)}, recipe version {pot.recipeVersion}
        {isEarlier && " (another recipe than the mix has now)"}.
      </p>
      <PourLines sheet={pot} poured={poured} ink={ink} />
      <PotOutcome recorded={recorded} batch={batch} ink={ink} />
      <div>
        <ActionButton
          weight="plain"
          aria-expanded={isLabelShown}
          onClick={() => setLabelShown(!isLabelShown)}
        >
          {isLabelShown ? "Hide the pot label" : "Show the pot label"}
        </ActionButton>
      </div>
      {isLabelShown && <PotLabel recorded={recorded} batch={batch} ink={ink} />}
    </>
  );
}
