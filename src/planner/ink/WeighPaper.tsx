/** The weigh sheets of batches on paper: one page a pot, black on white. */

import type { Correction } from "../../core/planning/ink/weighCorrection.ts";
import type { InkBatch, RecordedPot } from "../../job/inkRoom/inkBatch.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { onScaleWords, scaleWords } from "../words/inkFigures.ts";
import { sheetNoticeSentence } from "../words/inkSentences.ts";
import { stepSentence, tooBigSentences } from "../words/weighingSentences.ts";
import { useMostSensitive } from "./PlannedSheet.tsx";
import { PlannedLabel, PotLabel } from "./PotLabel.tsx";
import { potNumbers, recordedPot } from "./PotList.tsx";
import { recipeWords } from "./RecipeWords.tsx";
import { SheetPage, type SheetPageLine } from "./SheetPage.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly ink: InkRoomInUse;
  readonly batch: InkBatch;
}

export function WeighPaper(props: { readonly ink: InkRoomInUse; readonly batches: readonly InkBatch[] }) {
  const { ink, batches } = props;
  return (
    <div className="paper ink-paper">
      {batches.flatMap((batch) =>
        potNumbers(batch).map((potNumber) => {
          const recorded = recordedPot(batch, potNumber);
          const key = `${batch.mixId} ${potNumber}`;
          return recorded === null ? (
            <PlannedPage key={key} ink={ink} batch={batch} potNumber={potNumber} />
          ) : (
            <RecordedPage key={key} ink={ink} batch={batch} recorded={recorded} />
          );
        }),
      )}
    </div>
  );
}

function useStepNote({ ink, batch }: Props, stepGrams: number): readonly string[] {
  const worst = useMostSensitive(batch, ink);
  return worst === null ? [] : [stepSentence(worst.error, stepGrams, worst.name, ink.units)];
}

function PlannedPage({ ink, batch, potNumber }: Props & { readonly potNumber: number }) {
  const { sheet, pots, scale } = batch;
  const stepGrams = scale?.stepGrams ?? 1;
  const stepNote = useStepNote({ ink, batch }, stepGrams);
  if (sheet?.ok !== true || pots === null || scale === null) return null;
  const words = { units: ink.units, scaleStepGrams: stepGrams, nameOf: ink.nameOf };
  return (
    <SheetPage
      title={batch.mixName}
      part={`pot ${potNumber} of ${pots.potCount}`}
      facts={[
        recipeWords(batch.recipe, ink.shelf),
        `Recipe version ${batch.recipeVersion}; scale: ${scale.name}, step ${onScaleWords(stepGrams, stepGrams, ink.units)}; pot: ${pots.sizeName}; planned ${ink.today}.`,
      ]}
      lines={sheet.lines.map(({ id, name, grams }): SheetPageLine => ({ id, name, grams, poured: null }))}
      stepGrams={stepGrams}
      units={ink.units}
      notes={[...stepNote, ...sheet.notices.map((notice) => sheetNoticeSentence(notice, words))]}
    >
      <LabelSection>
        <PlannedLabel ink={ink} batch={batch} potNumber={potNumber} />
      </LabelSection>
    </SheetPage>
  );
}

/** What is still to be done about a pot that was weighed. */
function correctionNotes(
  correction: Correction | null,
  { pot }: RecordedPot,
  ink: InkRoomInUse,
): readonly string[] {
  if (correction === null) return [];
  if (!correction.ok) return tooBigSentences(correction.figures, pot.scaleStepGrams, ink.units);
  if (correction.additions.length === 0)
    return ["Right: every line is within a step of the scale of its share."];
  const additions = correction.additions.map(
    ({ id, grams }) =>
      `${scaleWords(grams, pot.scaleStepGrams, ink.units)} of ${pot.lines.find((line) => line.id === id)?.name ?? ""}`,
  );
  return [`To bring it back to the recipe, add ${additions.join(" and ")}.`];
}

function RecordedPage({ ink, batch, recorded }: Props & { readonly recorded: RecordedPot }) {
  const { pot, poured } = recorded;
  const stepNote = useStepNote({ ink, batch }, pot.scaleStepGrams);
  return (
    <SheetPage
      title={pot.mixName}
      part={`pot ${pot.potNumber} of ${pot.potCount}`}
      facts={[
        `Recipe version ${pot.recipeVersion}; sheet written by ${pot.by}, ${timeWords(pot.at)}; step of the scale ${onScaleWords(pot.scaleStepGrams, pot.scaleStepGrams, ink.units)}.`,
      ]}
      lines={poured.lines.map(
        ({ lineId, name, wantedGrams, grams }): SheetPageLine => ({
          id: lineId,
          name,
          grams: wantedGrams,
          poured: grams,
        }),
      )}
      stepGrams={pot.scaleStepGrams}
      units={ink.units}
      notes={[...stepNote, ...correctionNotes(poured.correction, recorded, ink)]}
    >
      <LabelSection>
        <PotLabel recorded={recorded} batch={batch} ink={ink} />
      </LabelSection>
    </SheetPage>
  );
}

function LabelSection({ children }: { readonly children: React.ReactNode }) {
  return (
    <section className="ink-paper__label" aria-label="Pot label">
      <h3>Pot label, to cut out</h3>
      {children}
    </section>
  );
}
