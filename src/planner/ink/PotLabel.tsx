/** The label of a pot: what is in it, from which lots, for whom, how long, and what its data sheets warn of. */
import type { InkBatch, RecordedPot } from "../../job/inkRoom/inkBatch.ts";
import type { Pot } from "../../job/potDocument.ts";
import type { Shelf } from "../../job/shelfDocument.ts";
import { timeWords } from "../words/checklistSentences.ts";
import { percentWords } from "../words/garmentWords.ts";
import { scaleWords, truePercentWords } from "../words/inkFigures.ts";
import { strengthDefinitionWords } from "../words/shelfWords.ts";
import { recipeWords } from "./RecipeWords.tsx";
import type { InkRoomInUse } from "./useInkRoom.ts";

interface Props {
  readonly recorded: RecordedPot;
  readonly batch: InkBatch;
  readonly ink: InkRoomInUse;
}

export function PotLabel({ recorded, batch, ink }: Props) {
  const { pot, poured } = recorded;
  const { job } = ink.documents;
  const recipe = poured.state?.recipe ?? pot.recipe.filter(({ massFraction }) => massFraction > 0);
  const percent = poured.state === null ? percentWords : truePercentWords;
  return (
    <dl className="ink__label">
      <LabelLine name="Mix">
        <strong>{pot.mixName}</strong>, version {pot.recipeVersion}, pot {pot.potNumber} of {pot.potCount}
      </LabelLine>
      <LabelLine name="Holds">
        {recipe
          .map(
            ({ itemId, massFraction }) =>
              `${percent(massFraction)} ${ink.nameOf(itemId)}${tintOf(itemId, ink.shelf)}`,
          )
          .join(", ")}
        {poured.state === null
          ? " (as wanted, not weighed yet)"
          : `, ${scaleWords(poured.state.totalGrams, pot.scaleStepGrams, ink.units)}`}
      </LabelLine>
      <LabelLine name="Lots">{lotWords(pot, ink)}</LabelLine>
      <LabelLine name="Job">
        {job.number}
        {job.customer !== "" && `, ${job.customer}`}
      </LabelLine>
      <LabelLine name="For">{garmentWords(batch)}</LabelLine>
      <LabelLine name="Mixed">
        {timeWords(pot.at)} by {pot.by}
      </LabelLine>
      <LabelLine name="Use by">{pot.expiresOn ?? "no day entered"}</LabelLine>
      <LabelLine name="Hazards">{hazardWords(pot)}</LabelLine>
    </dl>
  );
}

/** The label of a pot that is not started: what is known before, and room for the rest. */
export function PlannedLabel({
  ink,
  batch,
  potNumber,
}: Omit<Props, "recorded"> & { readonly potNumber: number }) {
  const { job } = ink.documents;
  const { hazards, expiresOn } = batch.restrictions;
  const lots = batch.lots.flatMap(({ itemId, chosen }) =>
    chosen === null ? [] : [{ itemId, code: chosen.code }],
  );
  return (
    <dl className="ink__label">
      <LabelLine name="Mix">
        <strong>{batch.mixName}</strong>, version {batch.recipeVersion}, pot {potNumber} of{" "}
        {batch.pots?.potCount ?? potNumber}
      </LabelLine>
      <LabelLine name="Holds">{recipeWords(batch.recipe, ink.shelf)}</LabelLine>
      <LabelLine name="Lots">{lotWords({ baseLots: lots }, ink)}</LabelLine>
      <LabelLine name="Job">{[job.number, job.customer].filter((part) => part !== "").join(", ")}</LabelLine>
      <LabelLine name="For">{garmentWords(batch)}</LabelLine>
      <LabelLine name="Mixed">…………………… by ……………………</LabelLine>
      <LabelLine name="Use by">{expiresOn.amongEntered ?? "no day entered"}</LabelLine>
      <LabelLine name="Hazards">
        {hazardWords({ hazards: hazards.value === null ? null : [...hazards.value] })}
      </LabelLine>
    </dl>
  );
}

function garmentWords({ uses }: InkBatch): string {
  return uses.map((use) => `${use.placeName}: ${use.lines.map(({ name }) => name).join("; ")}`).join(". ");
}

function LabelLine({ name, children }: { readonly name: string; readonly children: React.ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}

/** A percentage of a tint means nothing without what it is of. */
function tintOf(itemId: string, { colourants }: Shelf): string {
  const colourant = colourants.find(({ id }) => id === itemId);
  return colourant === undefined ? "" : ` (${strengthDefinitionWords(colourant.strengthDefinition)})`;
}

export function lotWords({ baseLots }: Pick<Pot, "baseLots">, ink: InkRoomInUse): string {
  if (baseLots.length === 0) return "no lot written down";
  return baseLots.map(({ itemId, code }) => `${ink.nameOf(itemId)} ${code}`).join(", ");
}

export function hazardWords({ hazards }: Pick<Pot, "hazards">): string {
  if (hazards === null) return "not entered for every part: see the safety data sheets";
  return hazards.length === 0 ? "none stated on the data sheets, as entered" : hazards.join("; ");
}
