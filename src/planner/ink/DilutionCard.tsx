/** A master that was started: what was poured, its true part of colourant, and its way onto the shelf. */
import { addShelfItem } from "../../job/edits/shelf.ts";
import { masterOfDilution } from "../../job/inkRoom/masters.ts";
import type { Poured } from "../../job/inkRoom/poured.ts";
import type { Dilution } from "../../job/potDocument.ts";
import { ActionButton } from "../controls/ActionButton.tsx";
import { newId } from "../state/identity.ts";
import { usePlanner } from "../state/usePlanner.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { percentWords } from "../words/garmentWords.ts";
import { scaleWords, truePercentWords } from "../words/inkFigures.ts";
import { PourLines } from "./PourLines.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly dilution: Dilution;
  readonly poured: Poured;
  readonly ink: InkRoomInUse;
  readonly onPrint: () => void;
}

export function DilutionCard({ dilution, poured, ink, onPrint }: Props) {
  const edit = usePlanner((state) => state.edit);
  const { state } = poured;
  const onShelf = ink.shelf.masters.find(({ dilutionId }) => dilutionId === dilution.id);
  const part = state?.recipe.find(({ itemId }) => itemId === dilution.colourantId)?.massFraction ?? 0;
  const isMaster = part > 0 && part < 1;
  const title = `${ink.nameOf(dilution.colourantId)}, ${percentWords(dilution.massFraction)} in ${ink.nameOf(dilution.baseId)}`;
  return (
    <section className="ink__batch" aria-label={title}>
      <div className="ink__head">
        <h3>{title}</h3>
        <ActionButton weight="plain" aria-label={`Print the sheet of ${title}`} onClick={onPrint}>
          Print this sheet
        </ActionButton>
      </div>
      <p className="quiet">
        Started by {dilution.by}, {timeWords(dilution.at)}; made on {dilution.madeOn}, use by{" "}
        {dilution.expiresOn ?? "no day entered"}.
      </p>
      <PourLines sheet={dilution} poured={poured} ink={ink} />
      {state !== null && (
        <div className="ink__bar">
          <p>
            It holds <strong>{truePercentWords(part)}</strong> {ink.nameOf(dilution.colourantId)} in{" "}
            {scaleWords(state.totalGrams, dilution.scaleStepGrams, ink.units)}. A master is used as it came
            out: sheets count with this part.
          </p>
          {onShelf === undefined ? (
            <ActionButton
              weight="strong"
              disabled={!isMaster}
              onClick={() =>
                edit((now) => addShelfItem(now, "masters", masterOfDilution(dilution, poured, newId())))
              }
            >
              Put it on the shelf
            </ActionButton>
          ) : (
            <p>
              It is on the shelf
              {onShelf.massFraction !== part &&
                `, with ${truePercentWords(onShelf.massFraction)}: correct that there if the weighing was mistyped`}
              .
            </p>
          )}
        </div>
      )}
    </section>
  );
}
