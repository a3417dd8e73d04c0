/** The weigh sheet of a master on paper: a page of its own with its dates. */
import type { Poured } from "../../job/inkRoom/poured.ts";
import type { Dilution } from "../../job/potDocument.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { percentWords } from "../words/garmentWords.ts";
import { onScaleWords } from "../words/inkFigures.ts";
import { SheetPage } from "./SheetPage.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly dilution: Dilution;
  readonly poured: Poured;
  readonly ink: InkRoomInUse;
}

export function MasterPaper({ dilution, poured, ink }: Props) {
  const { scaleStepGrams } = dilution;
  return (
    <div className="paper ink-paper">
      <SheetPage
        title={`Master: ${ink.nameOf(dilution.colourantId)}`}
        part={`${percentWords(dilution.massFraction)} in ${ink.nameOf(dilution.baseId)}`}
        facts={[
          `Made on ${dilution.madeOn}; use by ${dilution.expiresOn ?? "no day entered"}.`,
          `Sheet written by ${dilution.by}, ${timeWords(dilution.at)}; step of the scale ${onScaleWords(scaleStepGrams, scaleStepGrams, ink.units)}.`,
        ]}
        lines={poured.lines.map(({ lineId, name, wantedGrams, grams }) => ({
          id: lineId,
          name,
          grams: wantedGrams,
          poured: grams,
        }))}
        stepGrams={scaleStepGrams}
        units={ink.units}
        notes={["Mix mechanically, let it rest, sieve it, and write the day on the lid (common practice)."]}
      />
    </div>
  );
}
